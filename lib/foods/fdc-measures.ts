import { readAmount } from '#lib/foods/fdc-amount';
import { fdcRecordId } from '#lib/foods/fdc-ids';
import type { FdcFactors, FdcPortion } from '#lib/foods/fdc-record';
import type { FoodMeasure, FoodVersion } from '#lib/foods/food';
import { readGrams, readHouseholdWords } from '#lib/foods/household-weight';

const SOURCE = 'USDA FoodData Central, portions';
/** More than any food has; an id holds no more either. */
const MOST = 200;
/** The word of `measure_unit` for "see the modifier" (measure_unit_id 9999). */
const NO_UNIT = /^(?:undetermined|n\/?a)?$/i;

/**
 * Household weights of a record. The unit stands in `measure_unit`, or, in SR Legacy, in the modifier; words that
 * qualify it follow. A portion without words, or without a weight above zero, is told and passed over.
 */
export function fdcMeasures(
  fdcId: number,
  portions: readonly FdcPortion[],
  faults: string[],
): FoodMeasure[] {
  const measures: FoodMeasure[] = [];
  for (const portion of portions.slice(0, MOST)) {
    const words = wordsOf(portion);
    const grams = readGrams(plainDecimal(portion.grams));
    const read =
      words === '' ? null : readHouseholdWords(`${plainDecimal(portion.amount) || '1'} ${words}`);
    if (!read || !grams || grams.massMg > 2_147_483_647) {
      faults.push(
        `the portion "${portion.amount} ${words}" of "${portion.grams}" g cannot be read`.slice(
          0,
          200,
        ),
      );
      continue;
    }
    measures.push({
      id: fdcRecordId('measure', fdcId, measures.length),
      ...read,
      name: read.name.slice(0, 120),
      ...grams,
      source: SOURCE,
    });
  }
  return measures;
}

function wordsOf({ unit, modifier, description }: FdcPortion): string {
  const named = NO_UNIT.test(unit.trim()) ? '' : unit.trim();
  const rest = modifier.trim() || description.trim();
  return [named, rest].filter((part) => part !== '').join(', ');
}

/** A decimal without exponent and with at most three decimals, as household weights have. */
function plainDecimal(text: string): string {
  const amount = readAmount(text);
  if (!amount || amount.mantissa < 0) return text.trim();
  const { mantissa, scale } = amount;
  return scale <= 3 ? (mantissa / 10 ** scale).toFixed(scale) : (mantissa / 10 ** scale).toFixed(3);
}

/** Energy and nitrogen factors; null where the record states none. */
export function fdcFactors(stated: FdcFactors | null): FoodVersion['factors'] {
  if (!stated) return null;
  const factor = (text: string) => {
    const amount = text.trim() === '' ? null : readAmount(text);
    return amount && amount.mantissa > 0 ? amount : null;
  };
  const factors = {
    protein: factor(stated.protein),
    fat: factor(stated.fat),
    carbohydrate: factor(stated.carbohydrate),
    nitrogen: factor(stated.nitrogen),
  };
  return Object.values(factors).every((each) => each === null) ? null : factors;
}
