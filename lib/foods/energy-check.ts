import { cellOf } from '#lib/foods/cell-of';
import type { FoodVersion } from '#lib/foods/food';
import type { Nutrient } from '#lib/foods/nutrients';
import { printedValue } from '#lib/units/printed';

/** Whether a table food's stated energy fits its own composition, in kcal per its basis. */
export interface EnergyCheck {
  /** `own`: by the food's three factors; `general`: by 4, 4, 9. */
  readonly factors: 'own' | 'general';
  readonly stated: number;
  readonly low: number;
  readonly high: number;
  readonly fits: boolean;
}

/**
 * Checks the stated energy of a table food. With its own three factors (USDA Handbook 74): within the larger of
 * 2 kcal and 3 % of what they give. Else by the general factors, from 0.95 (4 P + 9 F + 4 (C − fibre)) − 5 to
 * 1.05 (4 P + 9 F + 4 C) + 5; where carbohydrate is stated without fibre, fibre adds 0 to 2. A blank fibre counts as 0 here, which only narrows the range.
 * The tolerances are derived: outside them lie 0.6 % and 2.0 % of the foods of SR28 without alcohol, most with
 * a reason (acids, polyols, cocoa, bran, spices). Null where energy or a macro is missing.
 * Never a replacement of the stated energy.
 */
export function checkTableEnergy(version: FoodVersion): EnergyCheck | null {
  const value = (nutrient: Nutrient) => {
    const cell = cellOf(version.values, nutrient);
    return cell.kind === 'eq' ? printedValue(cell) : null;
  };
  const stated = value('energyKcal');
  const protein = value('protein');
  const fat = value('fat');
  const carbohydrate = value('carbohydrate');
  if (stated === null || protein === null || fat === null || carbohydrate === null) return null;
  const own = version.factors;
  if (own?.protein && own.fat && own.carbohydrate) {
    const expected =
      printedValue(own.protein) * protein +
      printedValue(own.fat) * fat +
      printedValue(own.carbohydrate) * carbohydrate;
    const slack = Math.max(2, 0.03 * expected);
    return within('own', stated, expected - slack, expected + slack);
  }
  const plain = 4 * protein + 9 * fat + 4 * carbohydrate;
  const fibre = value('fibre') ?? 0;
  const [least, most] =
    version.carbBasis === 'total' ? [plain - 4 * fibre, plain] : [plain, plain + 2 * fibre];
  return within('general', stated, 0.95 * least - 5, 1.05 * most + 5);
}

function within(
  factors: EnergyCheck['factors'],
  stated: number,
  low: number,
  high: number,
): EnergyCheck {
  return { factors, stated, low, high, fits: stated >= low && stated <= high };
}
