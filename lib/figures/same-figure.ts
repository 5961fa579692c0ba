import type { Figure } from '#lib/figures/figure';

const SIDES = ['value', 'low', 'high'] as const;

/** Whether two figures are alike in value and bounds, but for the last digits of floating point. */
export function isSameFigure(
  one: Pick<Figure, (typeof SIDES)[number]>,
  other: Pick<Figure, (typeof SIDES)[number]>,
): boolean {
  return SIDES.every((side) => isClose(one[side], other[side]));
}

function isClose(a: number | null, b: number | null): boolean {
  if (a === null || b === null) return a === b;
  return Math.abs(a - b) <= 2 ** -40 * (Math.abs(a) + Math.abs(b));
}
