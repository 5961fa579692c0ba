import { cardFrame, type CardSize } from '#lib/publish/cards/frame';
import type { CardColours } from '#lib/publish/cards/inks';

/** What a card is looked at over: the extremes that it must be read on. */
export const FOOTAGE = ['dark', 'light'] as const;
export type Footage = (typeof FOOTAGE)[number];

/**
 * A card over drawn footage, no photo: a slope from light to dark of its kind, with tiles and a round plate, so that
 * edges cross the letters as they do on a table.
 * @param card as `drawCard` gives it
 */
export function overFootage(
  card: string,
  size: CardSize,
  footage: Footage,
  { paper, line, slate, ink, soft, chalk }: CardColours,
): string {
  const { width, height } = cardFrame(size);
  const tile = Math.min(width, height) / 6;
  const [from, to, mark] = footage === 'dark' ? [slate, ink, soft] : [chalk, line, paper];
  const inner = card.slice(card.indexOf('>') + 1, card.lastIndexOf('</svg>'));
  const { base } = cardFrame(size);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">`,
    `<defs><linearGradient id="f" x2="1" y2="1"><stop stop-color="${from}"/><stop offset="1" stop-color="${to}"/></linearGradient>`,
    `<pattern id="t" width="${tile * 2}" height="${tile * 2}" patternUnits="userSpaceOnUse"><path d="M0 0h${tile}v${tile}h-${tile}zM${tile} ${tile}h${tile}v${tile}h-${tile}z" fill="${mark}" fill-opacity="0.18"/></pattern></defs>`,
    `<rect width="${width}" height="${height}" fill="url(#f)"/><rect width="${width}" height="${height}" fill="url(#t)"/>`,
    `<circle cx="${width * 0.62}" cy="${height * 0.5}" r="${tile * 2}" fill="${mark}" fill-opacity="0.4"/>`,
    `<g transform="scale(${width / base.width})">${inner}</g></svg>`,
  ].join('');
}
