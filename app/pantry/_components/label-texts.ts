import { cellOf, type Food, type FoodVersion } from '#lib/foods/food';
import { panelNutrients } from '#lib/foods/label-panel';
import { cellTyped } from '#lib/foods/read-cell';
import { printedGramsTyped } from '#lib/units/read-typed';
import { SECOND, VALUE } from '../field-names';

/** Which rule a label follows; tables and old readings as printed are shown in the US order. */
export type PanelRule = 'us' | 'eu';

export function panelRule(version: Pick<FoodVersion, 'rule'>): PanelRule {
  return version.rule === 'eu' ? 'eu' : 'us';
}

/** A version in the texts of its form: every value with the digits it was printed with. */
export function labelTexts({ version }: Pick<Food, 'version'>): Record<string, string> {
  const { serving, secondColumn, values } = version;
  const nutrients = panelNutrients(panelRule(version));
  return {
    basis: version.basis,
    secondBasis: secondColumn?.basis ?? '',
    servingG: serving?.massMg == null ? '' : printedGramsTyped(serving.massMg, serving.decimals),
    servingMl: serving?.volumeMl == null ? '' : String(serving.volumeMl),
    servingText: serving?.text ?? '',
    perPack: serving?.perPack == null ? '' : String(serving.perPack),
    carbBasis: version.carbBasis,
    state: version.state,
    ...Object.fromEntries(
      nutrients.map((name) => [`${VALUE}${name}`, cellTyped(cellOf(values, name))]),
    ),
    ...Object.fromEntries(
      nutrients.map((name) => [
        `${SECOND}${name}`,
        cellTyped(cellOf(secondColumn?.values ?? {}, name)),
      ]),
    ),
  };
}

/** The texts of a label that nobody has read yet. */
export function emptyLabel(rule: PanelRule): Record<string, string> {
  return {
    basis: rule === 'us' ? 'serving' : 'per100g',
    carbBasis: rule === 'us' ? 'total' : 'available',
    state: 'asIs',
  };
}
