import type { EpisodeFile } from '#lib/episode/schema';
import { shownStep } from '#lib/figures/print-figure';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { printTo } from '#lib/units/print';

type Region = EpisodeFile['episode']['region'];

/**
 * A value with its unit, as a viewer of the episode's region reads it: '31 g of protein', and of energy '640 calories' in
 * the US, '640 kcal' and '2678 kJ' in the EU.
 * @param value a number already printed stays as it is
 */
export function amountWords(nutrient: Nutrient, value: number | string, region: Region): string {
  const number = typeof value === 'string' ? value : printTo(value, shownStep(nutrient, value));
  if (nutrient === 'energyKcal') return `${number} ${region === 'US' ? 'calories' : 'kcal'}`;
  if (nutrient === 'energyKj') return `${number} kJ`;
  const { unit, label } = NUTRIENTS[nutrient];
  return `${number} ${unit} of ${label}`;
}

/** What is counted, behind a number: 'g protein', 'kJ', and of energy 'calories' in the US, 'kcal' in the EU. */
export function nutrientWords(nutrient: Nutrient, region: Region): string {
  const { unit, label } = NUTRIENTS[nutrient];
  if (nutrient === 'energyKcal') return region === 'US' ? label : unit;
  return nutrient === 'energyKj' ? unit : `${unit} ${label}`;
}

/** The same as the name of a field: 'protein, g', and of energy 'calories' in the US, 'energy, kcal' in the EU. */
export function nutrientLabel(nutrient: Nutrient, region: Region): string {
  const { unit, label } = NUTRIENTS[nutrient];
  if (nutrient === 'energyKcal') return region === 'US' ? label : `energy, ${unit}`;
  return `${label}, ${unit}`;
}
