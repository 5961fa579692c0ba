import type { FoodVersion } from '#lib/foods/food';
import { NUTRIENTS } from '#lib/foods/nutrients';
import { readCell } from '#lib/foods/read-cell';
import { unclearNumber } from '#lib/units/printed';

/** The values that are typed at the shelf, in the order of most panels. */
export const SHELF_NUTRIENTS = ['energyKcal', 'fat', 'carbohydrate', 'protein'] as const;

/** A label as typed at the shelf: what its values are for, how much a serving is, and some of its values. */
export interface ShelfLabel {
  readonly basis: FoodVersion['basis'];
  readonly servingMg: number | null;
  /** By nutrient, as printed; what was not looked at is empty or left out. */
  readonly values: Readonly<Record<string, string>>;
}

/** What is wrong with a label so far, by its field; none where it can be worked with. */
export function shelfLabelFaults({
  basis,
  servingMg,
  values,
}: ShelfLabel): Readonly<Record<string, string>> {
  const faults: Record<string, string> = {};
  for (const nutrient of SHELF_NUTRIENTS) {
    if (readCell(values[nutrient] ?? '', nutrient) !== null) continue;
    const { label, unit } = NUTRIENTS[nutrient];
    faults[nutrient] =
      unclearNumber(values[nutrient] ?? '') ?? `Write ${label} as printed, in ${unit}: 0, 0.5, <1.`;
  }
  if (basis === 'serving' && servingMg === null && isLabelled({ values })) {
    faults.serving = 'Say how many grams a serving is, as printed.';
  }
  return faults;
}

/** Whether any value was typed. */
export function isLabelled({ values }: Pick<ShelfLabel, 'values'>): boolean {
  return SHELF_NUTRIENTS.some((nutrient) => (values[nutrient] ?? '').trim() !== '');
}

/** What a label says as the version of a food; it says nothing of what was not looked at. */
export function shelfVersion(
  { basis, servingMg, values }: ShelfLabel,
  region: 'US' | 'EU',
): Pick<FoodVersion, 'basis' | 'serving' | 'values' | 'secondColumn' | 'carbBasis' | 'rule'> {
  const cells = SHELF_NUTRIENTS.flatMap((nutrient) => {
    const cell = readCell(values[nutrient] ?? '', nutrient);
    return cell && cell.kind !== 'missing' ? [[nutrient, cell] as const] : [];
  });
  return {
    basis,
    serving:
      servingMg === null
        ? null
        : { massMg: servingMg, volumeMl: null, decimals: 0, text: '', perPack: null },
    values: Object.fromEntries(cells),
    secondColumn: null,
    carbBasis: region === 'EU' ? 'available' : 'total',
    rule: region === 'EU' ? 'eu' : 'us',
  };
}
