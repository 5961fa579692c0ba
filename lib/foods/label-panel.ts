import type { RoundingRule } from '#lib/foods/food';
import { NUTRIENT_NAMES, NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';

/** One panel: what most of its kind print, and what fewer do. */
export interface PanelOrder {
  readonly main: readonly Nutrient[];
  readonly more: readonly Nutrient[];
}

const US: PanelOrder = {
  main: [
    'energyKcal',
    'fat',
    'saturated',
    'transFat',
    'cholesterol',
    'sodium',
    'carbohydrate',
    'fibre',
    'sugars',
    'addedSugars',
    'protein',
  ],
  more: [
    'vitaminDMicrograms',
    'calcium',
    'iron',
    'potassium',
    'polyunsaturated',
    'monounsaturated',
    'polyols',
    'alcohol',
  ],
};

const EU: PanelOrder = {
  main: [
    'energyKj',
    'energyKcal',
    'fat',
    'saturated',
    'carbohydrate',
    'sugars',
    'fibre',
    'protein',
    'salt',
  ],
  more: ['monounsaturated', 'polyunsaturated', 'polyols', 'alcohol', 'vitaminC', 'calcium', 'iron'],
};

/**
 * The nutrients of a label in the order in which the panel prints them.
 * US: 21 CFR 101.9(c) and (d); EU: Regulation 1169/2011 Annex XV. A label under neither rule may print any of
 * both.
 */
export const LABEL_PANELS: Readonly<Record<RoundingRule, PanelOrder>> = {
  us: US,
  eu: EU,
  asPrinted: {
    main: [
      'energyKj',
      'energyKcal',
      'fat',
      'saturated',
      'transFat',
      'cholesterol',
      'carbohydrate',
      'fibre',
      'sugars',
      'addedSugars',
      'protein',
      'sodium',
      'salt',
    ],
    more: [...US.more, 'vitaminC'],
  },
};

/** Every nutrient of a panel, in its order. */
export function panelNutrients(rule: RoundingRule): readonly Nutrient[] {
  return [...LABEL_PANELS[rule].main, ...LABEL_PANELS[rule].more];
}

/** What stands indented under another line, with how deep. */
const DEPTH: Partial<Record<Nutrient, number>> = {
  saturated: 1,
  transFat: 1,
  monounsaturated: 1,
  polyunsaturated: 1,
  fibre: 1,
  sugars: 1,
  polyols: 1,
  addedSugars: 2,
};

/** How deep a line is indented on a panel; fibre stands beside carbohydrate on an EU panel, not under it. */
export function panelDepth(rule: RoundingRule, nutrient: Nutrient): number {
  return rule === 'eu' && nutrient === 'fibre' ? 0 : (DEPTH[nutrient] ?? 0);
}

const PANEL_WORDS: Readonly<Record<RoundingRule, Partial<Record<Nutrient, string>>>> = {
  us: {
    energyKcal: 'Calories',
    fat: 'Total fat',
    carbohydrate: 'Total carbohydrate',
    fibre: 'Dietary fibre',
    sugars: 'Total sugars',
    addedSugars: 'of these, added sugars',
  },
  eu: {
    energyKj: 'Energy',
    energyKcal: 'Energy',
    saturated: 'of which saturates',
    sugars: 'of which sugars',
    monounsaturated: 'of which mono-unsaturates',
    polyunsaturated: 'of which polyunsaturates',
  },
  asPrinted: { energyKj: 'Energy', energyKcal: 'Energy', addedSugars: 'of these, added sugars' },
};

/** A nutrient in the words that its panel prints. `panelWords('eu', 'sugars')` → `'of which sugars'`. */
export function panelWords(rule: RoundingRule, nutrient: Nutrient): string {
  const { label } = NUTRIENTS[nutrient];
  return PANEL_WORDS[rule][nutrient] ?? label.charAt(0).toUpperCase() + label.slice(1);
}

/** The columns of the reference table, in its own order: what only labels state is left out. */
export const TABLE_NUTRIENTS: readonly Nutrient[] = NUTRIENT_NAMES.slice(
  0,
  NUTRIENT_NAMES.indexOf('energyKj'),
);
