import { halfDigit, saidInterval, type SaidInterval } from '#lib/claims/said-interval';
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
  const decimals = writtenDecimals(statement);
  const half = (value: number) => {
    if (isHalved(statement)) return 0.25;
    return decimals === null ? halfDigit(value, spoken) : 0.5 / 10 ** decimals;
  };
  const about = (value: number) =>
    settled(aboutTolerance(statement.nutrient, settled(value * factor)) / factor);
  return saidInterval(statement, { half, about });
}

/** The words of the number alone: '2.50' of '2.50 g of salt'. */
export function numberWords({ words, start, how }: Statement): string {
  const step = how.find(({ stage }) => stage === 'number');
  return step ? words.slice(Math.max(0, step.start - start), Math.max(0, step.end - start)) : words;
}

/** Digits behind the point as they were written: a 2.0 is finer than a 2. Null where the number is in words or whole. */
function writtenDecimals(statement: NutrientStatement): number | null {
  const found = [...numberWords(statement).matchAll(/\d[.,](\d+)/g)].map(([, digits]) => digits);
  // '1,250' has a comma between thousands.
  const whole = Number.isInteger(statement.low) && Number.isInteger(statement.high);
  const decimals = found.filter((digits) => !(whole && digits?.length === 3));
  return decimals.length === 0 ? null : Math.max(...decimals.map((digits) => digits?.length ?? 0));
}

/** 'thirty-five and a half', '2½': said to the half. */
function isHalved(statement: NutrientStatement): boolean {
  const toHalf = [statement.low, statement.high].every((value) => Number.isInteger(value * 2));
  const whole = [statement.low, statement.high].every(Number.isInteger);
  return toHalf && !whole && /\bhalf\b|½/i.test(numberWords(statement));
}
