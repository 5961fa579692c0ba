import type { NutrientUnit } from '#lib/claims/statement';
import type { Region } from '#lib/figures/line-parts';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';

/** What a nutrient is called in the region. */
export function nutrientName(nutrient: Nutrient, region: Region): string {
  if (nutrient === 'netCarbohydrate') return 'net carbs';
  if (nutrient === 'fibre' && region === 'US') return 'fiber';
  return NUTRIENTS[nutrient].label;
}

const SPOKEN_UNITS: Partial<Readonly<Record<NutrientUnit, string>>> = {
  g: 'grams',
  mg: 'milligrams',
  µg: 'micrograms',
  kJ: 'kilojoules',
};

/**
 * A number with its unit and what it counts, as it is written.
 * @example amountText('71', 'protein', 'g', 'US') // '71 g of protein'
 * @example amountText('about 610', 'energyKcal', 'kcal', 'US') // 'about 610 calories'
 */
export function amountText(
  number: string,
  nutrient: Nutrient,
  unit: NutrientUnit,
  region: Region,
): string {
  return withUnit(number, nutrient, unit, region, unit);
}

/** The same as it is said aloud: '71 grams of protein', in the EU '612 kilocalories'. */
export function amountSaid(
  number: string,
  nutrient: Nutrient,
  unit: NutrientUnit,
  region: Region,
): string {
  const spoken = unit === 'kcal' ? 'kilocalories' : (SPOKEN_UNITS[unit] ?? unit);
  return withUnit(number, nutrient, unit, region, spoken);
}

function withUnit(
  number: string,
  nutrient: Nutrient,
  unit: NutrientUnit,
  region: Region,
  called: string,
): string {
  const name = nutrientName(nutrient, region);
  if (unit === 'kcal') return `${number} ${region === 'US' ? 'calories' : called}`;
  if (unit === 'kJ') return `${number} ${called}`;
  if (unit === '%DV') {
    const of = region === 'US' ? 'the Daily Value' : 'the reference intake';
    return `${number} % of ${of} for ${name}`;
  }
  if (unit === '%') return `${number} % of the calories from ${name}`;
  return `${number} ${called} of ${name}`;
}

/** What a stated unit is printed to: whole, and tenths of a gram below 10. */
export function statedStep(unit: NutrientUnit, value: number): number {
  return unit === 'g' && Math.abs(value) < 10 ? 0.1 : 1;
}
