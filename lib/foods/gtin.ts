/** What a typed barcode number is, by the GS1 General Specifications. */
export type GtinReading =
  | { readonly kind: 'right'; readonly gtin14: string }
  /** The digits are there, but the last one is not the check digit of the others. */
  | { readonly kind: 'wrongCheckDigit'; readonly typed: string; readonly expected: string }
  | { readonly kind: 'wrongLength'; readonly typed: string; readonly digits: number }
  | { readonly kind: 'notDigits'; readonly typed: string };

/** Digits of a GTIN-8, GTIN-12 (UPC-A), GTIN-13 (EAN-13) and GTIN-14. */
const LENGTHS: readonly number[] = [8, 12, 13, 14];

/**
 * The check digit of the digits before it: from the right they count 3, 1, 3, 1 …, and the check digit brings
 * the sum up to a multiple of ten (GS1 General Specifications, section 7.9.1, "Standard check digit
 * calculations for GS1 data structures").
 * `checkDigit('629104150021')` → `'3'`.
 */
export function checkDigit(before: string): string {
  if (!/^\d+$/.test(before))
    throw new Error(`A check digit is worked out of digits, not "${before}"`);
  const sum = [...before].reverse().reduce((total, digit, at) => {
    return total + Number(digit) * (at % 2 === 0 ? 3 : 1);
  }, 0);
  return String((10 - (sum % 10)) % 10);
}

/**
 * Reads a barcode number; spaces and hyphens between its digits are passed over. A right one is given in
 * fourteen digits with zeros in front, the form in which GTINs of all lengths are compared (GS1 General
 * Specifications, section 7.9, note on right-justified numbers); a wrong one is kept as it was typed.
 * `readGtin('6291041500213')` → `{ kind: 'right', gtin14: '06291041500213' }`.
 */
export function readGtin(typed: string): GtinReading {
  const digits = typed.trim().replace(/[\s-]/g, '');
  if (!/^\d+$/.test(digits)) return { kind: 'notDigits', typed };
  if (!LENGTHS.includes(digits.length)) {
    return { kind: 'wrongLength', typed, digits: digits.length };
  }
  const expected = checkDigit(digits.slice(0, -1));
  if (!digits.endsWith(expected)) return { kind: 'wrongCheckDigit', typed, expected };
  return { kind: 'right', gtin14: digits.padStart(14, '0') };
}

/** What is wrong with a barcode number, in words; null for a right one. */
export function gtinFault(typed: string): string | null {
  const read = readGtin(typed);
  switch (read.kind) {
    case 'right':
      return null;
    case 'wrongCheckDigit':
      return `The barcode number ${typed.trim()} ends in a wrong check digit: by its other digits it would be ${read.expected}.`;
    case 'wrongLength':
      return `The barcode number ${typed.trim()} has ${read.digits} digits, not 8, 12, 13 or 14.`;
    case 'notDigits':
      return `"${typed.trim()}" is no barcode number: it has 8, 12, 13 or 14 digits and nothing else.`;
  }
}
