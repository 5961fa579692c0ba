import { cellOf } from '#lib/foods/cell-of';
import type { Food } from '#lib/foods/food';
import { namesBrand } from '#lib/foods/names-brand';
import { STATED_NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { printedValue } from '#lib/units/printed';

/** The most that any food of a table holds of a nutrient in 100 g, and which food that is. */
export interface LargestValue {
  readonly value: number;
  readonly sourceNo: string;
  readonly name: string;
}

/** What is limited by the mass of the food, or by what it is a part of: no table is asked for it. */
const LIMITED_BY_MASS: ReadonlySet<Nutrient> = new Set<Nutrient>([
  'water',
  'energyKcal',
  'energyKj',
  'protein',
  'fat',
  'ash',
  'carbohydrate',
  'fibre',
  'sugars',
  'addedSugars',
  'polyols',
  'alcohol',
  'saturated',
  'monounsaturated',
  'polyunsaturated',
  'transFat',
  'sodium',
  'salt',
]);

/**
 * The largest value of each vitamin, mineral and of cholesterol in foods that are stated per 100 g, in the
 * nutrient's unit; of equal ones the first. A nutrient that no food states is left out.
 * @example largestValues(loadSr28()).get('cholesterol') // { value: 3100, sourceNo: '13320', … }
 */
export function largestValues(foods: readonly Food[]): ReadonlyMap<Nutrient, LargestValue> {
  const largest = new Map<Nutrient, LargestValue>();
  const nutrients = STATED_NUTRIENTS.filter((name) => !LIMITED_BY_MASS.has(name));
  for (const { name, version } of foods.filter((food) => food.version.basis === 'per100g')) {
    for (const nutrient of nutrients) {
      const cell = cellOf(version.values, nutrient);
      if (cell.kind !== 'eq') continue;
      const value = printedValue(cell);
      if (value > (largest.get(nutrient)?.value ?? -1)) {
        largest.set(nutrient, { value, sourceNo: version.sourceNo, name: withoutBrand(name) });
      }
    }
  }
  return largest;
}

/** A name as far as it says what the food is: `withoutBrand('Cereals ready-to-eat, BRANDLEY, Bran')` → its first part. */
function withoutBrand(name: string): string {
  const parts = name.split(', ');
  const brand = parts.findIndex((part) => namesBrand(part));
  return brand < 0 ? name : parts.slice(0, Math.max(1, brand)).join(', ');
}
