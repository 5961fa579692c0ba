import type { SaidSteps } from '#lib/claims/said-interval';
import type { AmountUnit } from '#lib/claims/statement';

/**
 * Half of what an amount is said to: grams and millilitres by their last digit; ounces to a half, pounds, cups and
 * spoons to an eighth, kilograms and litres to a tenth, since nobody says whole pounds for what is nearer to a half.
 * Common practice, no source.
 */
const HALF: Readonly<Partial<Record<AmountUnit, number>>> = {
  kg: 0.05,
  l: 0.05,
  oz: 0.25,
  flOz: 0.25,
  lb: 1 / 16,
  tsp: 1 / 16,
  tbsp: 1 / 16,
  cup: 1 / 16,
  pint: 1 / 16,
  quart: 1 / 16,
  gallon: 1 / 16,
  piece: 0,
};

/** How coarse an amount is said: “about” reaches 5 %, and at least a gram or millilitre. Common practice, no source. */
export function amountSteps(unit: AmountUnit, spoken: boolean): SaidSteps {
  const least = unit === 'g' || unit === 'ml' ? 1 : 0;
  return {
    spoken,
    half: (digit) => Math.min(HALF[unit] ?? Infinity, digit),
    about: (value) => Math.max(least, value * 0.05, unit === 'piece' ? 0.5 : 0),
  };
}
