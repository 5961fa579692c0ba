import { settled, type Bounds } from '#lib/units/bounds';
import type { Interval } from '#lib/units/interval';
import type { Sources, Term } from '#lib/units/sum-of-products';

/** A term with its sources as places in the list of the sum's sources. */
export interface CompiledTerm {
  readonly coefficient: number;
  readonly up: readonly number[];
  readonly down: readonly number[];
}

/**
 * A sum of products with its sources as places in a list instead of names: the same sum as the terms it was
 * compiled from (`sum-of-products.ts`), laid out so that it is quickly evaluated many times.
 */
export interface CompiledSum {
  readonly terms: readonly CompiledTerm[];
  /** Ids of the sources in the order in which the terms first name them. */
  readonly ids: readonly string[];
  readonly intervals: readonly Interval[];
}

const MAX_ROUNDS = 24;
/** From so many sources on, a place is looked up by its name instead of by walking the list. */
const WALK = 8;

/** Compiles terms; throws on a source that has no interval. */
export function compileSum(terms: readonly Term[], sources: Sources): CompiledSum {
  const ids: string[] = [];
  const intervals: Interval[] = [];
  const places = new Map<string, number>();
  const placeOf = (id: string): number => {
    const known = ids.length <= WALK ? ids.indexOf(id) : (places.get(id) ?? -1);
    if (known >= 0) return known;
    const interval = sources.get(id);
    if (!interval) throw new Error(`source without an interval: ${id}`);
    if (ids.length === WALK) ids.forEach((each, place) => places.set(each, place));
    if (ids.length >= WALK) places.set(id, ids.length);
    intervals.push(interval);
    return ids.push(id) - 1;
  };
  const compiled = terms.map(({ coefficient, up, down }) => ({
    coefficient,
    up: up.map(placeOf),
    down: down.map(placeOf),
  }));
  return { terms: compiled, ids, intervals };
}

/**
 * The bounds of `boundsOf` (`bounds.ts`, where they are defined), to the last bit, and quicker.
 * @example compiledBounds(compileSum([source('a')], new Map([['a', plusMinus(10, 1)]])))
 *   // value 10, low 9, high 11, likely 9 to 11
 */
export function compiledBounds(sum: CompiledSum): Bounds {
  const { intervals } = sum;
  const value = evaluateAt(
    sum.terms,
    intervals.map((interval) => interval.value),
  );
  const middle = middleOf(intervals);
  const low = extreme(sum, middle, -1);
  const high = extreme(sum, middle, 1);
  const centre = evaluateAt(sum.terms, middle);
  const spread = 2 * Math.sqrt(varianceOf(sum, middle));
  return settled({ value, low, high, centre, spread }, magnitude(sum));
}

/** The sum where each source stands at the given point. */
export function evaluateAt(terms: readonly CompiledTerm[], at: readonly number[]): number {
  let sum = 0;
  for (const term of terms) sum += productAt(term, at, -1);
  return sum;
}

/** The middle of each interval. */
export function middleOf(intervals: readonly Interval[]): number[] {
  return intervals.map(({ low, high }) => (low + high) / 2);
}

/** The variance of an error that is rectangular over an interval. */
export function rectangular({ low, high }: Interval): number {
  return ((high - low) / 2) ** 2 / 3;
}

/** Sum of magnitudes, each source at its largest. */
export function magnitude({ terms, intervals }: CompiledSum): number {
  const at = intervals.map(({ high, value }) => Math.max(high, value));
  let sum = 0;
  for (const { coefficient, up, down } of terms) {
    sum += productAt({ coefficient: Math.abs(coefficient), up, down }, at, -1);
  }
  return sum;
}

/** A term's product with one occurrence of a source left out of the numerator; −1 leaves out none. */
function productAt(term: CompiledTerm, at: readonly number[], left: number): number {
  let product = term.coefficient;
  let skipped = left < 0;
  for (const place of term.up) {
    if (!skipped && place === left) skipped = true;
    else product *= at[place] ?? NaN;
  }
  for (const place of term.down) product /= at[place] ?? NaN;
  return product;
}

function occurrences(places: readonly number[], place: number): number {
  let count = 0;
  for (const each of places) if (each === place) count += 1;
  return count;
}

/** First derivative of one term by one source at a point. */
function termSlope(term: CompiledTerm, at: readonly number[], place: number): number {
  const up = occurrences(term.up, place);
  const down = occurrences(term.down, place);
  let slope = 0;
  if (up > 0) slope += up * productAt(term, at, place);
  if (down > 0) slope -= (down * productAt(term, at, -1)) / (at[place] ?? NaN);
  return slope;
}

/** First derivatives of a sum by each of its sources at a point. */
export function slopesAt({ terms, ids }: CompiledSum, at: readonly number[]): number[] {
  const slopes = new Array<number>(ids.length).fill(0);
  const add = (term: CompiledTerm, place: number) => {
    slopes[place] = (slopes[place] ?? 0) + termSlope(term, at, place);
  };
  for (const term of terms) {
    const { up, down } = term;
    up.forEach((place, index) => {
      if (up.indexOf(place) === index) add(term, place);
    });
    down.forEach((place, index) => {
      if (down.indexOf(place) === index && !up.includes(place)) add(term, place);
    });
  }
  return slopes;
}

/** Two sources of a sum that are multiplied, and the mixed second derivative at a point. */
export interface Pair {
  readonly a: number;
  readonly b: number;
  slope: number;
}

/** Mixed second derivatives of a sum, by pairs of distinct sources, at a point. */
export function pairsAt({ terms, ids }: CompiledSum, at: readonly number[]): Pair[] {
  const byPair = new Map<number, Pair>();
  for (const term of terms) {
    const { up, down } = term;
    for (let index = 0; index < up.length; index += 1) {
      const a = up[index] ?? 0;
      if (up.indexOf(a) !== index) continue;
      const rest = { ...term, up: up.filter((_, place) => place !== index) };
      const others = [...rest.up, ...down];
      others.forEach((b, place) => {
        if (others.indexOf(b) !== place) return;
        if ((ids[b] ?? '') <= (ids[a] ?? '') && (b === a || up.includes(b))) return;
        const slope = termSlope(rest, at, b) * occurrences(up, a);
        const key = a < b ? a * ids.length + b : b * ids.length + a;
        const known = byPair.get(key);
        if (known) known.slope += slope;
        else byPair.set(key, { a, b, slope });
      });
    }
  }
  return [...byPair.values()];
}

/** Largest (direction 1) or smallest (direction -1) value over the box of the sources. */
function extreme(sum: CompiledSum, middle: readonly number[], direction: 1 | -1): number {
  const at = [...middle];
  let best = direction * evaluateAt(sum.terms, at);
  for (let round = 0; round < MAX_ROUNDS; round += 1) {
    const slopes = slopesAt(sum, at);
    let moved = false;
    sum.intervals.forEach(({ low, high }, place) => {
      const sign = direction * (slopes[place] ?? 0);
      const end = sign > 0 ? high : sign < 0 ? low : at[place];
      if (end !== undefined && end !== at[place]) {
        at[place] = end;
        moved = true;
      }
    });
    best = Math.max(best, direction * evaluateAt(sum.terms, at));
    if (!moved) break;
  }
  return direction * best;
}

function varianceOf(sum: CompiledSum, middle: readonly number[]): number {
  const variances = sum.intervals.map(rectangular);
  let variance = 0;
  slopesAt(sum, middle).forEach((slope, place) => {
    variance += slope ** 2 * (variances[place] ?? 0);
  });
  for (const { a, b, slope } of pairsAt(sum, middle)) {
    variance += slope ** 2 * (variances[a] ?? 0) * (variances[b] ?? 0);
  }
  return variance;
}
