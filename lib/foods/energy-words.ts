import { fromNutrients } from '#lib/foods/check-label-energy';
import { checkTableEnergy } from '#lib/foods/energy-check';
import type { FoodVersion } from '#lib/foods/food';
import { amountRange, BASIS_WORDS, columnsOf } from '#lib/foods/label-column';

/**
 * What the nutrients give beside the energy stated, as a sentence for each energy that can be held against them:
 * by 4, 4 and 9 kcal or 17, 17 and 37 kJ per gram with the slack of rounding, fibre and polyols; values without
 * a label rule by the tolerances of a table. None where energy or a macro is missing. Whether it fits is for
 * `checkLabel` to say.
 * @example "per serving: 197.5–224.5 kcal from protein, fat and carbohydrate; stated 205–215 kcal"
 */
export function energyWords(version: FoodVersion): string[] {
  if (version.rule === 'asPrinted') {
    const check = checkTableEnergy(version);
    if (!check) return [];
    const given = amountRange({ ...check, value: check.stated }, 'kcal');
    return [sentence(version.basis, given, `${check.stated} kcal`)];
  }
  return columnsOf(version).flatMap((column, index) => {
    const basis = index === 0 ? version.basis : (version.secondColumn?.basis ?? version.basis);
    return (['kcal', 'kJ'] as const).flatMap((unit) => {
      const stated = column.interval(unit === 'kcal' ? 'energyKcal' : 'energyKj');
      const given = fromNutrients(column, version, unit);
      if (!stated || !Number.isFinite(given.high)) return [];
      const from = amountRange({ ...given, value: given.low }, unit);
      return [sentence(basis, from, amountRange(stated, unit))];
    });
  });
}

const sentence = (basis: FoodVersion['basis'], given: string, stated: string) =>
  `${BASIS_WORDS[basis]}: ${given} from protein, fat and carbohydrate; stated ${stated}`;
