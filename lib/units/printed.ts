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
 * Reads a plain decimal and keeps its digits; null if the text is not one.
 * A decimal comma is accepted; thousands separators are not.
 * `parsePrinted('2.50')` → `{ mantissa: 250, scale: 2 }`.
 */
export function parsePrinted(text: string): Printed | null {
  const match = DECIMAL.exec(text.trim());
  if (!match) return null;
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
