import type { Recipe, Weighing } from '#lib/episode/recipe-schema';

/** One reading of a scale as it counts for an ingredient or for the finished dish. */
export interface Reading {
  readonly weighing: Weighing;
  /** Net milligrams; where one reading is shared between ingredients, this one's part. */
  readonly netMg: number;
  /** Shared with other ingredients: to take it back takes it from them too. */
  readonly shared: boolean;
}

/**
 * The readings of an ingredient as its line says, or of another kind, oldest first, and what they come to: they
 * add up, as figures add them.
 * @example 252 g and then 30 g of the same: `soFarMg` is 282,000
 */
export function lineReadings(
  { weighings }: Pick<Recipe, 'weighings'>,
  lineId: string,
  of: Weighing['kind'] = 'raw',
): { readonly readings: readonly Reading[]; readonly soFarMg: number } {
  const readings = inOrder(weighings.filter(({ kind }) => kind === of)).flatMap((weighing) =>
    weighing.shares
      .filter((share) => share.lineId === lineId)
      .map(({ share: { num, den } }) => ({
        weighing,
        netMg: Math.round(((weighing.grossMg - weighing.tareMg) * num) / den),
        shared: weighing.shares.length > 1,
      })),
  );
  return { readings, soFarMg: readings.reduce((sum, { netMg }) => sum + netMg, 0) };
}

/** The readings of the finished dish, oldest first; the last one counts, as in the figures per 100 g. */
export function finishedReadings({ weighings }: Pick<Recipe, 'weighings'>): readonly Reading[] {
  return inOrder(weighings.filter(({ kind }) => kind === 'finished')).map((weighing) => ({
    weighing,
    netMg: weighing.grossMg - weighing.tareMg,
    shared: false,
  }));
}

/** The readings of a dish's empty container that wait for the full one, oldest first. */
export function emptyReadings({ weighings }: Pick<Recipe, 'weighings'>): readonly Reading[] {
  const waiting = weighings.filter(
    ({ kind, shares }) => kind === 'container' && shares.length === 0,
  );
  return inOrder(waiting).map((weighing) => ({
    weighing,
    netMg: weighing.grossMg,
    shared: false,
  }));
}

/** By time; of two at the same instant the one that figures take stands last. */
function inOrder(weighings: readonly Weighing[]): readonly Weighing[] {
  return [...weighings].reverse().sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
}
