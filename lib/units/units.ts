import Fraction from 'fraction.js';

/** Units of mass and volume that an amount can be given in. */
export type MassUnit = 'mg' | 'g' | 'kg' | 'oz' | 'lb';
export type VolumeUnit = 'ml' | 'l' | 'tsp' | 'tbsp' | 'flOz' | 'cup' | 'pint' | 'quart' | 'gallon';

/**
 * Milligrams in one unit, exact. The avoirdupois pound is 453.592 37 g and the ounce a sixteenth of it
 * (NIST SP 811, Appendix B; NIST Handbook 44, Appendix C).
 */
export const MILLIGRAMS: Readonly<Record<MassUnit, Fraction>> = {
  mg: new Fraction(1),
  g: new Fraction(1000),
  kg: new Fraction(1_000_000),
  oz: new Fraction('28349.523125'),
  lb: new Fraction('453592.37'),
};

/**
 * Millilitres in one unit, exact. The US gallon is 231 cubic inches of 2.54 cm; its parts by halves,
 * quarters and so on (NIST SP 811, Appendix B; NIST Handbook 44, Appendix C).
 */
export const MILLILITRES: Readonly<Record<VolumeUnit, Fraction>> = {
  ml: new Fraction(1),
  l: new Fraction(1000),
  tsp: new Fraction('4.92892159375'),
  tbsp: new Fraction('14.78676478125'),
  flOz: new Fraction('29.5735295625'),
  cup: new Fraction('236.5882365'),
  pint: new Fraction('473.176473'),
  quart: new Fraction('946.352946'),
  gallon: new Fraction('3785.411784'),
};

/** Millilitres that household units stand for on US labels: 21 CFR 101.9(b)(5)(viii). */
export const LABEL_MILLILITRES: Readonly<Record<'tsp' | 'tbsp' | 'flOz' | 'cup', number>> = {
  tsp: 5,
  tbsp: 15,
  flOz: 30,
  cup: 240,
};

/** Grams that an ounce stands for on US labels: 21 CFR 101.9(b)(5)(viii). */
export const LABEL_OUNCE_G = 28;

/** Whether a unit is one of mass. */
export function isMassUnit(unit: string): unit is MassUnit {
  return Object.hasOwn(MILLIGRAMS, unit);
}

/** Whether a unit is one of volume. */
export function isVolumeUnit(unit: string): unit is VolumeUnit {
  return Object.hasOwn(MILLILITRES, unit);
}

/**
 * Milligrams of an amount, exact until the last step to a number.
 * `toMilligrams(new Fraction(12), 'oz')` → `340194.2775`.
 */
export function toMilligrams(amount: Fraction, unit: MassUnit): number {
  return amount.mul(MILLIGRAMS[unit]).valueOf();
}

/**
 * Millilitres of an amount. `toMillilitres(new Fraction(2), 'cup')` → `473.176473`.
 * @param onLabel true where a US label's household unit is meant (240 ml to the cup)
 */
export function toMillilitres(amount: Fraction, unit: VolumeUnit, onLabel = false): number {
  const label: Partial<Record<VolumeUnit, number>> = onLabel ? LABEL_MILLILITRES : {};
  return amount.mul(label[unit] ?? MILLILITRES[unit]).valueOf();
}

/** Degrees Fahrenheit from thousandths of a degree Celsius. `toFahrenheit(180_000)` → `356`. */
export function toFahrenheit(milliC: number): number {
  return (milliC * 9) / 5000 + 32;
}

/** Thousandths of a degree Celsius from degrees Fahrenheit, to the nearest. `fromFahrenheit(350)` → `176667`. */
export function fromFahrenheit(fahrenheit: number): number {
  return Math.round(((fahrenheit - 32) * 5000) / 9);
}
