import { FOOD_SAFETY_CHART, type Source } from '#lib/safety/caution';

/** Kinds of food that have a least inside temperature of their own. */
export const FOOD_CLASSES = [
  'poultry',
  'groundMeat',
  'wholeCut',
  'precookedHam',
  'eggDish',
  'leftover',
  'fish',
] as const;
export type FoodClass = (typeof FOOD_CLASSES)[number];

/** A row of the chart: the least inside temperature and how long the food must then rest. */
export interface SafeTemperature {
  readonly foodClass: FoodClass;
  readonly name: string;
  /** As published, in whole degrees Fahrenheit. */
  readonly fahrenheit: number;
  /** Thousandths of a degree Celsius: (F − 32) × 5/9, rounded up so that it is never too low. */
  readonly milliC: number;
  readonly restS: number;
  readonly source: Source;
}

function row(foodClass: FoodClass, name: string, fahrenheit: number, restS = 0): SafeTemperature {
  const milliC = Math.ceil(((fahrenheit - 32) * 5000) / 9);
  return { foodClass, name, fahrenheit, milliC, restS, source: FOOD_SAFETY_CHART };
}

/** Safe minimum internal temperatures (FoodSafety.gov chart of 12 April 2019; the same at USDA FSIS). */
export const SAFE_TEMPERATURES: readonly SafeTemperature[] = [
  row('poultry', 'poultry, whole, parts, ground or stuffing', 165),
  row('groundMeat', 'ground beef, pork, veal or lamb', 160),
  row('wholeCut', 'steaks, chops and roasts of beef, pork, veal or lamb; raw ham', 145, 180),
  row('precookedHam', 'pre-cooked ham, reheated', 165),
  row('eggDish', 'egg dishes', 160),
  row('leftover', 'leftovers and casseroles', 165),
  row('fish', 'fin fish, or until opaque and flaking', 145),
];

/** The chart's row for a kind of food. `safeTemperature('poultry').fahrenheit` → 165 */
export function safeTemperature(foodClass: FoodClass): SafeTemperature {
  const found = SAFE_TEMPERATURES.find((entry) => entry.foodClass === foodClass);
  if (found === undefined) throw new Error(`No safe temperature for ${foodClass}`);
  return found;
}
