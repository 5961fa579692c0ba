import type { Figure } from '#lib/figures/figure';

/**
 * How far a whisker's scale reaches to each side of the value, as a part of it. One scale for all
 * whiskers, so that a wider range looks wider: ± 20 %.
 */
export const WHISKER_REACH = 0.2;

/** Where an end of a bound lies on the scale: -1 and 1 are the scale's ends, 0 is the value. */
export interface WhiskerEnd {
  readonly at: number;
  /** `cut` goes on beyond the scale, `free` has no bound at all. */
  readonly end: 'bound' | 'cut' | 'free';
}

/** A bound on the common scale of whiskers. */
export interface WhiskerBound {
  readonly from: WhiskerEnd;
  readonly to: WhiskerEnd;
}

/**
 * Bounds about a value on the common scale. A value of 0 has no scale of its own: any bound beyond it is cut.
 * @example onWhisker(100, 90, 130) // from -0.5, a bound; to 1, cut
 */
export function onWhisker(
  value: Figure['value'],
  low: number | null,
  high: number | null,
): WhiskerBound {
  const end = (bound: number | null, side: -1 | 1): WhiskerEnd => {
    if (bound === null) return { at: side, end: 'free' };
    if (bound === value) return { at: 0, end: 'bound' };
    const at = (bound - value) / (Math.abs(value) * WHISKER_REACH);
    if (at < -1) return { at: -1, end: 'cut' };
    if (at > 1) return { at: 1, end: 'cut' };
    return { at, end: 'bound' };
  };
  return { from: end(low, -1), to: end(high, 1) };
}
