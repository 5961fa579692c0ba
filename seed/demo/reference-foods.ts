import type { Allergen, Food, YieldObservation } from '#lib/foods/food';
import { referenceFoodId } from '#lib/foods/reference-ids';
import { grams } from '#seed/demo/shorthand';

/** The reference foods that the demo cooks with, by their numbers in USDA SR28. */
const NUMBERS = {
  almonds: '12062',
  barley: '20005',
  blackPepper: '02030',
  blueberries: '09054',
  brownSugar: '19334',
  butter: '01145',
  cardamom: '02006',
  carrot: '11124',
  cottageCheese: '01016',
  egg: '01123',
  garlic: '11215',
  honey: '19296',
  lemonJuice: '09152',
  mushrooms: '11260',
  oats: '08120',
  oliveOil: '04053',
  onion: '11282',
  paprika: '02028',
  peas: '11312',
  salt: '02047',
  spinach: '11457',
  thyme: '02042',
  turkey: '05665',
  worcestershire: '06971',
  zucchini: '11477',
} as const;

/** Reference foods that nobody cooks with here: each is a second witness to a label's values. */
const WITNESS_NUMBERS = {
  cheddar: '01009',
  greekYogurt: '01256',
  ryeCrispbread: '18216',
  tomatoPuree: '11547',
  yellowMustard: '02046',
} as const;

type Names = keyof typeof NUMBERS | keyof typeof WITNESS_NUMBERS;

const ALL: Readonly<Record<Names, string>> = { ...NUMBERS, ...WITNESS_NUMBERS };

/** The ids of the reference foods by their kitchen names. */
export const FOOD = Object.fromEntries(
  Object.entries(ALL).map(([name, number]) => [name, referenceFoodId(number)]),
) as Readonly<Record<Names, string>>;

/**
 * What the cook has confirmed of the allergens proposed by rule. Barley, oats and the Worcestershire sauce
 * are not here: those proposals still wait for her word, and so nothing is published of them.
 */
const CONFIRMED: readonly {
  readonly foodId: string;
  readonly allergen: Allergen;
  readonly reason: string;
}[] = [
  { foodId: FOOD.egg, allergen: 'egg', reason: 'It is an egg.' },
  { foodId: FOOD.butter, allergen: 'milk', reason: 'Churned from cream.' },
  { foodId: FOOD.cottageCheese, allergen: 'milk', reason: 'A fresh cheese.' },
  { foodId: FOOD.almonds, allergen: 'treeNuts', reason: 'Almonds are tree nuts.' },
];

/** What the cook weighed raw and cooked when she browned turkey before; the newest of it stands last. */
const OWN_YIELDS: readonly {
  readonly foodId: string;
  readonly yields: readonly YieldObservation[];
}[] = [
  {
    foodId: FOOD.turkey,
    yields: [
      ['october', 500, 361],
      ['november', 420, 306],
    ].map(([when, raw, cooked]) => ({
      id: `yield-turkey-${when}`,
      method: 'browned in a pan',
      rawMg: grams(Number(raw)),
      cookedMg: grams(Number(cooked)),
      source: 'my own weights',
      own: { halfMg: grams(0.5), lineId: null },
    })),
  },
];

/**
 * The demo's reference foods with everything the table says of them, in order of number.
 * @param references all foods of SR28, as the loader gives them
 */
export function demoReferenceFoods(references: readonly Food[]): Food[] {
  const byId = new Map(references.map((food) => [food.id, food]));
  return Object.entries(ALL)
    .sort(([, a], [, b]) => (a < b ? -1 : 1))
    .map(([name, number]) => {
      const food = byId.get(referenceFoodId(number));
      if (!food) throw new Error(`SR28 has no food ${number} for the demo's ${name}`);
      return withOwnYields(withConfirmed(food));
    });
}

function withConfirmed(food: Food): Food {
  return {
    ...food,
    allergens: food.allergens.map((fact) => {
      const confirmed = CONFIRMED.find(
        (each) => each.foodId === food.id && each.allergen === fact.allergen,
      );
      return confirmed ? { ...fact, standing: 'confirmed', reason: confirmed.reason } : fact;
    }),
  };
}

function withOwnYields(food: Food): Food {
  const own = OWN_YIELDS.find(({ foodId }) => foodId === food.id);
  return own ? { ...food, yields: [...food.yields, ...own.yields] } : food;
}
