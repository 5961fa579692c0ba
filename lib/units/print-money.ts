/** Decimals of a currency's minor unit, where they are not two (ISO 4217, list one; from memory). */
const DECIMALS: Readonly<Record<string, number>> = {
  JPY: 0,
  KRW: 0,
  ISK: 0,
  CLP: 0,
  VND: 0,
  BHD: 3,
  KWD: 3,
  OMR: 3,
  TND: 3,
};

/** Decimals of a currency's minor unit: `minorDecimals('JPY')` → 0. */
export function minorDecimals(currency: string): number {
  return DECIMALS[currency] ?? 2;
}

/** An amount of money without its currency: `minorText(2340, 'USD')` → `'23.40'`. */
export function minorText(minor: number, currency: string): string {
  const decimals = minorDecimals(currency);
  return (minor / 10 ** decimals).toFixed(decimals);
}

/** A price from minor units, with its currency's code: `priceText(2340, 'USD')` → `'USD 23.40'`. */
export function priceText(minor: number, currency: string): string {
  return `${currency} ${minorText(minor, currency)}`;
}

/**
 * Minor units of a currency from hundredths, as `readMoney` reads a typed price; null where the currency has no such
 * small part. `minorFromHundredths(39_800, 'JPY')` → 398; of 39_850 null.
 */
export function minorFromHundredths(hundredths: number, currency: string): number | null {
  const minor = hundredths * 10 ** (minorDecimals(currency) - 2);
  return Number.isInteger(minor) ? minor : null;
}
