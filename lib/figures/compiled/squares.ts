import type { Sums } from '#lib/figures/compiled/sums';
import { AMOUNT, JOINT, SOURCE, type Tables } from '#lib/figures/compiled/tables';

/**
 * Squares among the numbers of an amount: its own and those of all its first-order errors, by which the errors of the
 * food's values are multiplied; and those of errors that no other food has, by which the values are multiplied.
 */
export const ALL = 5;
export const OWN = 6;
const MIDDLE = 3;

/** What squares of errors are collected from, laid out for one walk, as places in the row of the sum. */
export interface Squares {
  /** Of each food: its amount. */
  readonly foods: Int32Array;
  /** Of each joint of a food: its derivative, the variance of its source, the amount, and 1 where no other food has it. */
  readonly joints: Int32Array;
  /** Of each pair that one food alone has: its derivative, the variances of its two sources, and the amount. */
  readonly pairs: Int32Array;
}

/** Amounts alone have none: what they come from meets in the one nutrient that they are of. */
export function squaresIn({ compositions, joints, pairs, at }: Tables): Squares {
  const isFood = (place: number | undefined) => compositions[place ?? -1]?.only === null;
  const amount = (place = 0) => at.amounts + AMOUNT * place;
  const variance = (source = 0) => at.sources + SOURCE * source;
  const [own, ofPairs]: [number[], number[]] = [[], []];
  for (let from = 0; from < joints.length; from += JOINT) {
    const [food, source, , shared] = joints.subarray(from, from + JOINT);
    if (!isFood(food)) continue;
    own.push(at.joints + from / JOINT, variance(source), amount(food), shared ? 0 : 1);
  }
  for (let from = 0; from < pairs.length; from += JOINT) {
    const [food, source, other, shared] = pairs.subarray(from, from + JOINT);
    if (!isFood(food) || shared) continue;
    ofPairs.push(at.pairs + from / JOINT, variance(source), variance(other), amount(food));
  }
  const foods = [...compositions.keys()].filter(isFood);
  return {
    foods: Int32Array.from(foods, amount),
    joints: Int32Array.from(own),
    pairs: Int32Array.from(ofPairs),
  };
}

/** Collects squares of errors by food. */
export function collectSquares({ foods, joints, pairs }: Squares, { row }: Sums): void {
  for (let each = 0; each < foods.length; each += 1) {
    const of = foods[each] ?? 0;
    row[of + ALL] = (row[of + MIDDLE] ?? 0) ** 2;
  }
  for (let from = 0; from < joints.length; from += 4) {
    const slope = row[joints[from] ?? 0] ?? 0;
    const error = slope * slope * (row[joints[from + 1] ?? 0] ?? 0);
    const of = joints[from + 2] ?? 0;
    row[of + ALL] = (row[of + ALL] ?? 0) + error;
    if (joints[from + 3] === 1) row[of + OWN] = (row[of + OWN] ?? 0) + error;
  }
  for (let from = 0; from < pairs.length; from += 4) {
    const slope = row[pairs[from] ?? 0] ?? 0;
    const first = row[pairs[from + 1] ?? 0] ?? 0;
    const second = row[pairs[from + 2] ?? 0] ?? 0;
    const of = pairs[from + 3] ?? 0;
    row[of + OWN] = (row[of + OWN] ?? 0) + slope * slope * first * second;
  }
}
