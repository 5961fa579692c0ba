import { parsePrinted } from '#lib/units/printed';

/** A quantity as an exact fraction and the words that follow it. */
export interface HouseholdWords {
  readonly qtyNum: number;
  readonly qtyDen: number;
  readonly name: string;
}

/** Decimals that stand for a fraction which no decimal can hold. */
const ROUNDED_FRACTIONS: Readonly<Record<string, readonly [number, number]>> = {
  '33': [1, 3],
  '333': [1, 3],
  '67': [2, 3],
  '667': [2, 3],
  '666': [2, 3],
  '167': [1, 6],
  '083': [1, 12],
};

/**
 * Reads a household measure as SR28 prints it: an amount, then words. Decimals that are the rounding of
 * thirds, sixths and twelfths (.33, .667, .083 …) are read as those fractions; all others exactly.
 * Null if there is no amount above zero or there are no words.
 * `readHouseholdWords('1.5 cup, diced')` → `{ qtyNum: 3, qtyDen: 2, name: 'cup, diced' }`.
 */
export function readHouseholdWords(text: string): HouseholdWords | null {
  const match = /^(\d*)(?:\.(\d+))?\s+(\S.*)$/.exec(text.trim());
  const name = match?.[3]?.trim().replace(/\s+/g, ' ');
  if (!match || !name) return null;
  const whole = match[1] ?? '';
  const decimals = match[2] ?? '';
  if (whole === '' && decimals === '') return null;
  const rounded = ROUNDED_FRACTIONS[decimals];
  const [num, den] = rounded
    ? [Number(whole) * rounded[1] + rounded[0], rounded[1]]
    : [Number(`${whole}${decimals}`), 10 ** decimals.length];
  if (num === 0) return null;
  const divisor = greatestCommonDivisor(num, den);
  return { qtyNum: num / divisor, qtyDen: den / divisor, name };
}

/** Grams as printed to whole milligrams and the decimals printed; null if not a weight above zero. */
export function readGrams(text: string): { massMg: number; digits: number } | null {
  const printed = parsePrinted(text);
  if (!printed || printed.mantissa <= 0 || printed.scale > 3) return null;
  return { massMg: printed.mantissa * 10 ** (3 - printed.scale), digits: printed.scale };
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}
