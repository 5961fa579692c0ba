import type { Cell, FoodVersion } from '#lib/foods/food';

/**
 * From where to where the true amount behind a printed one may lie, written down from the rules a second time and
 * by other means than in lib: as the distance to the neighbours that may be printed instead.
 * US: 21 CFR 101.9(c)(1) to (c)(7); EU: guidance on tolerances of 2012 (from memory).
 */
export type Range = readonly [low: number, high: number];

export function trueRange(rule: FoodVersion['rule'], nutrient: string, cell: Cell): Range {
  if (cell.kind === 'missing') throw new Error(`nothing is known of ${nutrient}`);
  if (cell.kind === 'trace') return [0, 0];
  const printed = cell.mantissa / 10 ** cell.scale;
  if (cell.kind === 'lessThan') return [0, printed];
  const error = cell.plusMinus ? cell.plusMinus.mantissa / 10 ** cell.plusMinus.scale : 0;
  const neighbours = rule === 'us' ? usNeighbours(nutrient) : rule === 'eu' ? eu(nutrient) : null;
  if (!neighbours) {
    const half = 0.5 / 10 ** cell.scale;
    return [Math.max(0, printed - half - error), printed + half + error];
  }
  const { zeroUpTo, least, step } = neighbours;
  if (printed === 0) return [0, zeroUpTo];
  // Half-way to the number printed before, and to the one printed after.
  const before = printed - step(printed, 'below');
  const low = before <= 0 ? least : (before + printed) / 2;
  return [Math.max(low, least), printed + step(printed, 'above') / 2];
}

interface Neighbours {
  /** The most that may read 0. */
  readonly zeroUpTo: number;
  /** The least that may read something else than 0. */
  readonly least: number;
  /** How far the next printed number is on a side. */
  readonly step: (printed: number, side: 'below' | 'above') => number;
}

/** One step up to a joint and another from there. */
const joint =
  (at: number, fine: number, coarse: number) => (printed: number, side: 'below' | 'above') =>
    printed < at || (printed === at && side === 'below') ? fine : coarse;

function usNeighbours(nutrient: string): Neighbours | null {
  switch (nutrient) {
    case 'energyKcal':
      return { zeroUpTo: 5, least: 2.5, step: joint(50, 5, 10) };
    case 'fat':
    case 'saturated':
      return { zeroUpTo: 0.5, least: 0.5, step: joint(5, 0.5, 1) };
    case 'sodium':
      return { zeroUpTo: 5, least: 5, step: joint(140, 5, 10) };
    case 'protein':
    case 'carbohydrate':
    case 'fibre':
    case 'sugars':
      return { zeroUpTo: 0.5, least: 0.5, step: () => 1 };
    default:
      return null;
  }
}

function eu(nutrient: string): Neighbours | null {
  switch (nutrient) {
    case 'energyKcal':
    case 'energyKj':
      return { zeroUpTo: 0.5, least: 0.5, step: () => 1 };
    case 'fat':
    case 'protein':
    case 'carbohydrate':
    case 'fibre':
    case 'sugars':
      return { zeroUpTo: 0.5, least: 0.05, step: joint(10, 0.1, 1) };
    default:
      return null;
  }
}
