import { cellOf } from '#lib/foods/cell-of';
import type { FoodVersion } from '#lib/foods/food';
import { amountRange } from '#lib/foods/label-column';
import { firstColumnInterval, labelInterval } from '#lib/foods/label-rounding';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { intersect } from '#lib/units/interval';

/**
 * What both columns of a label allow together for a nutrient, in the second column's basis: where they share
 * nothing, what the first column makes it. Null where one of them does not state it, or the serving is unknown.
 * @example "both columns: 3.55–3.65 g"; "the other makes it 7.4–7.9 g"
 */
export function togetherWords(version: FoodVersion, nutrient: Nutrient): string | null {
  const { secondColumn, rule } = version;
  const first = firstColumnInterval(version, nutrient);
  const second = labelInterval(rule, nutrient, cellOf(secondColumn?.values ?? {}, nutrient));
  if (!first || !second) return null;
  const { unit } = NUTRIENTS[nutrient];
  const shared = intersect(second, first);
  return shared
    ? `both columns: ${amountRange(shared, unit)}`
    : `the other makes it ${amountRange(first, unit)}`;
}
