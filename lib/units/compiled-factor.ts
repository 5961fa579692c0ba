import {
  compileSum,
  evaluateAt,
  magnitude,
  middleOf,
  pairsAt,
  slopesAt,
  type CompiledSum,
  type CompiledTerm,
  type Pair,
} from '#lib/units/compiled-sum';
import { FACTOR, FACTOR_SOURCE, setSource, type Factor } from '#lib/units/factor';
import type { Interval } from '#lib/units/interval';
import type { Sources, Term } from '#lib/units/sum-of-products';

/**
 * Compiles a factor. Null where the terms are none: it may be negative, it may move both ways with a source,
 * or a source is itself a sum.
 * @example compileFactor([source('w', 2)], new Map([['w', plusMinus(10, 1)]])) // 20, 18 to 22
 */
export function compileFactor(terms: readonly Term[], sources: Sources): Factor | null {
  const sum = compileSum(terms, sources);
  for (const { low, high, of } of sum.intervals) if (!(low >= 0 && high >= low) || of) return null;
  const [term] = sum.terms;
  if (term && sum.terms.length === 1 && term.up.length + term.down.length === sum.ids.length) {
    return productFactor(term, sum);
  }
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
  const { ids, intervals } = sum;
  for (let place = 0; place < slopes.length; place += 1) {
    const [least, most] = [ranges[2 * place] ?? 0, ranges[2 * place + 1] ?? 0];
    setSource(numbers, place, intervals[place], slopes[place] ?? 0, least, most);
  }
  pairs.forEach(({ slope }, place) => {
    numbers[FACTOR + FACTOR_SOURCE * slopes.length + place] = slope;
  });
  return { none: terms.length === 0, ids, intervals, rises, pairs, numbers, sum };
}

/**
 * The factor that is one product of sources that differ, as most amounts are: the same numbers, each by the one or two
 * products that it comes to.
 */
function productFactor(term: CompiledTerm, sum: CompiledSum): Factor | null {
  const { ids, intervals } = sum;
  const { coefficient } = term;
  const times = term.up.length;
  if (!(coefficient >= 0)) return null;
  const middle = middleOf(intervals);
  const bottom = intervals.map(({ low, high }, place) => (place < times ? low : high));
  const top = intervals.map(({ low, high }, place) => (place < times ? high : low));
  const all = (at: readonly number[], left = -1, other = -1) =>
    productWithout(coefficient, times, at, left, other);
  const [value, low, high] = [all(valuesOf(intervals)), all(bottom), all(top)];
  if (!(low >= 0 && value >= 0 && high < Infinity)) return null;
  const pairs: Pair[] = [];
  for (let a = 0; a < times; a += 1) {
    for (let b = a + 1; b < ids.length; b += 1) {
      const slope = b < times ? all(middle, a, b) : -all(middle, a) / (middle[b] ?? NaN);
      pairs.push({ a, b, slope });
    }
  }
  const numbers = new Float64Array(FACTOR + FACTOR_SOURCE * ids.length + pairs.length);
  const centre = all(middle);
  const reach = all(intervals.map((each) => Math.max(each.high, each.value)));
  numbers.set([value, low, high, centre, reach, coefficient, times]);
  const rises = intervals.map((interval, place) => {
    if (place < times) {
      setSource(numbers, place, interval, all(middle, place), all(bottom, place), all(top, place));
      return true;
    }
    const [least, most] = [-high / (top[place] ?? NaN), -low / (bottom[place] ?? NaN)];
    setSource(numbers, place, interval, -centre / (middle[place] ?? NaN), least, most);
    return least >= 0;
  });
  pairs.forEach(({ slope }, place) => {
    numbers[FACTOR + FACTOR_SOURCE * ids.length + place] = slope;
  });
  return { none: false, ids, intervals, rises, pairs, numbers, sum };
}

/** A coefficient times the first numbers and divided by the others, one or two of the first left out. */
function productWithout(
  coefficient: number,
  times: number,
  at: readonly number[],
  left: number,
  other: number,
): number {
  let product = coefficient;
  for (let place = 0; place < at.length; place += 1) {
    if (place >= times) product /= at[place] ?? NaN;
    else if (place !== left && place !== other) product *= at[place] ?? NaN;
  }
  return product;
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
