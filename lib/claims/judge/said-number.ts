import { saidInterval, type SaidInterval } from '#lib/claims/said-interval';
import type { Statement } from '#lib/claims/statement';
import { aboutTolerance } from '#lib/figures/judge-limit';
import { settled } from '#lib/units/print';

export type NutrientStatement = Extract<Statement, { readonly kind: 'nutrient' }>;

/**
 * What a stated amount of a nutrient covers, in the unit it was stated in (MODEL D.1): half of its last digit as it
 * stands there, half a ten where it is said aloud, from 100 on and ends in 0; “about” 5 %, and at least 5 kcal or 1 g.
 * @param factor how much of the nutrient’s own unit one of the stated unit is
 * @example saidNutrient(about640, 1, true) // 608 to 672
 */
export function saidNutrient(
  statement: NutrientStatement,
  factor: number,
  spoken: boolean,
): SaidInterval {
  return saidInterval(statement, {
    spoken,
    about: (value) => settled(aboutTolerance(statement.nutrient, settled(value * factor)) / factor),
  });
}
