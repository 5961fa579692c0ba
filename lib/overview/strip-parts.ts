import type { EpisodeFile } from '#lib/episode/schema';
import { printRuntime } from '#lib/units/print';

/** A segment on a strip of the whole edit. */
export interface StripPart {
  readonly id: string;
  readonly title: string;
  readonly kind: 'dish' | 'talk';
  readonly fromMs: number;
  readonly toMs: number;
  /** '0:45 to 3:10'. */
  readonly words: string;
}

/**
 * Segments by their places in the cut; one without an end goes on until the next, or the end. Empty where no segment
 * has a place.
 * @param endMs where the edit ends, as far as its texts tell
 * @example stripParts(episode, 600_000)[0] // { title: 'Barley skillet', fromMs: 45_000, toMs: 190_000, … }
 */
export function stripParts(
  { segments, rate }: Pick<EpisodeFile['episode'], 'segments' | 'rate'>,
  endMs: number,
): StripPart[] {
  const ms = (frame: number) => (frame * 1000 * rate.den) / rate.num;
  const placed = segments
    .flatMap(({ id, title, recipe, inFrame, outFrame }) =>
      inFrame === null
        ? []
        : [
            {
              id,
              title,
              recipe,
              fromMs: ms(inFrame),
              until: outFrame === null ? null : ms(outFrame),
            },
          ],
    )
    .sort((a, b) => a.fromMs - b.fromMs);
  return placed.map(({ id, title, recipe, fromMs, until }, at) => {
    const toMs = until ?? placed[at + 1]?.fromMs ?? Math.max(endMs, fromMs);
    const words = `${clock(fromMs)} to ${clock(toMs)}`;
    return { id, title, kind: recipe === null ? 'talk' : 'dish', fromMs, toMs, words };
  });
}

const clock = (ms: number) => printRuntime(Math.floor(ms / 1000));
