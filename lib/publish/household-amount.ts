import Fraction from 'fraction.js';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { Food, FoodMeasure } from '#lib/foods/food';

/** Whose words name a household amount already; what is counted or sized needs no other. */
const HOUSEHOLD =
  /\b(cups?|tbsps?|tablespoons?|tsps?|teaspoons?|spoons?|pieces?|slices?|cloves?|servings?|packs?|tubs?|cans?|jars?|tins?|handfuls?|pinch|small|medium|large)\b/i;

/** How far a practical amount may miss the grams; more and it is another amount (common practice, no source). */
const MAY_MISS = 0.05;

/** Practical amounts of each measure, largest measure first, in twelfths: thirds and quarters of a cup and so on. */
const PRACTICAL: readonly (readonly [names: RegExp, one: string, several: string, number[]])[] = [
  [/^cups?$/, 'cup', 'cups', [3, 4, 6, 8, 9, 12, 15, 16, 18, 20, 21, 24, 30, 36, 42, 48, 60, 72]],
  [/^(tbsp|tablespoon)s?$/, 'tbsp', 'tbsp', [6, 12, 18, 24, 30, 36]],
  [/^(tsp|teaspoon)s?$/, 'tsp', 'tsp', [3, 6, 9, 12, 15, 18, 24, 30]],
];

/**
 * What grams come to by a measure that the food's source states in the same state: the nearest practical amount, if it is
 * within 5 %; null where the words name a household amount, or no measure is meant for this form of the food.
 * @example householdAmount(line80gOats, 80_000, oats) // 'about 1 cup' (81 g)
 */
export function householdAmount(line: RecipeLine, massMg: number, food: Food): string | null {
  const isCounted = line.unit !== null && !['g', 'kg', 'oz', 'lb'].includes(line.unit);
  if (isCounted || line.asBought || line.state !== food.version.state) return null;
  if (HOUSEHOLD.test(line.text)) return null;
  for (const [names, one, several, twelfths] of PRACTICAL) {
    for (const measure of food.measures) {
      if (!names.test(unitOf(measure)) || !fitsWords(measure, line.text)) continue;
      const wanted = (massMg / measure.massMg) * (measure.qtyNum / measure.qtyDen) * 12;
      const near = nearest(twelfths, wanted);
      if (Math.abs(near - wanted) > MAY_MISS * wanted) continue;
      const amount = new Fraction(near).div(12).toFraction(true);
      return `about ${amount} ${near > 12 ? several : one}`;
    }
  }
  return null;
}

/** Of two that are as near the smaller. */
function nearest(all: readonly number[], wanted: number): number {
  return all.reduce((best, each) =>
    Math.abs(each - wanted) < Math.abs(best - wanted) ? each : best,
  );
}

const unitOf = ({ name }: FoodMeasure) => (name.split(',')[0] ?? '').trim().toLowerCase();

/** A measure of another form ("cup, melted") is not meant where the words do not say so. */
function fitsWords({ name }: FoodMeasure, text: string): boolean {
  const words =
    name
      .toLowerCase()
      .split(',')
      .slice(1)
      .join(' ')
      .match(/[a-z0-9]+/g) ?? [];
  const said = new Set(text.toLowerCase().match(/[a-z0-9]+/g));
  return words.every((word) => said.has(word));
}
