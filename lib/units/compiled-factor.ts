import {
  compileSum,
  evaluateAt,
  magnitude,
  middleOf,
  pairsAt,
  rectangular,
  slopesAt,
  type CompiledSum,
  type Pair,
} from '#lib/units/compiled-sum';
import type { Interval } from '#lib/units/interval';
import type { Sources, Term } from '#lib/units/sum-of-products';

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

/**
 * Compiles a factor. Null where the terms are none: it may be negative, it may move both ways with a source,
 * or a source is itself a sum.
 * @example compileFactor([source('w', 2)], new Map([['w', plusMinus(10, 1)]])) // 20, 18 to 22
 */
export function compileFactor(terms: readonly Term[], sources: Sources): Factor | null {
  const sum = compileSum(terms, sources);
  for (const { low, high, of } of sum.intervals) if (!(low >= 0 && high >= low) || of) return null;
  const ranges = rangesOf(sum);
  const rises = risesOf(ranges);
  if (!rises) return null;
  const middle = middleOf(sum.intervals);
  const low = evaluateAt(sum.terms, endsOf(sum.intervals, rises, false));
  const high = evaluateAt(sum.terms, endsOf(sum.intervals, rises, true));
  const value = evaluateAt(sum.terms, valuesOf(sum.intervals));
  if (!(low >= 0 && value >= 0 && high < Infinity)) return null;
  const slopes = slopesAt(sum, middle);
  const pairs = pairsAt(sum, middle);
  const numbers = new Float64Array(FACTOR + FACTOR_SOURCE * slopes.length + pairs.length);
  numbers.set([value, low, high, evaluateAt(sum.terms, middle), magnitude(sum), 0, -1]);
  const [term] = sum.terms;
  if (term && sum.terms.length === 1 && term.up.length + term.down.length === sum.ids.length) {
    numbers.set([term.coefficient, term.up.length], FACTOR - 2);
  }
  let at = FACTOR;
  for (let place = 0; place < slopes.length; place += 1, at += FACTOR_SOURCE) {
    const interval = sum.intervals[place];
    if (!interval) continue;
    numbers[at] = slopes[place] ?? 0;
    numbers[at + 1] = rectangular(interval);
    numbers[at + 2] = interval.high;
    numbers[at + 3] = interval.value;
    numbers[at + 4] = rises[place] ? 1 : -1;
    numbers[at + 5] = ranges[2 * place] ?? 0;
    numbers[at + 6] = ranges[2 * place + 1] ?? 0;
    numbers[at + 7] = interval.low;
  }
  for (const { slope } of pairs) {
    numbers[at] = slope;
    at += 1;
  }
  const { ids, intervals } = sum;
  return { none: terms.length === 0, ids, intervals, rises, pairs, numbers, sum };
}

function valuesOf(intervals: readonly Interval[]): number[] {
  return intervals.map(({ value }) => value);
}

function endsOf(
  intervals: readonly Interval[],
  rises: readonly boolean[],
  most: boolean,
): readonly number[] {
  return intervals.map(({ low, high }, place) => (rises[place] === most ? high : low));
}

/** Least and most of the first derivatives by each source in turn, anywhere in the box. */
function rangesOf({ terms, ids, intervals }: CompiledSum): readonly number[] {
  const ranges = new Array<number>(2 * ids.length).fill(0);
  for (const { coefficient, up, down } of terms) {
    const [small, large] = span(up, down, intervals);
    const add = (place: number, factor: number) => {
      const [a, b] = [coefficient * factor * small(place), coefficient * factor * large(place)];
      ranges[2 * place] = (ranges[2 * place] ?? 0) + Math.min(a, b);
      ranges[2 * place + 1] = (ranges[2 * place + 1] ?? 0) + Math.max(a, b);
    };
    for (const place of up) add(place, 1);
    for (const place of down) add(place, -1);
  }
  return ranges;
}

/** Which way a sum moves with each source; null where that cannot be told of one. */
function risesOf(ranges: readonly number[]): readonly boolean[] | null {
  const rises: boolean[] = [];
  for (let at = 0; at < ranges.length; at += 2) {
    const [least = NaN, most = NaN] = [ranges[at], ranges[at + 1]];
    if (!(least >= 0 || most <= 0)) return null;
    rises.push(least >= 0);
  }
  return rises;
}

/** Least and most that a term's magnitude without one occurrence of a source may be. */
function span(
  up: readonly number[],
  down: readonly number[],
  intervals: readonly Interval[],
): [(place: number) => number, (place: number) => number] {
  const product = (left: number, above: 'low' | 'high', below: 'low' | 'high') => {
    let size = 1;
    let skipped = false;
    for (const place of up) {
      if (!skipped && place === left) skipped = true;
      else size *= intervals[place]?.[above] ?? NaN;
    }
    for (const place of down) size /= intervals[place]?.[below] ?? NaN;
    // By a divisor: what is left is divided by it once more.
    return skipped ? size : size / (intervals[left]?.[below] ?? NaN);
  };
  return [(left) => product(left, 'low', 'high'), (left) => product(left, 'high', 'low')];
}

/**
 * How the factor moves with one of its sources where all others stand at the ends that make it least, and most.
 * Null unless it is linear in the source.
 */
export function cornerSlopes(
  { sum, rises, intervals }: Factor,
  place: number,
): { readonly low: number; readonly high: number } | null {
  const linear = sum.terms.every(
    ({ up, down }) => up.indexOf(place) === up.lastIndexOf(place) && !down.includes(place),
  );
  if (!linear) return null;
  const slope = (most: boolean) => slopesAt(sum, endsOf(intervals, rises, most))[place] ?? 0;
  return { low: slope(false), high: slope(true) };
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
