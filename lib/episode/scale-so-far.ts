import type { Recipe, Weighing } from '#lib/episode/recipe-schema';

/**
 * What stands on the scale in a running total: the last reading of an ingredient that nothing was put on top of
 * yet. Null where none was weighed straight: after a reading by difference nobody knows what stands there.
 * @example oats read 252 g in their bowl, nothing since: that reading; the next ingredient is what it adds to 252
 */
export function onScale({ weighings }: Pick<Recipe, 'weighings'>): Weighing | null {
  const readings = weighings.filter(({ kind }) => kind === 'raw');
  const last = inTime(readings).at(-1);
  return last?.method === 'direct' ? last : null;
}

/**
 * The reading of a container with what is in it, or of an empty one, that waits for its second reading: the last
 * of the ingredient given, or for null the last of no ingredient, which is of the dish.
 */
export function waitingReading(
  { weighings }: Pick<Recipe, 'weighings'>,
  lineId: string | null,
): Weighing | null {
  const waiting = weighings.filter(
    ({ kind, shares }) =>
      kind === 'container' &&
      (lineId === null ? shares.length === 0 : shares.some((share) => share.lineId === lineId)),
  );
  return inTime(waiting).at(-1) ?? null;
}

/** The weight of the container that was last taken off by hand in a dish, to be offered again; null for none. */
export function lastContainerMg({ weighings }: Pick<Recipe, 'weighings'>): number | null {
  const typed = weighings.filter(
    ({ tareMg, afterId, method }) => tareMg > 0 && afterId === null && method === 'direct',
  );
  return inTime(typed).at(-1)?.tareMg ?? null;
}

/** The scale that a dish was last weighed on; null before the first reading. */
export function lastScaleId({ weighings }: Pick<Recipe, 'weighings'>): string | null {
  return inTime(weighings).at(-1)?.scaleId ?? null;
}

/** Oldest first; of two at the same instant the one that was made later stands last. */
function inTime(readings: readonly Weighing[]): readonly Weighing[] {
  return [...readings].sort((a, b) => compare(a.at, b.at) || compare(a.id, b.id));
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
