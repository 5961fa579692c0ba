import { readAmount, withoutTrailingZeros } from '#lib/foods/fdc-amount';
import type { FdcBranded } from '#lib/foods/fdc-record';
import type { FoodVersion, RoundingRule } from '#lib/foods/food';

/** A product's serving as its label prints it, and by which rule its numbers were rounded. */
export interface ServingRead {
  readonly serving: FoodVersion['serving'];
  readonly unit: 'g' | 'ml' | null;
  /** Its amount in `unit`. */
  readonly size: number;
  /** Whether the label's numbers can be worked out of the published amounts per 100. */
  readonly perServing: boolean;
  readonly rule: RoundingRule;
}

/** `serving_size_unit`: words of the tables and codes of UN/ECE Recommendation 20 (GRM, MLT). */
const UNITS: Readonly<Record<string, 'g' | 'ml' | 'mg'>> = {
  g: 'g',
  gm: 'g',
  grm: 'g',
  gram: 'g',
  grams: 'g',
  ml: 'ml',
  mlt: 'ml',
  milliliter: 'ml',
  milliliters: 'ml',
  mg: 'mg',
  mgm: 'mg',
  mc: 'mg',
};
const LONGEST_TEXT = 80;
const MOST_G = 1_000_000;

/**
 * The label's serving. Without a size in grams or millilitres above zero the household words are kept alone, and
 * values stay per 100. Labels of the United States (or of no country) follow 21 CFR 101.9; others are taken as
 * printed.
 */
export function readServing(branded: FdcBranded, faults: string[]): ServingRead {
  const text = branded.household.trim().replace(/\s+/g, ' ').slice(0, LONGEST_TEXT);
  const country = branded.marketCountry.trim().toLowerCase();
  const rule = country === '' || country === 'united states' ? 'us' : 'asPrinted';
  const none: ServingRead = {
    serving:
      text === '' ? null : { massMg: null, volumeMl: null, decimals: 0, text, perPack: null },
    unit: null,
    size: 0,
    perServing: false,
    rule: 'asPrinted',
  };
  const typed = branded.servingSize.trim();
  if (typed === '') return none;
  const amount = readAmount(typed);
  const unit = UNITS[branded.servingUnit.trim().toLowerCase()];
  if (!amount || amount.mantissa <= 0) {
    faults.push(`a serving of "${typed.slice(0, 20)}" is no amount above zero`);
    return none;
  }
  if (!unit) {
    faults.push(
      `a serving in "${branded.servingUnit.trim().slice(0, 20)}" is neither grams nor millilitres`,
    );
    return none;
  }
  const shown = withoutTrailingZeros(amount);
  const plain = unit === 'mg' ? { ...shown, scale: shown.scale + 3 } : shown;
  const size = plain.mantissa / 10 ** plain.scale;
  const massMg = Math.round(size * 1000);
  if (massMg < 1 || size > MOST_G) {
    faults.push(`a serving of ${typed.slice(0, 20)} ${branded.servingUnit.trim()} cannot be`);
    return none;
  }
  const decimals = Math.min(3, plain.scale);
  const same = { decimals, text, perPack: null };
  return unit === 'ml'
    ? {
        serving: { massMg: null, volumeMl: size, ...same },
        unit: 'ml',
        size,
        perServing: true,
        rule,
      }
    : { serving: { massMg, volumeMl: null, ...same }, unit: 'g', size, perServing: true, rule };
}
