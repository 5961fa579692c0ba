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
