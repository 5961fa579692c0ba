import type { Interval } from '#lib/units/interval';
import {
  evaluate,
  mixedSlopes,
  slopes,
  sourceIds,
  type Sources,
  type Term,
} from '#lib/units/sum-of-products';

/** A value with its hard bound and, inside it, the bound that holds 95 % of the time. */
export interface Bounds {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly likelyLow: number;
  readonly likelyHigh: number;
}

/** One outward step for accumulated floating-point error, relative to the sum of magnitudes. */
const OUTWARD = 2 ** -40;
const MAX_ROUNDS = 24;

/**
 * Bounds of a sum of products.
 *
 * Hard: each source stands at the end of its interval that its slope points to; slopes are taken again
 * at the point found until nothing moves (one round where every source only raises the sum).
 * Likely: errors rectangular and independent where their ids differ, variance by first derivatives plus
 * the product term Var(xy) = μx²σy² + μy²σx² + σx²σy² (JCGM 100:2008, 5.1 and its note; from memory),
 * half-width 2u about the sum at the midpoints, clipped to the hard bound, stretched to hold the value.
 *
 * @example boundsOf([{ coefficient: 1, up: ['a'], down: [] }], new Map([['a', plusMinus(10, 1)]]))
 *   // value 10, low 9, high 11, likely 9 to 11
 */
export function boundsOf(terms: readonly Term[], sources: Sources): Bounds {
  const ids = sourceIds(terms);
  const intervals = ids.map((id) => [id, intervalOf(sources, id)] as const);
  const value = evaluate(terms, new Map(intervals.map(([id, interval]) => [id, interval.value])));
  const low = extreme(terms, intervals, -1);
  const high = extreme(terms, intervals, 1);
  const slack = OUTWARD * magnitude(terms, intervals);
  const hardLow = Math.min(low - slack, value);
  const hardHigh = Math.max(high + slack, value);
  const { centre, spread } = likely(terms, intervals);
  return {
    value,
    low: hardLow,
    high: hardHigh,
    likelyLow: Math.min(value, Math.max(hardLow, centre - spread)),
    likelyHigh: Math.max(value, Math.min(hardHigh, centre + spread)),
  };
}

type Named = readonly (readonly [string, Interval])[];

function intervalOf(sources: Sources, id: string): Interval {
  const interval = sources.get(id);
  if (!interval) throw new Error(`source without an interval: ${id}`);
  return interval;
}

/** Largest (direction 1) or smallest (direction -1) value over the box of the sources. */
function extreme(terms: readonly Term[], intervals: Named, direction: 1 | -1): number {
  const at = new Map(intervals.map(([id, { low, high }]) => [id, (low + high) / 2]));
  let best = direction * evaluate(terms, at);
  for (let round = 0; round < MAX_ROUNDS; round += 1) {
    const slope = slopes(terms, at);
    let moved = false;
    for (const [id, { low, high }] of intervals) {
      const sign = direction * (slope.get(id) ?? 0);
      const end = sign > 0 ? high : sign < 0 ? low : at.get(id);
      if (end !== undefined && end !== at.get(id)) {
        at.set(id, end);
        moved = true;
      }
    }
    best = Math.max(best, direction * evaluate(terms, at));
    if (!moved) break;
  }
  return direction * best;
}

function magnitude(terms: readonly Term[], intervals: Named): number {
  const at = new Map(intervals.map(([id, { high, value }]) => [id, Math.max(high, value)]));
  const positive = terms.map((term) => ({ ...term, coefficient: Math.abs(term.coefficient) }));
  return evaluate(positive, at);
}

function likely(terms: readonly Term[], intervals: Named): { centre: number; spread: number } {
  const { at, of } = midpoints(intervals);
  let sum = 0;
  eachVariance(terms, at, of, (_ids, _slope, variance) => {
    sum += variance;
  });
  return { centre: evaluate(terms, at), spread: 2 * Math.sqrt(sum) };
}

/** Calls back with each piece of the variance: the ids it comes from, its slope, and how much it is. */
function eachVariance(
  terms: readonly Term[],
  at: ReadonlyMap<string, number>,
  of: (id: string) => number,
  visit: (ids: readonly string[], slope: number, variance: number) => void,
): void {
  for (const [id, slope] of slopes(terms, at)) {
    visit([id], slope, slope ** 2 * of(id));
  }
  for (const { a, b, slope } of mixedSlopes(terms, at)) {
    visit([a, b], slope, slope ** 2 * of(a) * of(b));
  }
}

/** A piece of the likely variance of a sum: one source, or two that are multiplied. */
export interface VariancePiece {
  readonly ids: readonly string[];
  /** First or mixed derivative at the midpoints. */
  readonly slope: number;
  readonly variance: number;
}

/**
 * The likely variance of a sum of products in its pieces, before clipping: their sum is the square of half
 * the likely half-width.
 * @example variancePieces([source('a')], new Map([['a', plusMinus(10, 3)]])) // one piece of 3
 */
export function variancePieces(terms: readonly Term[], sources: Sources): VariancePiece[] {
  const intervals = sourceIds(terms).map((id) => [id, intervalOf(sources, id)] as const);
  const { at, of } = midpoints(intervals);
  const pieces: VariancePiece[] = [];
  eachVariance(terms, at, of, (ids, slope, variance) => pieces.push({ ids, slope, variance }));
  return pieces;
}

/** The middle of each interval, and the variance of an error that is rectangular over it. */
function midpoints(intervals: Named) {
  const at = new Map(intervals.map(([id, { low, high }]) => [id, (low + high) / 2]));
  const variance = new Map(
    intervals.map(([id, { low, high }]) => [id, ((high - low) / 2) ** 2 / 3]),
  );
  return { at, of: (id: string) => variance.get(id) ?? 0 };
}
