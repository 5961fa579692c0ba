import type { Arrangement, Entry } from '#lib/figures/compiled/arrangement';
import { CELL } from '#lib/figures/compiled/composition';
import {
  addMet,
  ALL,
  collectErrors,
  OWN,
  placeSource,
  varianceAt,
} from '#lib/figures/compiled/errors';
import { addSpecial } from '#lib/figures/compiled/specials';
import { AMOUNT, NEITHER, SOURCE, SUM, type Layout } from '#lib/figures/compiled/tables';
import { addTurns } from '#lib/figures/compiled/turns';
import { FACTOR, FACTOR_SOURCE } from '#lib/units/compiled-factor';

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
export function sumUp(arrangement: Arrangement, entries: readonly Entry[]): Sums | null {
  const { at } = arrangement;
  const special = new Map<number, Int8Array | null>();
  const sums = { row: new Float64Array(at.end), at, special };
  if (!collectProducts(arrangement, entries, sums)) return null;
  collectErrors(arrangement, sums);
  if (!addTurns(arrangement, entries, sums)) return null;
  addFoods(arrangement, sums);
  addExcess(arrangement, sums);
  addMet(arrangement, sums);
  for (const place of arrangement.specials) {
    special.set(place, addSpecial(arrangement, entries, sums, place));
    sums.row[at.variance + place] = varianceAt(arrangement, sums, place);
  }
  return sums;
}

/** Lays out sources, and adds up amounts by food and derivatives by joint and pair. */
function collectProducts(
  { route }: Arrangement,
  entries: readonly Entry[],
  { row, at }: Sums,
): boolean {
  let step = 0;
  for (let index = 0; index < entries.length; index += 1) {
    const entry = entries[index];
    if (!entry) continue;
    const { numbers } = entry.factor;
    const { sign } = entry;
    const ofFood = entry.of.only === null;
    const amount = at.amounts + AMOUNT * (route[step] ?? 0);
    for (let each = 0; each < FACTOR; each += 1) {
      row[amount + each] = (row[amount + each] ?? 0) + sign * (numbers[each] ?? 0);
    }
    let from = FACTOR;
    const sources = step + 2 + 2 * (route[step + 1] ?? 0);
    for (step += 2; step < sources; step += 2, from += FACTOR_SOURCE) {
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

/** Adds what all amounts hold, two foods at a time: each number of the row is then read and written half as often. */
function addFoods({ compositions, singles }: Arrangement, { row, at }: Sums): void {
  let waiting = -1;
  for (let place = 0; place < compositions.length; place += 1) {
    const of = compositions[place];
    if (!of || of.only !== null) continue;
    const first = compositions[waiting];
    if (first) {
      const amount = at.amounts + AMOUNT * waiting;
      addTwoFoods(row, at.variance, amount, first.cells, at.amounts + AMOUNT * place, of.cells);
      waiting = -1;
    } else waiting = place;
  }
  const last = compositions[waiting];
  if (last) addFood(row, at.variance, at.amounts + AMOUNT * waiting, last.cells);
  for (const place of singles) {
    addSingle(row, at.amounts + AMOUNT * place, compositions[place]?.only ?? 0);
  }
}

/** Amounts of a single nutrient; their bounds and errors are taken with those of the foods that hold it. */
function addSingle(row: Float64Array, amount: number, nutrient: number): void {
  const to = SUM * nutrient;
  row[to] = (row[to] ?? 0) + (row[amount] ?? 0);
  row[to + 3] = (row[to + 3] ?? 0) + (row[amount + 3] ?? 0);
}

function addFood(row: Float64Array, end: number, amount: number, cells: Float64Array): void {
  const value = row[amount] ?? 0;
  const low = row[amount + 1] ?? 0;
  const high = row[amount + 2] ?? 0;
  const half = (row[amount + 3] ?? 0) / 2;
  const all = row[amount + ALL] ?? 0;
  const own = (row[amount + OWN] ?? 0) / 4;
  for (let to = 0, apart = end, from = 0; to < end; to += SUM, apart += 1, from += CELL) {
    const least = cells[from + 1] ?? 0;
    const most = cells[from + 2] ?? 0;
    const both = least + most;
    row[to] = (row[to] ?? 0) + value * (cells[from] ?? 0);
    row[to + 1] = (row[to + 1] ?? 0) + low * least;
    row[to + 2] = (row[to + 2] ?? 0) + high * most;
    row[to + 3] = (row[to + 3] ?? 0) + half * both;
    row[apart] = (row[apart] ?? 0) + all * (cells[from + 3] ?? 0) + own * both * both;
  }
}

function addTwoFoods(
  row: Float64Array,
  end: number,
  a: number,
  first: Float64Array,
  b: number,
  second: Float64Array,
): void {
  const [valueA, valueB] = [row[a] ?? 0, row[b] ?? 0];
  const [lowA, lowB] = [row[a + 1] ?? 0, row[b + 1] ?? 0];
  const [highA, highB] = [row[a + 2] ?? 0, row[b + 2] ?? 0];
  const [halfA, halfB] = [(row[a + 3] ?? 0) / 2, (row[b + 3] ?? 0) / 2];
  const [allA, allB] = [row[a + ALL] ?? 0, row[b + ALL] ?? 0];
  const [ownA, ownB] = [(row[a + OWN] ?? 0) / 4, (row[b + OWN] ?? 0) / 4];
  for (let to = 0, apart = end, from = 0; to < end; to += SUM, apart += 1, from += CELL) {
    const leastA = first[from + 1] ?? 0;
    const mostA = first[from + 2] ?? 0;
    const bothA = leastA + mostA;
    const leastB = second[from + 1] ?? 0;
    const mostB = second[from + 2] ?? 0;
    const bothB = leastB + mostB;
    row[to] = (row[to] ?? 0) + valueA * (first[from] ?? 0) + valueB * (second[from] ?? 0);
    row[to + 1] = (row[to + 1] ?? 0) + lowA * leastA + lowB * leastB;
    row[to + 2] = (row[to + 2] ?? 0) + highA * mostA + highB * mostB;
    row[to + 3] = (row[to + 3] ?? 0) + halfA * bothA + halfB * bothB;
    row[apart] =
      (row[apart] ?? 0) +
      (allA * (first[from + 3] ?? 0) + ownA * bothA * bothA) +
      (allB * (second[from + 3] ?? 0) + ownB * bothB * bothB);
  }
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
