import type { AllergenFact, Cell, Food, FoodVersion, Values } from '#lib/foods/food';
import { isNutrient } from '#lib/foods/nutrients';
import { parsePrinted } from '#lib/units/printed';
import { FOOD } from '#seed/demo/reference-foods';
import { grams } from '#seed/demo/shorthand';

/**
 * Foods that are known by their packages alone. The brands are invented, and so are the numbers; each label that
 * a dish uses agrees with itself (energy against protein, fat and carbohydrate within its rounding).
 */
export const LABEL = {
  skyr: 'food-skyr',
  cheese: 'food-farm-cheese',
  mustard: 'food-grainy-mustard',
  passata: 'food-passata',
  crispbread: 'food-crispbread',
} as const;

/** The day on which the labels were read, at the kitchen table. */
const READ_ON = '2026-12-05';

/** Cells as printed: "1.8" keeps its digit, "<5" is less than five. */
function printed(cells: Readonly<Record<string, string>>): Values {
  const values: Values = {};
  for (const [name, text] of Object.entries(cells)) {
    const digits = parsePrinted(text.replace(/^</, ''));
    if (!isNutrient(name) || !digits) throw new Error(`"${name}: ${text}" is no line of a label`);
    const cell: Cell = { kind: text.startsWith('<') ? 'lessThan' : 'eq', ...digits };
    values[name] = cell;
  }
  return values;
}

type Standing = readonly [AllergenFact['allergen'], 'declared' | 'mayContain', string];

function labelFood(
  id: string,
  name: string,
  food: Pick<Food, 'section' | 'witnessId'> & { readonly measures?: Food['measures'] },
  version: Pick<FoodVersion, 'basis' | 'serving' | 'values' | 'rule' | 'carbBasis'>,
  allergens: readonly Standing[],
): Food {
  return {
    id,
    kind: 'label',
    name,
    section: food.section,
    witnessId: food.witnessId,
    version: {
      id: `${id}-v1`,
      seq: 1,
      secondColumn: null,
      state: 'asIs',
      factors: null,
      refuse: null,
      source: 'package label',
      release: '',
      sourceNo: '',
      dateRead: READ_ON,
      kept: [],
      ...version,
    },
    measures: food.measures ?? [],
    yields: [],
    allergens: allergens.map(([allergen, standing, reason]) => ({
      id: `${id}-${allergen}`,
      allergen,
      standing,
      reason,
    })),
  };
}

const skyr = labelFood(
  LABEL.skyr,
  'Fjordlea plain skyr',
  { section: 'dairyAndEggs', witnessId: FOOD.greekYogurt },
  {
    basis: 'serving',
    serving: { massMg: grams(170), volumeMl: null, decimals: 0, text: '3/4 cup', perPack: 6 },
    values: printed({
      energyKcal: '100',
      fat: '0',
      saturated: '0',
      transFat: '0',
      cholesterol: '<5',
      sodium: '65',
      carbohydrate: '6',
      fibre: '0',
      sugars: '6',
      addedSugars: '0',
      protein: '19',
      calcium: '190',
      iron: '0',
      potassium: '240',
    }),
    rule: 'us',
    carbBasis: 'total',
  },
  [['milk', 'declared', 'Contains: milk.']],
);

const cheese = labelFood(
  LABEL.cheese,
  'Netloft farmhouse cheese, medium aged',
  { section: 'dairyAndEggs', witnessId: FOOD.cheddar },
  {
    basis: 'serving',
    serving: { massMg: grams(28), volumeMl: null, decimals: 0, text: '1 oz', perPack: 8 },
    values: printed({
      energyKcal: '110',
      fat: '9',
      saturated: '5',
      transFat: '0',
      cholesterol: '25',
      sodium: '180',
      carbohydrate: '1',
      fibre: '0',
      sugars: '0',
      addedSugars: '0',
      protein: '7',
      calcium: '200',
      iron: '0',
      potassium: '20',
    }),
    rule: 'us',
    carbBasis: 'total',
  },
  [['milk', 'declared', 'Contains: milk.']],
);

const mustard = labelFood(
  LABEL.mustard,
  'Brinkleaf grainy mustard',
  { section: 'oilsAndSauces', witnessId: FOOD.yellowMustard },
  {
    basis: 'serving',
    serving: { massMg: grams(5), volumeMl: null, decimals: 0, text: '1 tsp', perPack: 40 },
    values: printed({
      energyKcal: '5',
      fat: '0',
      saturated: '0',
      transFat: '0',
      cholesterol: '0',
      sodium: '60',
      carbohydrate: '0',
      fibre: '0',
      sugars: '0',
      addedSugars: '0',
      protein: '0',
    }),
    rule: 'us',
    carbBasis: 'total',
  },
  [
    ['mustard', 'declared', 'Mustard seed is the first ingredient.'],
    ['sulphites', 'mayContain', 'May contain sulphites.'],
  ],
);

const passata = labelFood(
  LABEL.passata,
  'Solmarosa tomato passata',
  { section: 'tinsAndJars', witnessId: FOOD.tomatoPuree },
  {
    basis: 'serving',
    serving: { massMg: grams(125), volumeMl: null, decimals: 0, text: '1/2 cup', perPack: 4 },
    values: printed({
      energyKcal: '35',
      fat: '0',
      saturated: '0',
      transFat: '0',
      cholesterol: '0',
      sodium: '25',
      carbohydrate: '7',
      fibre: '2',
      sugars: '5',
      addedSugars: '0',
      protein: '2',
      calcium: '20',
      iron: '0.8',
      potassium: '380',
    }),
    rule: 'us',
    carbBasis: 'total',
  },
  [],
);

/** The odd one out: an EU label, per 100 g, whose carbohydrate leaves the fibre outside. */
const crispbread = labelFood(
  LABEL.crispbread,
  'Rugspire rye crispbread',
  {
    section: 'bakery',
    witnessId: FOOD.ryeCrispbread,
    measures: [
      {
        id: 'food-crispbread-piece',
        name: 'piece',
        qtyNum: 1,
        qtyDen: 1,
        massMg: grams(12),
        digits: 0,
        source: 'package label: 20 pieces, 240 g',
      },
    ],
  },
  {
    basis: 'per100g',
    serving: { massMg: grams(12), volumeMl: null, decimals: 0, text: '1 piece', perPack: 20 },
    values: printed({
      energyKj: '1427',
      energyKcal: '338',
      fat: '1.8',
      saturated: '0.3',
      carbohydrate: '63',
      sugars: '2.0',
      fibre: '16',
      protein: '9.5',
      salt: '1.1',
    }),
    rule: 'eu',
    carbBasis: 'available',
  },
  [
    ['glutenCereals', 'declared', 'Wholegrain RYE flour, printed in capitals.'],
    ['sesame', 'mayContain', 'May contain traces of sesame.'],
  ],
);

/**
 * Bought and typed in a hurry, in no dish yet: protein 2.1 g where the bag says 21 g, which neither its kJ nor its
 * kcal allow. Its page says so.
 */
const chickpeas = labelFood(
  'food-roasted-chickpeas',
  'Kaisand roasted chickpeas',
  { section: 'tinsAndJars', witnessId: null },
  {
    basis: 'per100g',
    serving: { massMg: grams(30), volumeMl: null, decimals: 0, text: '1 handful', perPack: 5 },
    values: printed({
      energyKj: '1626',
      energyKcal: '386',
      fat: '6.0',
      saturated: '0.6',
      carbohydrate: '55',
      sugars: '4.0',
      fibre: '14',
      protein: '2.1',
      salt: '1.2',
    }),
    rule: 'eu',
    carbBasis: 'available',
  },
  [],
);

/** Labels that were read and not looked at again; they stand in the pantry and in no dish. */
export const UNCHECKED_LABELS: readonly Food[] = [chickpeas];

/** The label foods of the demo, in the order in which they come to the table. */
export const LABEL_FOODS: readonly Food[] = [crispbread, cheese, mustard, passata, skyr];
