import type { Nutrient } from '#lib/foods/nutrients';
import type { Figure, MissingPart, ProvisionalPart } from '#lib/figures/figure';
import { quickBounds } from '#lib/units/quick-bounds';
import type { Interval } from '#lib/units/interval';
import {
  collect,
  divideBySource,
  multiply,
  scale,
  source,
  sourceIds,
  type Sources,
  type Term,
} from '#lib/units/sum-of-products';

/**
 * A figure before its bounds are taken: what is known, as a sum over sources, and what is not.
 * `above`: an unknown amount is to be added (the figure is at least the known part);
 * `below`: an unknown amount is to be taken away (at most); `open`: nothing can be said;
 * `provisional`: ingredients in it whose food is not confirmed, or whose weight waits in a photo.
 * Sums of parts keep sources, so that shared errors and shared gaps meet before bounds are taken.
 */
export interface Parts {
  readonly terms: readonly Term[];
  readonly sources: ReadonlyMap<string, Interval>;
  readonly above: readonly MissingPart[];
  readonly below: readonly MissingPart[];
  readonly open: readonly MissingPart[];
  readonly provisional: readonly ProvisionalPart[];
}

export const NOTHING: Parts = {
  terms: [],
  sources: new Map(),
  above: [],
  below: [],
  open: [],
  provisional: [],
};

/** Sum of parts. */
export function addParts(all: readonly Parts[]): Parts {
  return {
    terms: collect(all.flatMap((parts) => parts.terms)),
    sources: new Map(all.flatMap((parts) => [...parts.sources])),
    above: all.flatMap((parts) => parts.above),
    below: all.flatMap((parts) => parts.below),
    open: all.flatMap((parts) => parts.open),
    provisional: oncePerLine(all.flatMap((parts) => parts.provisional)),
  };
}

export function oncePerLine(parts: readonly ProvisionalPart[]): readonly ProvisionalPart[] {
  if (parts.length < 2) return parts;
  return [...new Map(parts.map((part) => [`${part.lineId} ${part.why}`, part])).values()];
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

/**
 * Parts multiplied by an amount that is itself a sum over sources and not below 0, such as how much of a nested
 * recipe an ingredient is.
 */
export function multiplyParts(
  parts: Parts,
  factor: readonly Term[],
  sources: ReadonlyMap<string, Interval>,
): Parts {
  if (factor.length === 0) return NOTHING;
  return {
    ...parts,
    terms: multiply(parts.terms, factor),
    sources: new Map([...parts.sources, ...sources]),
  };
}

/** Parts divided by a source of an uncertain amount, such as a finished weight, given with what it rests on. */
export function divideParts(parts: Parts, id: string, sources: Sources): Parts {
  return {
    ...parts,
    terms: divideBySource(parts.terms, id),
    sources: new Map([...parts.sources, ...sources]),
  };
}

/**
 * Takes the bounds. A figure with a part to be added has no upper bound, with a part to be taken away no
 * lower bound, with both or with an open part neither.
 */
export function figureOf(nutrient: Nutrient, parts: Parts): Figure {
  const bounds = quickBounds(parts.terms, parts.sources);
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
    provisional: parts.provisional,
    sources: sourceIds(parts.terms),
  };
}

/**
 * A part of which it is not known which of two it was: anywhere between both, the middle of their values taken.
 * What either lacks is missing. Errors that the two share with other parts are taken as their own, so hard
 * bounds stay true and may be a little wide.
 * @param id names the choice as one source of error
 * @example eitherParts('either:l1', a, b) // a is 100 to 110, b 140 to 160: 100 to 160
 */
export function eitherParts(id: string, a: Parts, b: Parts): Parts {
  const [above, below, open, provisional] = [
    [...a.above, ...b.above],
    [...a.below, ...b.below],
    [...a.open, ...b.open],
    oncePerLine([...a.provisional, ...b.provisional]),
  ];
  const first = quickBounds(a.terms, a.sources);
  const second = quickBounds(b.terms, b.sources);
  const interval = {
    low: Math.min(first.low, second.low),
    value: (first.value + second.value) / 2,
    high: Math.max(first.high, second.high),
  };
  return {
    terms: [source(id)],
    sources: new Map([[id, interval]]),
    above,
    below,
    open,
    provisional,
  };
}
