import { ENERGY_PER_G } from '#lib/foods/energy-per-gram';
import type { FoodVersion } from '#lib/foods/food';
import { amount, type LabelColumn } from '#lib/foods/label-column';
import type { Nutrient } from '#lib/foods/nutrients';
import type { Problem } from '#lib/result';
import type { Interval } from '#lib/units/interval';

/** Fibre that a label need not print is taken as at most this share of the mass (common practice, no source). */
const MOST_FIBRE_UNSAID = 0.15;
/** Pure fat: 902 kcal per 100 g is the most in SR28; in kJ by 37/9. */
const MOST_PER_G = { kcal: 9.02, kJ: 37.1 } as const;
/** kJ over kcal of one food: from fibre (8/2) to organic acids (13/3), Regulation 1169/2011 Annex XIV. */
const KJ_PER_KCAL = { low: 4, high: 13 / 3 } as const;

/**
 * Energy that cannot come from the column's nutrients. The least is 4 P + 9 F + 4 (C − fibre − polyols), the most
 * 4 P + 9 F + 4 C, alcohol at 7, each at the bounds of its rounding: fibre may count 0 to 4, polyols 0 to 4
 * kcal per gram (21 CFR 101.9(c)(1)(i)). Where carbohydrate is stated without fibre, fibre adds at most 2.
 * A macro that is not stated leaves no upper limit. Kilojoules have factors of their own and are checked by
 * those, and against kilocalories.
 */
export function energyProblems(column: LabelColumn, version: FoodVersion): Problem[] {
  const kcal = column.interval('energyKcal');
  const kilojoules = column.interval('energyKj');
  const found: Problem[] = [];
  if (kcal) found.push(...against(kcal, 'kcal', 'energyKcal', column, version));
  if (kilojoules) found.push(...against(kilojoules, 'kJ', 'energyKj', column, version));
  if (kcal && kilojoules) {
    const low = kcal.low * KJ_PER_KCAL.low;
    const high = kcal.high * KJ_PER_KCAL.high;
    if (kilojoules.low > high || kilojoules.high < low) {
      found.push({
        path: `${column.path}.energyKj`,
        code: 'kilojoules-not-calories',
        message: `${amount(kcal.value, 'kcal')} is between ${amount(low, 'kJ')} and ${amount(high, 'kJ')}, not ${amount(kilojoules.value, 'kJ')}.`,
        facts: { kcal: kcal.value, kJ: kilojoules.value, low, high },
      });
    }
  }
  return found;
}

function against(
  stated: Interval,
  unit: 'kcal' | 'kJ',
  nutrient: Nutrient,
  column: LabelColumn,
  version: FoodVersion,
): Problem[] {
  const path = `${column.path}.${nutrient}`;
  const mass = column.massG?.high ?? null;
  if (mass !== null && stated.low > mass * MOST_PER_G[unit]) {
    const most = mass * MOST_PER_G[unit];
    return [
      {
        path,
        code: 'energy-above-fat',
        message: `Even pure fat has only ${amount(most, unit)} in ${column.words}; this says ${amount(stated.value, unit)}.`,
        facts: { stated: stated.value, most, by: stated.low - most },
      },
    ];
  }
  const { low, high } = fromNutrients(column, version, unit);
  if (stated.high < low) {
    return [
      {
        path,
        code: 'energy-below-nutrients',
        message: `Protein, fat and carbohydrate alone give at least ${amount(low, unit)}; ${amount(stated.value, unit)} is ${amount(low - stated.high, unit)} too little, rounding counted. Fibre, polyols or organic acids in it that the label does not state would explain it.`,
        facts: { stated: stated.value, least: low, by: low - stated.high },
      },
    ];
  }
  if (stated.low > high) {
    return [
      {
        path,
        code: 'energy-above-nutrients',
        message: `What is stated gives at most ${amount(high, unit)}; ${amount(stated.value, unit)} is ${amount(stated.low - high, unit)} too much, rounding counted. Alcohol or organic acids that the label does not state would explain it.`,
        facts: { stated: stated.value, most: high, by: stated.low - high },
      },
    ];
  }
  return [];
}

/**
 * Energy that a column's protein, fat, carbohydrate (and alcohol) can give, by the factors of its unit and with
 * the freedom that the rules leave; the upper end is Infinity where a macro is not stated.
 */
export function fromNutrients(
  column: LabelColumn,
  version: FoodVersion,
  unit: 'kcal' | 'kJ',
): { low: number; high: number } {
  const factor = ENERGY_PER_G[unit];
  const at = (nutrient: Nutrient) => column.interval(nutrient);
  const total = version.carbBasis === 'total';
  const carbohydrate = at('carbohydrate');
  const fibre = at('fibre');
  const inside = (total ? (fibre?.high ?? 0) : 0) + (at('polyols')?.high ?? 0);
  const low =
    factor.protein * (at('protein')?.low ?? 0) +
    factor.fat * (at('fat')?.low ?? 0) +
    factor.carbohydrate * Math.max(0, (carbohydrate?.low ?? 0) - inside) +
    factor.alcohol * (at('alcohol')?.low ?? 0);
  const [protein, fat] = [at('protein'), at('fat')];
  if (!protein || !fat || !carbohydrate) return { low, high: Infinity };
  const unsaid = (column.massG?.high ?? column.volumeMl ?? Infinity) * MOST_FIBRE_UNSAID;
  const outside = total ? 0 : factor.fibre * (fibre?.high ?? unsaid);
  const high =
    factor.protein * protein.high +
    factor.fat * fat.high +
    factor.carbohydrate * carbohydrate.high +
    factor.alcohol * (at('alcohol')?.high ?? 0) +
    outside;
  return { low, high };
}
