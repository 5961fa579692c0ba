import type { PackAmounts } from '#lib/foods/check-servings';
import type { FoodVersion, RoundingRule, Values } from '#lib/foods/food';
import { panelNutrients } from '#lib/foods/label-panel';
import type { Nutrient } from '#lib/foods/nutrients';
import { readCell } from '#lib/foods/read-cell';
import { readNumber, readPrintedGrams } from '#lib/units/read-typed';

/** A label while it is typed: every text as it stands in its field. */
export interface TypedLabel {
  readonly rule: RoundingRule;
  readonly basis: FoodVersion['basis'];
  /** The second column's; null where the panel has none. */
  readonly secondBasis: FoodVersion['basis'] | null;
  readonly carbBasis: FoodVersion['carbBasis'];
  readonly servingG: string;
  readonly servingMl: string;
  readonly perPack: string;
  readonly value: (nutrient: Nutrient) => string;
  readonly second: (nutrient: Nutrient) => string;
}

/**
 * A version from what stands in the fields so far, for remarks while it is typed: a text that is none of its
 * kind counts as not typed, for its own field says so. It has no id, no date and no source, and is never kept.
 */
export function typedVersion(typed: TypedLabel): FoodVersion {
  const { rule, basis, secondBasis, carbBasis } = typed;
  const grams = readPrintedGrams(typed.servingG);
  const volumeMl = readNumber(typed.servingMl);
  const perPack = readNumber(typed.perPack);
  const second = cells(rule, typed.second);
  return {
    id: 'typed',
    seq: 1,
    basis,
    serving: {
      massMg: grams?.mg ?? null,
      volumeMl: volumeMl !== null && volumeMl > 0 ? volumeMl : null,
      decimals: grams?.decimals ?? 0,
      text: '',
      perPack: perPack !== null && perPack > 0 ? perPack : null,
    },
    values: cells(rule, typed.value),
    secondColumn:
      secondBasis === null || Object.keys(second).length === 0
        ? null
        : { basis: secondBasis, values: second },
    carbBasis,
    state: 'asIs',
    factors: null,
    refuse: null,
    rule,
    source: '',
    release: '',
    sourceNo: '',
    dateRead: null,
    kept: [],
  };
}

function cells(rule: RoundingRule, text: (nutrient: Nutrient) => string): Values {
  const values: Values = {};
  for (const nutrient of panelNutrients(rule)) {
    const cell = readCell(text(nutrient), nutrient);
    if (cell && cell.kind !== 'missing') values[nutrient] = cell;
  }
  return values;
}

/** A pack while it is typed, by the texts of its fields; what is no plain number counts as not typed. */
export function typedPack(texts: {
  readonly grams: string;
  readonly millilitres: string;
  readonly drained: string;
}): PackAmounts {
  const mg = (text: string) => readPrintedGrams(text)?.mg ?? null;
  return {
    netMg: mg(texts.grams),
    netMl: readNumber(texts.millilitres),
    drainedMg: mg(texts.drained),
  };
}
