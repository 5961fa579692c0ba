import type { Term } from '#lib/units/sum-of-products';

/**
 * A value with the bounds within which its true value lies.
 * `low ≤ value ≤ high`, all finite.
 */
export interface Interval {
  readonly low: number;
  readonly value: number;
  readonly high: number;
  /**
   * Where it is no input but a sum of other sources (a finished weight worked out from ingredients): that sum, so
   * that an error it shares with what it divides is taken as one. The bounds are then those of the sum.
   */
  readonly of?: readonly Term[];
}

/** An exact value. `exactly(5)` → `{ low: 5, value: 5, high: 5 }`. */
export function exactly(value: number): Interval {
  return { low: value, value, high: value };
}

/**
 * A value plus or minus a half-width in the same unit, not below zero.
 * `plusMinus(100, 0.5)` → `{ low: 99.5, value: 100, high: 100.5 }`.
 */
export function plusMinus(value: number, halfWidth: number): Interval {
  return { low: Math.max(0, value - halfWidth), value, high: value + halfWidth };
}

/** Product of two non-negative intervals. */
export function times(a: Interval, b: Interval): Interval {
  return { low: a.low * b.low, value: a.value * b.value, high: a.high * b.high };
}

/** An interval multiplied by a non-negative exact factor. */
export function scaled(a: Interval, factor: number): Interval {
  return { low: a.low * factor, value: a.value * factor, high: a.high * factor };
}

/**
 * The part that two intervals share, or null if they share nothing.
 * Used where one quantity is printed twice (per serving and per 100 g).
 */
export function intersect(a: Interval, b: Interval): Interval | null {
  const low = Math.max(a.low, b.low);
  const high = Math.min(a.high, b.high);
  if (low > high) return null;
  return { low, value: Math.min(high, Math.max(low, a.value)), high };
}
