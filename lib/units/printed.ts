import type { Interval } from './interval';

/**
 * A number with the digits it was printed with: `mantissa / 10^scale`.
 * "0.0" is `{ mantissa: 0, scale: 1 }` and "0.00" is `{ mantissa: 0, scale: 2 }`: they stand for different ranges.
 */
export interface Printed {
  readonly mantissa: number;
  readonly scale: number;
}

const DECIMAL = /^(-?)(\d*)(?:[.,](\d*))?$/;

/**
 * Whether the comma of a number may divide thousands or decimals: it stands before exactly three digits, and more than
 * zeros stand before it. Half of the world writes 2,000 for two thousand, the other half for two.
 * `isUnclearComma('2,000')` → `true`; `isUnclearComma('0,125')` and `isUnclearComma('2,50')` → `false`.
 */
export function isUnclearComma(text: string): boolean {
  return /^-?\d*[1-9]\d*,\d{3}$/.test(text);
}

/**
 * What to say of a typed text whose number may be a whole one or one with decimals, a thousandth of it; null where it
 * has no such number. A point counts as unclear before three digits that end in 0, as nobody writes decimals.
 * `unclearNumber('2,000 kcal')` → `'“2,000” may be 2000 or 2. Write the one that you mean.'`
 */
export function unclearNumber(text: string): string | null {
  for (const [typed] of text.matchAll(/[\d.,]+/g)) {
    if (!isUnclearComma(typed) && !isUnclearPoint(typed)) continue;
    const whole = String(Number(typed.replace(/[.,]/, '')));
    const decimal = String(Number(typed.replace(',', '.')));
    return `“${typed}” may be ${whole} or ${decimal}. Write the one that you mean.`;
  }
  return null;
}

/** A point as half of the world divides thousands: '2.000'. What a field shows never ends in such a 0. */
export function isUnclearPoint(text: string): boolean {
  return /^-?[1-9]\d{0,2}\.\d\d0$/.test(text);
}

/**
 * Reads a plain decimal and keeps its digits; null if the text is not one.
 * A decimal comma is accepted, thousands separators are not, and neither is a comma that may be either.
 * `parsePrinted('2.50')` → `{ mantissa: 250, scale: 2 }`; `parsePrinted('2,000')` → `null`.
 */
export function parsePrinted(text: string): Printed | null {
  const match = DECIMAL.exec(text.trim());
  if (!match || isUnclearComma(text.trim())) return null;
  const whole = match[2] ?? '';
  const decimals = match[3] ?? '';
  if (whole === '' && decimals === '') return null;
  const mantissa = Number(`${match[1]}${whole}${decimals}`);
  if (!Number.isSafeInteger(mantissa)) return null;
  return { mantissa: mantissa === 0 ? 0 : mantissa, scale: decimals.length };
}

/** The number that was printed. `printedValue({ mantissa: 250, scale: 2 })` → `2.5`. */
export function printedValue(printed: Printed): number {
  return printed.mantissa / 10 ** printed.scale;
}

/** The digits again, as printed. `printedText({ mantissa: 250, scale: 2 })` → `'2.50'`. */
export function printedText(printed: Printed): string {
  return printedValue(printed).toFixed(printed.scale);
}

/**
 * What a printed number stands for: plus or minus half a unit of its last place, not below zero.
 * `printedInterval({ mantissa: 25, scale: 1 })` → `{ low: 2.45, value: 2.5, high: 2.55 }`.
 */
export function printedInterval(printed: Printed): Interval {
  const power = 10 ** printed.scale;
  return {
    low: Math.max(0, (printed.mantissa - 0.5) / power),
    value: printed.mantissa / power,
    high: (printed.mantissa + 0.5) / power,
  };
}
