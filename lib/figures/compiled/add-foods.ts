import type { Arrangement } from '#lib/figures/compiled/arrangement';
import { ALL, OWN } from '#lib/figures/compiled/squares';
import type { Sums } from '#lib/figures/compiled/sums';
import { AMOUNT, SUM } from '#lib/figures/compiled/tables';

/**
 * Adds what all amounts hold, three foods at a time: each number of the row is then read and written a third as often.
 */
export function addFoods({ compositions, foods, singles }: Arrangement, { row, at }: Sums): void {
  for (let each = 0; each < foods.length; each += 3) {
    const [a, b, c] = [foods[each], foods[each + 1], foods[each + 2]];
    if (a && b && c) addThreeFoods(row, at.variance, at.amounts, a, b, c);
  }
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

/** A food in a sum, with the place of its amount there. */
export interface Placed {
  readonly place: number;
  readonly cells: Float64Array;
}

function addThreeFoods(
  row: Float64Array,
  end: number,
  amounts: number,
  { place: placeA, cells: first }: Placed,
  { place: placeB, cells: second }: Placed,
  { place: placeC, cells: third }: Placed,
): void {
  const a = amounts + AMOUNT * placeA;
  const valueA = row[a] ?? 0;
  const lowA = row[a + 1] ?? 0;
  const highA = row[a + 2] ?? 0;
  const halfA = (row[a + 3] ?? 0) / 2;
  const allA = row[a + ALL] ?? 0;
  const ownA = (row[a + OWN] ?? 0) / 4;
  const b = amounts + AMOUNT * placeB;
  const valueB = row[b] ?? 0;
  const lowB = row[b + 1] ?? 0;
  const highB = row[b + 2] ?? 0;
  const halfB = (row[b + 3] ?? 0) / 2;
  const allB = row[b + ALL] ?? 0;
  const ownB = (row[b + OWN] ?? 0) / 4;
  const c = amounts + AMOUNT * placeC;
  const valueC = row[c] ?? 0;
  const lowC = row[c + 1] ?? 0;
  const highC = row[c + 2] ?? 0;
  const halfC = (row[c + 3] ?? 0) / 2;
  const allC = row[c + ALL] ?? 0;
  const ownC = (row[c + OWN] ?? 0) / 4;
  // A sum and a composition keep as many numbers of a nutrient (`SUM`, `CELL`): one place is that of all.
  for (let at = 0, apart = end; at < end; at += SUM, apart += 1) {
    const leastA = first[at + 1] ?? 0;
    const mostA = first[at + 2] ?? 0;
    const bothA = leastA + mostA;
    const leastB = second[at + 1] ?? 0;
    const mostB = second[at + 2] ?? 0;
    const bothB = leastB + mostB;
    const leastC = third[at + 1] ?? 0;
    const mostC = third[at + 2] ?? 0;
    const bothC = leastC + mostC;
    row[at] =
      (row[at] ?? 0) +
      valueA * (first[at] ?? 0) +
      valueB * (second[at] ?? 0) +
      valueC * (third[at] ?? 0);
    row[at + 1] = (row[at + 1] ?? 0) + lowA * leastA + lowB * leastB + lowC * leastC;
    row[at + 2] = (row[at + 2] ?? 0) + highA * mostA + highB * mostB + highC * mostC;
    row[at + 3] = (row[at + 3] ?? 0) + halfA * bothA + halfB * bothB + halfC * bothC;
    row[apart] =
      (row[apart] ?? 0) +
      (allA * (first[at + 3] ?? 0) + ownA * bothA * bothA) +
      (allB * (second[at + 3] ?? 0) + ownB * bothB * bothB) +
      (allC * (third[at + 3] ?? 0) + ownC * bothC * bothC);
  }
}
