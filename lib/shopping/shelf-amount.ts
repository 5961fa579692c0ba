import Fraction from 'fraction.js';
import type { ShelfUnits } from '#lib/episode/stock-schema';
import { printCount, printGrams, printTo, settled } from '#lib/units/print';
import { toMilligrams } from '#lib/units/units';

const OUNCE_MG = toMilligrams(new Fraction(1), 'oz');

/**
 * An amount as shelf labels say it, rounded up, so that what is bought never falls short by rounding.
 * @example shelfAmount(1_240_000, 'metric') // '1,240 g'; from 2 kg on '2.25 kg'
 * @example shelfAmount(500_000, 'us') // '1 lb 1.7 oz'
 */
export function shelfAmount(mg: number, units: ShelfUnits): string {
  return units === 'us' ? pounds(mg) : gramsUp(mg);
}

/** `gramsUp(10_200)` → `'11 g'`; below 10 g in tenths. */
export function gramsUp(mg: number): string {
  if (mg >= 2_000_000) return `${printTo(Math.ceil(settled(mg / 10_000)) / 100, 0.01)} kg`;
  return mg < 10_000 ? `${printGrams(mg)} g` : `${printCount(Math.ceil(settled(mg / 1000)))} g`;
}

function pounds(mg: number): string {
  const tenths = Math.ceil(settled((mg / OUNCE_MG) * 10));
  const whole = Math.floor(tenths / 160);
  const ounces = printTo((tenths % 160) / 10, 0.1).replace(/\.0$/, '');
  if (whole === 0) return `${ounces} oz`;
  return tenths % 160 === 0 ? `${whole} lb` : `${whole} lb ${ounces} oz`;
}
