import type { Printed } from '#lib/units/printed';

/** Decimals that a cell holds at most. */
const MOST_DECIMALS = 6;

/**
 * Reads an amount as FoodData Central prints it, with its digits; an exponent is written out ("0E-8" is Java's
 * zero), and decimals beyond the sixth are rounded away, as no cell holds them. Null if it is no number, or more
 * digits than a number of JavaScript holds. A negative one is read: the caller says what is wrong with it.
 * `readAmount('3.50')` → `{ mantissa: 350, scale: 2 }`; `readAmount('1.2E-3')` → `{ mantissa: 12, scale: 4 }`.
 */
export function readAmount(text: string): Printed | null {
  const [, sign, whole = '', decimals = '', exponent = '0'] =
    /^([+-]?)(\d*)(?:\.(\d*))?(?:[eE]([+-]?\d{1,3}))?$/.exec(text.trim()) ?? [];
  if (sign === undefined || whole + decimals === '') return null;
  const digits = whole + decimals;
  const scale = decimals.length - Number(exponent);
  if (scale < -15 || digits.length > 40) return null;
  const unsigned =
    scale < 0 ? { digits: digits + '0'.repeat(-scale), scale: 0 } : { digits, scale };
  const mantissa = Number(unsigned.digits);
  const kept =
    unsigned.scale > MOST_DECIMALS
      ? { mantissa: rounded(mantissa, unsigned.scale - MOST_DECIMALS), scale: MOST_DECIMALS }
      : { mantissa, scale: unsigned.scale };
  if (!Number.isSafeInteger(kept.mantissa)) return null;
  return sign === '-' && kept.mantissa > 0 ? { ...kept, mantissa: -kept.mantissa } : kept;
}

function rounded(mantissa: number, places: number): number {
  return Math.round(mantissa / 10 ** places);
}

/** The same number without zeros at the end: a serving of "28.0" was printed as 28. */
export function withoutTrailingZeros({ mantissa, scale }: Printed): Printed {
  return scale > 0 && mantissa % 10 === 0
    ? withoutTrailingZeros({ mantissa: mantissa / 10, scale: scale - 1 })
    : { mantissa, scale };
}
