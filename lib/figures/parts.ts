import type { Nutrient } from '#lib/foods/nutrients';
import type { Figure, MissingPart } from '#lib/figures/figure';
import { boundsOf } from '#lib/units/bounds';
import type { Interval } from '#lib/units/interval';
import { collect, divideBySource, scale, sourceIds, type Term } from '#lib/units/sum-of-products';

/**
 * A figure before its bounds are taken: what is known, as a sum over sources, and what is not.
 * `above`: an unknown amount is to be added (the figure is at least the known part);
 * `below`: an unknown amount is to be taken away (at most); `open`: nothing can be said.
 * Sums of parts keep sources, so that shared errors and shared gaps meet before bounds are taken.
 */
export interface Parts {
  readonly terms: readonly Term[];
  readonly sources: ReadonlyMap<string, Interval>;
  readonly above: readonly MissingPart[];
  readonly below: readonly MissingPart[];
  readonly open: readonly MissingPart[];
}

export const NOTHING: Parts = { terms: [], sources: new Map(), above: [], below: [], open: [] };

/** Sum of parts. */
export function addParts(all: readonly Parts[]): Parts {
  return {
    terms: collect(all.flatMap((parts) => parts.terms)),
    sources: new Map(all.flatMap((parts) => [...parts.sources])),
    above: all.flatMap((parts) => parts.above),
    below: all.flatMap((parts) => parts.below),
    open: all.flatMap((parts) => parts.open),
  };
}

/** Parts multiplied by an exact factor; by 0 nothing is left, missing values included. */
export function scaleParts(parts: Parts, factor: number): Parts {
  if (factor === 0) return NOTHING;
  const { above, below } = parts;
  return {
    ...parts,
    terms: scale(parts.terms, factor),
    above: factor > 0 ? above : below,
    below: factor > 0 ? below : above,
  };
}

/** `a − b`: what `b` lacks makes the difference at most, what `a` lacks makes it at least. */
export function subtractParts(a: Parts, b: Parts): Parts {
  return addParts([a, scaleParts(b, -1)]);
}

/** Parts divided by an uncertain amount, such as a finished weight. */
export function divideParts(parts: Parts, id: string, divisor: Interval): Parts {
  return {
    ...parts,
    terms: divideBySource(parts.terms, id),
    sources: new Map([...parts.sources, [id, divisor]]),
  };
}

/**
 * Takes the bounds. A figure with a part to be added has no upper bound, with a part to be taken away no
 * lower bound, with both or with an open part neither.
 */
export function figureOf(nutrient: Nutrient, parts: Parts): Figure {
  const bounds = boundsOf(parts.terms, parts.sources);
  const noLow = parts.open.length > 0 || parts.below.length > 0;
  const noHigh = parts.open.length > 0 || parts.above.length > 0;
  return {
    nutrient,
    value: Math.max(0, bounds.value),
    low: noLow ? null : Math.max(0, bounds.low),
    high: noHigh ? null : Math.max(0, bounds.high),
    likelyLow: noLow ? null : Math.max(0, bounds.likelyLow),
    likelyHigh: noHigh ? null : Math.max(0, bounds.likelyHigh),
    missing: [...parts.open, ...parts.above, ...parts.below],
    sources: sourceIds(parts.terms),
  };
}
