import type { Arrangement } from '#lib/figures/compiled/arrangement';
import { CELL } from '#lib/figures/compiled/composition';
import { ALL, OWN } from '#lib/figures/compiled/errors';
import type { Sums } from '#lib/figures/compiled/sums';
import { AMOUNT, SUM } from '#lib/figures/compiled/tables';

/** Adds what all amounts hold, two foods at a time: each number of the row is then read and written half as often. */
export function addFoods({ compositions, singles }: Arrangement, { row, at }: Sums): void {
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
  const valueA = row[a] ?? 0;
  const lowA = row[a + 1] ?? 0;
  const highA = row[a + 2] ?? 0;
  const halfA = (row[a + 3] ?? 0) / 2;
  const allA = row[a + ALL] ?? 0;
  const ownA = (row[a + OWN] ?? 0) / 4;
  const valueB = row[b] ?? 0;
  const lowB = row[b + 1] ?? 0;
  const highB = row[b + 2] ?? 0;
  const halfB = (row[b + 3] ?? 0) / 2;
  const allB = row[b + ALL] ?? 0;
  const ownB = (row[b + OWN] ?? 0) / 4;
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
