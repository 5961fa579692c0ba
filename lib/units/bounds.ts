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
export const OUTWARD = 2 ** -40;
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
  const inputs = inputsOf(terms, sources);
  const at = pointAt(inputs, ({ value }) => value);
  const value = evaluate(terms, at);
  const low = extreme(terms, inputs, -1);
  const high = extreme(terms, inputs, 1);
  const { centre, spread } = likely(terms, inputs);
  return settled({ value, low, high, centre, spread }, magnitude(terms, inputs));
}

/**
 * Bounds from extremes and a likely middle: the hard ones a step outward for what adding up such magnitudes may
 * have cost, the likely ones clipped to them, and both stretched to hold the value.
 */
export function settled(
  {
    value,
    low,
    high,
    centre,
    spread,
  }: Readonly<Record<'value' | 'low' | 'high' | 'centre' | 'spread', number>>,
  magnitudes: number,
): Bounds {
  const slack = OUTWARD * magnitudes;
  const hardLow = Math.min(low - slack, value);
  const hardHigh = Math.max(high + slack, value);
  return {
    value,
    low: hardLow,
    high: hardHigh,
    likelyLow: Math.min(value, Math.max(hardLow, centre - spread)),
    likelyHigh: Math.max(value, Math.min(hardHigh, centre + spread)),
  };
}

type Named = readonly (readonly [string, Interval])[];

/** What a sum rests on: inputs, and sums of inputs that it uses as if they were one, each after what it rests on. */
interface Inputs {
  readonly base: Named;
  readonly derived: readonly (readonly [string, readonly Term[]])[];
}

function inputsOf(terms: readonly Term[], sources: Sources): Inputs {
  const base = new Map<string, Interval>();
  const derived = new Map<string, readonly Term[]>();
  const visit = (sum: readonly Term[]) => {
    for (const id of sourceIds(sum)) {
      if (base.has(id) || derived.has(id)) continue;
      const interval = intervalOf(sources, id);
      if (!interval.of) {
        base.set(id, interval);
        continue;
      }
      visit(interval.of);
      derived.set(id, interval.of);
    }
  };
  visit(terms);
  return { base: [...base].sort(([a], [b]) => (a < b ? -1 : 1)), derived: [...derived] };
}

/** Every input at a point of its interval, and the sums of inputs that follow from them. */
function pointAt({ base, derived }: Inputs, point: (of: Interval) => number): Map<string, number> {
  const at = new Map(base.map(([id, interval]) => [id, point(interval)]));
  follow(at, derived);
  return at;
}

function follow(at: Map<string, number>, derived: Inputs['derived']): void {
  for (const [id, of] of derived) at.set(id, evaluate(of, at));
}

/** First derivatives by the inputs alone: through a sum of inputs by the chain rule. */
function inputSlopes(
  terms: readonly Term[],
  at: ReadonlyMap<string, number>,
  { derived }: Inputs,
): Map<string, number> {
  const slope = slopes(terms, at);
  for (const [id, of] of [...derived].reverse()) {
    const through = slope.get(id);
    slope.delete(id);
    if (through === undefined) continue;
    for (const [input, part] of slopes(of, at)) {
      slope.set(input, (slope.get(input) ?? 0) + through * part);
    }
  }
  return slope;
}

function intervalOf(sources: Sources, id: string): Interval {
  const interval = sources.get(id);
  if (!interval) throw new Error(`source without an interval: ${id}`);
  return interval;
}

/** Largest (direction 1) or smallest (direction -1) value over the box of the sources. */
function extreme(terms: readonly Term[], inputs: Inputs, direction: 1 | -1): number {
  const at = pointAt(inputs, ({ low, high }) => (low + high) / 2);
  let best = direction * evaluate(terms, at);
  for (let round = 0; round < MAX_ROUNDS; round += 1) {
    const slope = inputSlopes(terms, at, inputs);
    let moved = false;
    for (const [id, { low, high }] of inputs.base) {
      const sign = direction * (slope.get(id) ?? 0);
      const end = sign > 0 ? high : sign < 0 ? low : at.get(id);
      if (end !== undefined && end !== at.get(id)) {
        at.set(id, end);
        moved = true;
      }
    }
    follow(at, inputs.derived);
    best = Math.max(best, direction * evaluate(terms, at));
    if (!moved) break;
  }
  return direction * best;
}

function magnitude(terms: readonly Term[], inputs: Inputs): number {
  const at = pointAt(inputs, ({ high, value }) => Math.max(high, value));
  const positive = terms.map((term) => ({ ...term, coefficient: Math.abs(term.coefficient) }));
  return evaluate(positive, at);
}

function likely(terms: readonly Term[], inputs: Inputs): { centre: number; spread: number } {
  let sum = 0;
  const at = eachVariance(terms, inputs, (_ids, _slope, variance) => {
    sum += variance;
  });
  return { centre: evaluate(terms, at), spread: 2 * Math.sqrt(sum) };
}

/**
 * Calls back with each piece of the variance: the ids it comes from, its slope, and how much it is. Ratios go by
 * first derivatives alone. Returns the midpoints.
 */
function eachVariance(
  terms: readonly Term[],
  inputs: Inputs,
  visit: (ids: readonly string[], slope: number, variance: number) => void,
): ReadonlyMap<string, number> {
  const at = pointAt(inputs, ({ low, high }) => (low + high) / 2);
  const variance = new Map(
    inputs.base.map(([id, { low, high }]) => [id, ((high - low) / 2) ** 2 / 3]),
  );
  for (const [id, slope] of inputSlopes(terms, at, inputs)) {
    visit([id], slope, slope ** 2 * (variance.get(id) ?? 0));
  }
  for (const { a, b, slope } of mixedSlopes(terms, at)) {
    const [ofA, ofB] = [variance.get(a), variance.get(b)];
    if (ofA !== undefined && ofB !== undefined) visit([a, b], slope, slope ** 2 * ofA * ofB);
  }
  return at;
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
  const pieces: VariancePiece[] = [];
  eachVariance(terms, inputsOf(terms, sources), (ids, slope, variance) =>
    pieces.push({ ids, slope, variance }),
  );
  return pieces;
}
