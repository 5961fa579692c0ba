import { cellOf } from '#lib/foods/cell-of';
import type { Food, FoodVersion, RoundingRule } from '#lib/foods/food';
import { panelNutrients } from '#lib/foods/label-panel';
import { cellTyped } from '#lib/foods/read-cell';
import { typedVersion } from '#lib/foods/typed-label';
import { printedGramsTyped } from '#lib/units/read-typed';
import { SECOND, VALUE } from '../field-names';

/** Which panel a label has: a US one, an EU one, or one that follows neither rule. */
export type PanelRule = RoundingRule;

export const RULE_WORDS: Readonly<Record<PanelRule, string>> = {
  us: 'US panel',
  eu: 'EU panel',
  asPrinted: 'No rule, as printed',
};

/** The texts of a form by the names of its fields. */
export type Texts = Readonly<Record<string, string>>;

/** A version in the texts of its form: every value with the digits it was printed with. */
export function labelTexts({ version }: Pick<Food, 'version'>): Record<string, string> {
  const { serving, secondColumn, values, refuse } = version;
  const nutrients = panelNutrients(version.rule);
  return {
    rule: version.rule,
    basis: version.basis,
    secondBasis: secondColumn?.basis ?? otherBasis(version.basis),
    servingG: serving?.massMg == null ? '' : printedGramsTyped(serving.massMg, serving.decimals),
    servingMl: serving?.volumeMl == null ? '' : String(serving.volumeMl),
    servingText: serving?.text ?? '',
    perPack: serving?.perPack == null ? '' : String(serving.perPack),
    carbBasis: version.carbBasis,
    state: version.state,
    refusePercent: refuse === null ? '' : String(refuse.percent),
    refuseText: refuse?.text ?? '',
    // A box that is not ticked is not sent.
    ...(refuse?.inValues && { refuseInValues: 'on' }),
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
  const basis = rule === 'eu' ? 'per100g' : 'serving';
  return {
    rule,
    basis,
    secondBasis: otherBasis(basis),
    carbBasis: rule === 'eu' ? 'available' : 'total',
    state: 'asIs',
  };
}

/** What a second column is for, beside a first: a serving beside 100 g or ml, and the other way round. */
export function otherBasis(basis: string): FoodVersion['basis'] {
  return basis === 'serving' ? 'per100g' : 'serving';
}

/** A label as it stands in its fields, for remarks while it is typed. */
export function versionTyped(rule: PanelRule, texts: Texts): FoodVersion {
  const text = (name: string) => texts[name] ?? '';
  const basis = basisOf(text('basis'));
  const second = basisOf(text('secondBasis'));
  return typedVersion({
    rule,
    basis,
    secondBasis: (second === 'serving') === (basis === 'serving') ? otherBasis(basis) : second,
    carbBasis: text('carbBasis') === 'available' ? 'available' : 'total',
    servingG: text('servingG'),
    servingMl: text('servingMl'),
    perPack: text('perPack'),
    value: (nutrient) => text(`${VALUE}${nutrient}`),
    second: (nutrient) => text(`${SECOND}${nutrient}`),
  });
}

function basisOf(text: string): FoodVersion['basis'] {
  return text === 'per100g' || text === 'per100ml' ? text : 'serving';
}
