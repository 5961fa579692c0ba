import type { PointsChange } from '#lib/cut/cut-points';

/** The fields of a segment's points, and of the tick that takes an offer. */
export const pointFields = (id: string) => ({ inFrame: `in-${id}`, outFrame: `out-${id}` });
export const takeField = (id: string) => `take-${id}`;

/**
 * What a page showed, so that a form can say what it was about: `id in out`, one after the other, without line ends,
 * which a form sends otherwise than they stand.
 */
export const pointsText = (points: readonly PointsChange[]): string =>
  points
    .map(({ id, inFrame, outFrame }) => `${id} ${inFrame ?? '-'} ${outFrame ?? '-'}`)
    .join('; ');
