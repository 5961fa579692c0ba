import { rectangular, type CompiledSum, type Pair } from '#lib/units/compiled-sum';
import type { Interval } from '#lib/units/interval';

/**
 * A sum of products that is never negative and moves one way with each of its sources, as an amount does: so many
 * milligrams of a food. It can be multiplied by many values at once, since its bounds and its errors are numbers
 * that do not depend on what it is multiplied by.
 */
export interface Factor {
  /** Whether it has no terms at all: nothing of something. */
  readonly none: boolean;
  readonly ids: readonly string[];
  readonly intervals: readonly Interval[];
  /** Whether it rises with a source, or falls. */
  readonly rises: readonly boolean[];
  /** Pairs of sources that are multiplied, as places in `ids`. */
  readonly pairs: readonly Pick<Pair, 'a' | 'b'>[];
  /**
   * Its numbers in one row: value, low, high, where each source stands in the middle of its interval, and the sum of
   * magnitudes for the step outward; where it is one product of sources that differ, the coefficient of that and how
   * many sources it is multiplied by, the first ones, before it is divided by the others, else 0 and −1; from `FACTOR`
   * on, for each source in turn the first derivative in the middle, variance, high, value and the way, 1 where it rises
   * with it, −1 where it falls, the least and most of that derivative wherever the others stand, and low; then the mixed
   * derivative of each pair.
   */
  readonly numbers: Float64Array;
  readonly sum: CompiledSum;
}

/** How many numbers a factor begins with, and how many there are of each source. */
export const FACTOR = 7;
export const FACTOR_SOURCE = 8;

/** Lays out what a factor says of one of its sources: its derivative in the middle, its least and its most. */
export function setSource(
  numbers: Float64Array,
  place: number,
  interval: Interval | undefined,
  slope: number,
  least: number,
  most: number,
): void {
  if (!interval) return;
  const at = FACTOR + FACTOR_SOURCE * place;
  numbers[at] = slope;
  numbers[at + 1] = rectangular(interval);
  numbers[at + 2] = interval.high;
  numbers[at + 3] = interval.value;
  numbers[at + 4] = least >= 0 ? 1 : -1;
  numbers[at + 5] = least;
  numbers[at + 6] = most;
  numbers[at + 7] = interval.low;
}

/**
 * Squares of a factor's errors about its middle: of the first order, by which the errors of what it multiplies are
 * multiplied; and all, with those of pairs, by which the square of that is.
 */
export function factorErrors({ numbers, ids, pairs }: Factor): {
  readonly all: number;
  readonly own: number;
} {
  let all = 0;
  let at = FACTOR;
  for (let place = 0; place < ids.length; place += 1, at += FACTOR_SOURCE) {
    all += (numbers[at] ?? 0) ** 2 * (numbers[at + 1] ?? 0);
  }
  let own = all;
  for (const { a, b } of pairs) {
    const error = varianceAt(numbers, a) * varianceAt(numbers, b);
    own += (numbers[at] ?? 0) ** 2 * error;
    at += 1;
  }
  return { all, own };
}

function varianceAt(numbers: Float64Array, place: number): number {
  return numbers[FACTOR + FACTOR_SOURCE * place + 1] ?? NaN;
}
