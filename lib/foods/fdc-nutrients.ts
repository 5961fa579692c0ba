import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';

/**
 * The numbers by which FoodData Central names a nutrient (`nutrient_nbr` of nutrient.csv, `nutrient.number` of
 * the JSON), those we have a name for. Several numbers: the first that a food states is taken. Energy by
 * Atwater's specific and general factors (958, 957) stands in for 208, which newer Foundation foods lack; total
 * sugars were 269.3 by the label law; dietary fibre 293 is by the newer method of analysis.
 * Other meanings of a word are not taken for it: fat as the label law counts it (298), carbohydrate by
 * summation (205.2), vitamin E and A as printed on old labels (340, 394, 392).
 * Source: nutrient.csv of FoodData Central, checked against public copies of it.
 */
const NUMBERS: Partial<Record<Nutrient, readonly string[]>> = {
  water: ['255'],
  energyKcal: ['208', '958', '957'],
  protein: ['203'],
  fat: ['204'],
  ash: ['207'],
  carbohydrate: ['205'],
  fibre: ['291', '293'],
  sugars: ['269', '269.3'],
  calcium: ['301'],
  iron: ['303'],
  magnesium: ['304'],
  phosphorus: ['305'],
  potassium: ['306'],
  sodium: ['307'],
  zinc: ['309'],
  copper: ['312'],
  manganese: ['315'],
  selenium: ['317'],
  vitaminC: ['401'],
  thiamin: ['404'],
  riboflavin: ['405'],
  niacin: ['406'],
  pantothenicAcid: ['410'],
  vitaminB6: ['415'],
  folate: ['417'],
  folicAcid: ['431'],
  foodFolate: ['432'],
  folateDfe: ['435'],
  choline: ['421'],
  vitaminB12: ['418'],
  vitaminAIu: ['318'],
  vitaminARae: ['320'],
  retinol: ['319'],
  alphaCarotene: ['322'],
  betaCarotene: ['321'],
  betaCryptoxanthin: ['334'],
  lycopene: ['337'],
  luteinZeaxanthin: ['338'],
  vitaminE: ['323'],
  vitaminDMicrograms: ['328'],
  vitaminDIu: ['324'],
  vitaminK: ['430'],
  saturated: ['606'],
  monounsaturated: ['645'],
  polyunsaturated: ['646'],
  cholesterol: ['601'],
  energyKj: ['268'],
  transFat: ['605'],
  addedSugars: ['539'],
  polyols: ['299'],
  alcohol: ['221'],
};

/** A nutrient and how far back its number stands: 0 is taken before 1. */
export interface KnownNumber {
  readonly nutrient: Nutrient;
  readonly place: number;
}

const BY_NUMBER: ReadonlyMap<string, KnownNumber> = new Map(
  (Object.entries(NUMBERS) as [Nutrient, readonly string[]][]).flatMap(([nutrient, numbers]) =>
    numbers.map((number, place) => [number, { nutrient, place }] as const),
  ),
);

/** Spellings of units in the downloads: "UG" in the tables, "µg" in the JSON. */
const UNITS: Readonly<Record<string, string>> = {
  g: 'g',
  mg: 'mg',
  ug: 'µg',
  µg: 'µg',
  μg: 'µg',
  mcg: 'µg',
  kcal: 'kcal',
  kj: 'kJ',
  iu: 'IU',
};

/**
 * The nutrient that a number and a unit mean here; null where we have no name for it, or it comes in a unit that
 * is not ours. `knownNumber('203', 'G')` → `{ nutrient: 'protein', place: 0 }`; `knownNumber('340', 'IU')` → null.
 */
export function knownNumber(number: string, unit: string): KnownNumber | null {
  const known = BY_NUMBER.get(number.trim().replace(/\.0+$/, ''));
  if (!known) return null;
  return UNITS[unit.trim().toLowerCase()] === NUTRIENTS[known.nutrient].unit ? known : null;
}
