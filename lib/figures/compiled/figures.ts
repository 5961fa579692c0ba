import type { Nutrient } from '#lib/foods/nutrients';
import type { Lacking } from '#lib/figures/compiled/lists';
import type { Panel } from '#lib/figures/compiled/panel';
import { SUM } from '#lib/figures/compiled/tables';
import type { Sums } from '#lib/figures/compiled/sums';
import type { Figure, ProvisionalPart } from '#lib/figures/figure';
import { OUTWARD } from '#lib/units/bounds';

export type Figures = Partial<Readonly<Record<Nutrient, Figure>>>;

/** Figures by name, in the panel's order. */
export function figuresFrom(
  { nutrients }: Panel,
  figure: (nutrient: Nutrient, place: number) => Figure,
): Figures {
  const figures: Partial<Record<Nutrient, Figure>> = {};
  for (let place = 0; place < nutrients.length; place += 1) {
    const nutrient = nutrients[place];
    if (nutrient) figures[nutrient] = figure(nutrient, place);
  }
  return figures;
}

/** Numbers of the bounds of a nutrient: value, low, high, likely low, likely high. */
export const BOUNDS = 5;

/**
 * Takes the bounds of all nutrients of a sum, times an exact number above zero: one step outward, likely bounds
 * clipped to the hard ones and stretched to hold the value. By nutrient `BOUNDS` numbers; some may be below 0.
 */
export function takeBounds(
  { row, at: { variance, excess } }: Pick<Sums, 'row' | 'at'>,
  times: number,
): Float64Array {
  const bounds = new Float64Array((BOUNDS * variance) / SUM);
  for (let from = 0, place = 0, to = 0; from < variance; from += SUM, place += 1, to += BOUNDS) {
    const value = times * (row[from] ?? 0);
    const most = times * (row[from + 2] ?? 0);
    const slack = OUTWARD * (most + times * (row[excess + place] ?? 0));
    const low = Math.min(times * (row[from + 1] ?? 0) - slack, value);
    const high = Math.max(most + slack, value);
    const middle = times * (row[from + 3] ?? 0);
    const spread = 2 * times * Math.sqrt(row[variance + place] ?? 0);
    bounds[to] = value;
    bounds[to + 1] = low;
    bounds[to + 2] = high;
    bounds[to + 3] = Math.min(value, Math.max(low, middle - spread));
    bounds[to + 4] = Math.max(value, Math.min(high, middle + spread));
  }
  return bounds;
}

/** The figure of one nutrient: its bounds, not below 0, and sides that are not bounded left open. */
export function figureAt(
  nutrient: Nutrient,
  bounds: Float64Array,
  place: number,
  { open, below, above, missing }: Lacking,
  provisional: readonly ProvisionalPart[],
  sources: readonly string[],
): Figure {
  const at = BOUNDS * place;
  const noLow = open.length > 0 || below.length > 0;
  const noHigh = open.length > 0 || above.length > 0;
  return {
    nutrient,
    value: Math.max(0, bounds[at] ?? 0),
    low: noLow ? null : Math.max(0, bounds[at + 1] ?? 0),
    high: noHigh ? null : Math.max(0, bounds[at + 2] ?? 0),
    likelyLow: noLow ? null : Math.max(0, bounds[at + 3] ?? 0),
    likelyHigh: noHigh ? null : Math.max(0, bounds[at + 4] ?? 0),
    missing,
    provisional,
    sources,
  };
}
