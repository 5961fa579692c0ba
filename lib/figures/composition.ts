import type { Food } from '#lib/foods/food';
import { cellInterval, servingInterval } from '#lib/foods/label-rounding';
import type { Nutrient } from '#lib/foods/nutrients';
import type { LineAmount } from '#lib/episode/line-amount';
import type { Interval } from '#lib/units/interval';
import { divideBySource, multiply, scale, source, type Term } from '#lib/units/sum-of-products';

/** A nutrient's share of an ingredient as a sum over sources, or null where the food states none. */
export interface Stated {
  readonly terms: readonly Term[];
  readonly sources: ReadonlyMap<string, Interval>;
}

/**
 * How much of a nutrient an amount of food carries, in the nutrient's unit.
 * An amount in servings of a food stated per serving multiplies directly, so the serving's weight cancels;
 * otherwise grams, then millilitres, are tried. Null: the food does not state it, or the amount and the
 * food's basis have no common measure.
 */
export function statedNutrient(food: Food, amount: LineAmount, nutrient: Nutrient): Stated | null {
  const { version } = food;
  const interval = cellInterval(version, nutrient);
  if (!interval) return null;
  const id = `food:${version.id}:${nutrient}`;
  const perUnit = unitsOfBasis(food, amount);
  if (!perUnit) return null;
  return {
    terms: multiply(perUnit.terms, [source(id)]),
    sources: new Map([...perUnit.sources, [id, interval]]),
  };
}

/** How many times the food's stated basis (100 g, 100 ml or a serving) the amount is. */
export function unitsOfBasis(food: Food, amount: LineAmount): Stated | null {
  const { version } = food;
  const { sources } = amount;
  if (version.basis === 'per100g') {
    return amount.massMg ? { terms: scale(amount.massMg, 1e-5), sources } : null;
  }
  if (version.basis === 'per100ml') {
    return amount.volumeMl ? { terms: scale(amount.volumeMl, 1e-2), sources } : null;
  }
  if (amount.servings) return { terms: amount.servings, sources };
  const serving = version.serving;
  if (!serving) return null;
  if (amount.massMg && serving.massMg) {
    return divideByServing(food, amount.massMg, sources);
  }
  if (amount.volumeMl && serving.volumeMl) {
    return { terms: scale(amount.volumeMl, 1 / serving.volumeMl), sources };
  }
  return null;
}

function divideByServing(
  food: Food,
  massMg: readonly Term[],
  sources: ReadonlyMap<string, Interval>,
): Stated | null {
  const interval = servingInterval(food.version);
  if (!interval) return null;
  const id = `serving:${food.version.id}`;
  return { terms: divideBySource(massMg, id), sources: new Map([...sources, [id, interval]]) };
}
