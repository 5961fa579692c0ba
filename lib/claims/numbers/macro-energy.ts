import { ENERGY_PER_G } from '#lib/foods/energy-per-gram';
import type { Nutrient } from '#lib/foods/nutrients';

const { protein, carbohydrate, fat } = ENERGY_PER_G.kcal;

/** Kilocalories in a gram of each of the macronutrients, by which rows of numbers are told apart. */
export const MACRO_KCAL: Partial<Readonly<Record<Nutrient, number>>> = {
  protein,
  carbohydrate,
  fat,
};
