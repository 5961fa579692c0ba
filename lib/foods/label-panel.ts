import { NUTRIENT_NAMES, type Nutrient } from '#lib/foods/nutrients';

/**
 * The nutrients of a label in the order in which the panel prints them.
 * US: 21 CFR 101.9(c) and (d); EU: Regulation 1169/2011 Annex XV. Those that a panel rarely has stand in `more`.
 */
export const LABEL_PANELS: Readonly<
  Record<'us' | 'eu', { readonly main: readonly Nutrient[]; readonly more: readonly Nutrient[] }>
> = {
  us: {
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
      'polyunsaturated',
      'monounsaturated',
      'polyols',
      'alcohol',
      'vitaminDMicrograms',
      'calcium',
      'iron',
      'potassium',
    ],
  },
  eu: {
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
    more: [
      'monounsaturated',
      'polyunsaturated',
      'polyols',
      'alcohol',
      'calcium',
      'iron',
      'vitaminC',
    ],
  },
};

/** Every nutrient of a panel, in its order. */
export function panelNutrients(rule: 'us' | 'eu'): readonly Nutrient[] {
  return [...LABEL_PANELS[rule].main, ...LABEL_PANELS[rule].more];
}

/** The columns of the reference table, in its own order: what only labels state is left out. */
export const TABLE_NUTRIENTS: readonly Nutrient[] = NUTRIENT_NAMES.slice(
  0,
  NUTRIENT_NAMES.indexOf('energyKj'),
);
