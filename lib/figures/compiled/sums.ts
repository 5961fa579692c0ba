import { addFoods } from '#lib/figures/compiled/add-foods';
import type { Arrangement } from '#lib/figures/compiled/arrangement';
import type { Packed } from '#lib/figures/compiled/packing';
import { CELL } from '#lib/figures/compiled/composition';
import { addMet, placeSource } from '#lib/figures/compiled/errors';
import { varianceOf } from '#lib/figures/compiled/meeting';
import { zeroRow } from '#lib/figures/compiled/zero-row';
import { specialBounds } from '#lib/figures/compiled/specials';
import { collectSquares } from '#lib/figures/compiled/squares';
import { AMOUNT, NEITHER, SOURCE, SUM, type Layout } from '#lib/figures/compiled/tables';
import { addTurns } from '#lib/figures/compiled/turns';
import { FACTOR, FACTOR_SOURCE } from '#lib/units/factor';

/**
 * Sums of products of all nutrients at once, before the step outward and before likely bounds are clipped, and the
 * coefficients that were collected for them, all in one row.
 */
export interface Sums {
  readonly row: Float64Array;
  readonly at: Layout;
  /** Nutrients that amounts alone are in, with the way of each source there; null where that must be asked by terms. */
  readonly special: ReadonlyMap<number, Int8Array | null>;
}

/**
 * Adds up products. Hard bounds: every source stands at the end that its direction points to, since nothing in the
 * sum is negative. Likely: the coefficients of each source are collected by food (its values' errors), by amount
 * source and by pairs of these, as `boundsOf` collects them nutrient by nutrient.
 * Null where the sources do not allow that, as one id with two intervals.
 */
export function sumUp(arrangement: Arrangement, packed: Packed): Sums | null {
  const { entries } = packed;
  const { at } = arrangement;
  const special = new Map<number, Int8Array | null>();
  const sums = { row: zeroRow(at.end), at, special };
  if (!collectProducts(arrangement, packed, sums)) return null;
  collectSquares(arrangement.squares, sums);
  if (!addTurns(arrangement, entries, sums)) return null;
  const found = arrangement.holding.map((held) => specialBounds(held, packed, sums));
  addFoods(arrangement, sums);
  addExcess(arrangement, sums);
  addMet(arrangement, sums);
  for (let each = 0; each < found.length; each += 1) {
    const [meeting, bounds] = [arrangement.meetings[each], found[each]];
    if (!meeting) continue;
    const { place } = meeting;
    special.set(place, bounds?.ways ?? null);
    sums.row[at.variance + place] = varianceOf(meeting, sums);
    if (!bounds) continue;
    sums.row[SUM * place + 1] = bounds.low;
    sums.row[SUM * place + 2] = bounds.high;
    sums.row[at.excess + place] = bounds.reach - bounds.high;
  }
  return sums;
}

/** Lays out sources, and adds up amounts by food and derivatives by joint and pair. */
function collectProducts({ route }: Arrangement, { numbers }: Packed, { row, at }: Sums): boolean {
  let step = 0;
  for (let from = 0; from < numbers.length;) {
    const sign = route[step] ?? 0;
    const ofFood = (route[step + 1] ?? 0) === 1;
    const amount = at.amounts + AMOUNT * (route[step + 2] ?? 0);
    row[amount] = (row[amount] ?? 0) + sign * (numbers[from] ?? 0);
    row[amount + 1] = (row[amount + 1] ?? 0) + sign * (numbers[from + 1] ?? 0);
    row[amount + 2] = (row[amount + 2] ?? 0) + sign * (numbers[from + 2] ?? 0);
    row[amount + 3] = (row[amount + 3] ?? 0) + sign * (numbers[from + 3] ?? 0);
    row[amount + 4] = (row[amount + 4] ?? 0) + sign * (numbers[from + 4] ?? 0);
    from += FACTOR;
    const sources = step + 4 + 2 * (route[step + 3] ?? 0);
    for (step += 4; step < sources; step += 2, from += FACTOR_SOURCE) {
      const to = at.joints + (route[step] ?? 0);
      row[to] = (row[to] ?? 0) + sign * (numbers[from] ?? 0);
      const source = at.sources + SOURCE * (route[step + 1] ?? 0);
      const way = ofFood ? (numbers[from + 4] ?? 0) : NEITHER;
      if (!placeSource(row, source, numbers, from + 1, way)) return false;
    }
    const pairs = step + 1 + (route[step] ?? 0);
    for (step += 1; step < pairs; step += 1, from += 1) {
      const to = at.pairs + (route[step] ?? 0);
      row[to] = (row[to] ?? 0) + sign * (numbers[from] ?? 0);
    }
  }
  return true;
}

function addExcess({ compositions, excess }: Arrangement, { row, at }: Sums): void {
  for (let place = 0, of = at.amounts; place < compositions.length; place += 1, of += AMOUNT) {
    const more = (row[of + 4] ?? 0) - (row[of + 2] ?? 0);
    const food = more > 0 ? compositions[place] : undefined;
    if (food?.only === null) addMore(row, at, food.cells, more);
  }
  for (let each = 0; each < excess.length; each += 3) {
    const reach = row[at.amounts + AMOUNT * (excess[each] ?? 0) + 4] ?? 0;
    const to = at.excess + (excess[each + 1] ?? 0);
    row[to] = (row[to] ?? 0) + reach * (excess[each + 2] ?? 0);
  }
}

function addMore(row: Float64Array, at: Layout, cells: Float64Array, more: number): void {
  for (let to = at.excess, from = 2; to < at.room; to += 1, from += CELL) {
    row[to] = (row[to] ?? 0) + more * (cells[from] ?? 0);
  }
}
