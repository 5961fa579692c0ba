import { z } from 'zod';
import { FOOTAGE } from '#lib/publish/cards/footage';
import { CUT_SIZES } from '#lib/publish/cards/frame';
import { CARD_GROUNDS, type CardColours } from '#lib/publish/cards/inks';
import { DAY, NIGHT } from '../../../_ui/palette';

/** How cards are asked for; what is none of these is taken for the first. */
const asked = z.object({
  size: z.enum(CUT_SIZES).catch('1920x1080'),
  ground: z.enum(CARD_GROUNDS).catch('plate'),
  over: z.enum(FOOTAGE).catch('dark'),
});
export type AskedCards = z.infer<typeof asked>;

/** Reads what a page's address asks for. */
export function readLook(of: unknown): AskedCards {
  return asked.parse(of ?? {});
}

/** The same of a request's address. */
export function lookOfRequest(request: Request): AskedCards {
  return readLook(Object.fromEntries(new URL(request.url).searchParams));
}

/** An address with what is asked for. */
export function withLook(path: string, { size, ground, over }: AskedCards): string {
  return `${path}?${new URLSearchParams({ size, ground, over }).toString()}`;
}

/** The theme's colours as cards take them: those of paper by day, the red that is read at night, and its darkest. */
export const COLOURS: CardColours = {
  ...DAY,
  chalkSoft: DAY['chalk-soft'],
  handOnDark: NIGHT.hand,
  edge: NIGHT.slate,
};
