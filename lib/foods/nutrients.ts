/**
 * The nutrients and proximates that a food version can state, each with the unit its values are in.
 * Order and units of the first 46 are those of the SR28 abbreviated file
 * (USDA SR28 documentation, "Abbreviated file", fields 3 to 48), so that every column is kept.
 */
export const NUTRIENTS = {
  water: { unit: 'g', label: 'water' },
  energyKcal: { unit: 'kcal', label: 'calories' },
  protein: { unit: 'g', label: 'protein' },
  fat: { unit: 'g', label: 'fat' },
  ash: { unit: 'g', label: 'ash' },
  carbohydrate: { unit: 'g', label: 'carbohydrate' },
  fibre: { unit: 'g', label: 'fibre' },
  sugars: { unit: 'g', label: 'sugars' },
  calcium: { unit: 'mg', label: 'calcium' },
  iron: { unit: 'mg', label: 'iron' },
  magnesium: { unit: 'mg', label: 'magnesium' },
  phosphorus: { unit: 'mg', label: 'phosphorus' },
  potassium: { unit: 'mg', label: 'potassium' },
  sodium: { unit: 'mg', label: 'sodium' },
  zinc: { unit: 'mg', label: 'zinc' },
  copper: { unit: 'mg', label: 'copper' },
  manganese: { unit: 'mg', label: 'manganese' },
  selenium: { unit: 'µg', label: 'selenium' },
  vitaminC: { unit: 'mg', label: 'vitamin C' },
  thiamin: { unit: 'mg', label: 'thiamin' },
  riboflavin: { unit: 'mg', label: 'riboflavin' },
  niacin: { unit: 'mg', label: 'niacin' },
  pantothenicAcid: { unit: 'mg', label: 'pantothenic acid' },
  vitaminB6: { unit: 'mg', label: 'vitamin B6' },
  folate: { unit: 'µg', label: 'folate' },
  folicAcid: { unit: 'µg', label: 'folic acid' },
  foodFolate: { unit: 'µg', label: 'food folate' },
  folateDfe: { unit: 'µg', label: 'folate, DFE' },
  choline: { unit: 'mg', label: 'choline' },
  vitaminB12: { unit: 'µg', label: 'vitamin B12' },
  vitaminAIu: { unit: 'IU', label: 'vitamin A, IU' },
  vitaminARae: { unit: 'µg', label: 'vitamin A, RAE' },
  retinol: { unit: 'µg', label: 'retinol' },
  alphaCarotene: { unit: 'µg', label: 'alpha-carotene' },
  betaCarotene: { unit: 'µg', label: 'beta-carotene' },
  betaCryptoxanthin: { unit: 'µg', label: 'beta-cryptoxanthin' },
  lycopene: { unit: 'µg', label: 'lycopene' },
  luteinZeaxanthin: { unit: 'µg', label: 'lutein and zeaxanthin' },
  vitaminE: { unit: 'mg', label: 'vitamin E' },
  vitaminDMicrograms: { unit: 'µg', label: 'vitamin D' },
  vitaminDIu: { unit: 'IU', label: 'vitamin D, IU' },
  vitaminK: { unit: 'µg', label: 'vitamin K' },
  saturated: { unit: 'g', label: 'saturated fat' },
  monounsaturated: { unit: 'g', label: 'monounsaturated fat' },
  polyunsaturated: { unit: 'g', label: 'polyunsaturated fat' },
  cholesterol: { unit: 'mg', label: 'cholesterol' },
  // Stated by labels only.
  energyKj: { unit: 'kJ', label: 'energy' },
  transFat: { unit: 'g', label: 'trans fat' },
  addedSugars: { unit: 'g', label: 'added sugars' },
  polyols: { unit: 'g', label: 'polyols' },
  alcohol: { unit: 'g', label: 'alcohol' },
  salt: { unit: 'g', label: 'salt' },
  // Worked out, and stated by nobody: carbohydrate less fibre. Polyols stay in: the law counts them as carbohydrate
  // on both sides (21 CFR 101.9(c)(6); Regulation (EU) 1169/2011, Annex I).
  netCarbohydrate: { unit: 'g', label: 'net carbs (carbs less fibre)' },
} as const;

export type Nutrient = keyof typeof NUTRIENTS;

export const NUTRIENT_NAMES = Object.keys(NUTRIENTS) as readonly Nutrient[];

/** What no table or label states, and is worked out from what they do. */
const DERIVED: ReadonlySet<Nutrient> = new Set<Nutrient>(['netCarbohydrate']);

/** What a table or label can state: all but what is worked out. */
export const STATED_NUTRIENTS: readonly Nutrient[] = NUTRIENT_NAMES.filter(
  (name) => !DERIVED.has(name),
);

/** Whether a text names a nutrient. */
export function isNutrient(text: string): text is Nutrient {
  return Object.hasOwn(NUTRIENTS, text);
}
