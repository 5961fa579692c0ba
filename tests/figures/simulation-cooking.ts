import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import type { Food } from '#lib/foods/food';
import type { Nutrient } from '#lib/foods/nutrients';
import { oneOf, whole } from '../support/uniform';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, grams } from '../support/build';
import { tableFood, type MakeKitchen } from './simulation-kitchens';

/** Random kitchens where something is cooked, poured off, weighed on top of each other, nested or shared by eye. */

const times = <T>(n: number, make: (index: number) => T): T[] =>
  Array.from({ length: n }, (_, index) => make(index));
const portions: Recipe['portions'] = [
  { id: 'third', kind: 'count', name: 'One of three', of: 3 },
  { id: 'bowl', kind: 'mass', name: 'A bowl', massMg: 250_000 },
  { id: 'slice', kind: 'byEye', name: 'A slice', share: { num: 1, den: 4 }, permille: 150 },
];

/** This cook's own two weights, and past cooks of one's own; a cooked reading of one ingredient. */
export const ownCooks: MakeKitchen = (random) => {
  const cook = (id: string, lineId: string | null) => ({
    id,
    method: 'pan',
    rawMg: whole(random, 300, 600) * 1000,
    cookedMg: whole(random, 180, 290) * 1000,
    source: 'own',
    own: { halfMg: oneOf(random, [500, 1000]), lineId },
  });
  const foods = times(4, (n) => ({
    ...tableFood(random, `f${n}`, { state: 'cooked' }),
    yields: n === 0 ? [cook('here', 'l0')] : times(n + 1, (at) => cook(`y${n}${at}`, null)),
  }));
  const lines = foods.map(({ id }, n) =>
    grams(`l${n}`, id, whole(random, 50, 500), { state: 'raw' }),
  );
  const recipe = aRecipe('r', lines, {
    weighings: [
      aReading('done', 'finished', whole(random, 400, 900)),
      aReading('fried', 'cooked', whole(random, 100, 300), {
        shares: [{ lineId: 'l3', share: { num: 1, den: 1 } }],
      }),
    ],
    portions,
  });
  return aFile([aDish('d', recipe)], foods);
};

/** A dish that nobody weighed when it was done: its weight follows from what went in, by a change that is cited. */
export const citedCooking: MakeKitchen = (random) => {
  const foods = times(4, (n) => tableFood(random, `f${n}`));
  // Few grams and a coarse scale: the weight and what is in it share errors that matter.
  const lines = foods.map(({ id }, n) => grams(`l${n}`, id, whole(random, 10, 120)));
  const recipe = aRecipe('r', lines, {
    portions,
    cooking: {
      moisturePermille: -whole(random, 20, 300),
      fatPermille: 0,
      spreadPermille: oneOf(random, [0, 10, 40]),
      source: 'a test',
    },
  });
  return aFile([aDish('d', recipe)], foods, { resolutionMg: 10_000 });
};

/** Fat that ran out: by a cited change of the dish, and weighed or typed for an ingredient. */
export const pouredFat: MakeKitchen = (random) => {
  const foods = times(3, (n) =>
    aFood(`f${n}`, {
      energyKcal: String(whole(random, 250, 400)),
      protein: (whole(random, 1200, 2000) / 100).toFixed(2),
      fat: (whole(random, 1500, 3000) / 100).toFixed(2),
    }),
  );
  const lines = foods.map(({ id }, n): RecipeLine =>
    grams(`l${n}`, id, whole(random, 200, 500), {
      leftBehind:
        n === 0
          ? { kind: 'mass', lowMg: 6000, valueMg: 9000, highMg: 14_000, where: 'pan', made: 'fat' }
          : n === 1
            ? { kind: 'weighed', where: 'tray', made: 'fat' }
            : { kind: 'none' },
    }),
  );
  const recipe = aRecipe('r', lines, {
    weighings: [
      aReading('fat', 'left', whole(random, 8, 20), {
        shares: [{ lineId: 'l1', share: { num: 1, den: 1 } }],
      }),
    ],
    portions,
    cooking: {
      moisturePermille: -whole(random, 100, 250),
      fatPermille: -whole(random, 10, 60),
      spreadPermille: 20,
      source: 'a test',
    },
  });
  return aFile([aDish('d', recipe)], foods);
};

/** Vitamins and minerals as far as cooking leaves them, two ingredients by the same code. */
export const keptInCooking: MakeKitchen = (random) => {
  const values = (): Partial<Record<Nutrient, string>> => ({
    potassium: String(whole(random, 50, 600)),
    vitaminC: (whole(random, 0, 600) / 10).toFixed(1),
  });
  const foods = times(4, (n) => aFood(`f${n}`, values()));
  const codes = ['151', '151', '431', null];
  const lines = foods.map(({ id }, n) =>
    grams(`l${n}`, id, whole(random, 30, 300), { retention: codes[n] ?? null }),
  );
  const done = aReading('done', 'finished', whole(random, 300, 900));
  return aFile([aDish('d', aRecipe('r', lines, { weighings: [done], portions }))], foods);
};

/** Four ingredients put one after another into the bowl on the scale, and what stayed in the bowl. */
export const runningTotal: MakeKitchen = (random) => {
  const foods = times(4, (n) => tableFood(random, `f${n}`));
  const lines = foods.map(({ id }, n) =>
    aLine(`l${n}`, id, {
      leftBehind: n === 0 ? { kind: 'weighed', where: 'bowl', made: 'alike' } : { kind: 'none' },
    }),
  );
  let total = 320;
  const readings = lines.map((line, n) => {
    const tare = total;
    total += whole(random, 10, 60);
    return aReading(`w${n}`, 'raw', total, {
      tareMg: tare * 1000,
      afterId: n === 0 ? null : `w${n - 1}`,
      shares: [{ lineId: line.id, share: { num: 1, den: 1 } }],
    });
  });
  const weighings = [
    ...readings,
    aReading('left', 'left', 4, { shares: [{ lineId: 'l0', share: { num: 1, den: 1 } }] }),
    aReading('done', 'finished', 150),
  ];
  const file = aFile([aDish('d', aRecipe('r', lines, { weighings, portions }))], foods);
  const scales = file.kitchen.scales.map((scale) => ({ ...scale, accuracyPpm: 5000 }));
  return { ...file, kitchen: { ...file.kitchen, scales } };
};

const made = (id: string, recipeId: string, more: Partial<RecipeLine>): RecipeLine =>
  aLine(id, null, { madeFrom: { recipeId, rev: 1 }, ...more });
const some = (num: number, den = 1) => ({ low: { num, den }, high: { num, den } });

/** A sauce of which grams go into a filling, of which a batch and a slice go into the dish, with foods they share. */
export const nestedRecipes: MakeKitchen = (random) => {
  const foods = times(3, (n) => tableFood(random, `f${n}`));
  const of = (id: string, n: number) =>
    grams(`${id}${n}`, foods[n]?.id ?? '', whole(random, 40, 200));
  const sauce = aRecipe('sauce', [of('s', 0), of('s', 1)], {
    weighings: [aReading('sauceDone', 'finished', whole(random, 100, 300))],
  });
  const filling = aRecipe(
    'filling',
    [of('f', 0), { ...made('fs', 'sauce', {}), ...plannedGrams(whole(random, 20, 80)) }],
    {
      portions: portions.map((each) => ({ ...each, id: `filling-${each.id}` })),
      cooking: cited(random),
    },
  );
  const dish = aRecipe(
    'dish',
    [
      of('d', 0),
      of('d', 2),
      made('db', 'filling', { quantity: some(1, 2), unit: 'batch' }),
      made('dp', 'filling', { quantity: some(1), unit: 'portion', measureName: 'A slice' }),
    ],
    { weighings: [aReading('done', 'finished', whole(random, 300, 700))], portions },
  );
  return { ...aFile([aDish('d', dish)], foods), recipes: [sauce, filling] };
};

function plannedGrams(g: number): Pick<RecipeLine, 'planned'> {
  return { planned: { lowMg: g * 1000, valueMg: g * 1000, highMg: g * 1000 } };
}

function cited(random: () => number): Recipe['cooking'] {
  return {
    moisturePermille: -whole(random, 50, 200),
    fatPermille: 0,
    spreadPermille: 20,
    source: 'a test',
  };
}

/** A plate by eye of one dish and a plate weighed of another, to one day. */
export const eatenByEyeAndByWeight: MakeKitchen = (random) => {
  const foods: Food[] = times(3, (n) => tableFood(random, `f${n}`));
  const dish = (id: string) => {
    const lines = foods.map((food, n) => grams(`${id}${n}`, food.id, whole(random, 20, 300)));
    const done = aReading(`${id}done`, 'finished', whole(random, 300, 800));
    const own = portions.map((each) => ({ ...each, id: `${id}${each.id}` }));
    return aRecipe(`r${id}`, lines, { weighings: [done], portions: own });
  };
  const plate = whole(random, 80, 200) * 1000;
  const segments = [
    aDish('a', dish('a'), { eaten: { num: 1, den: 3 }, ate: { kind: 'byEye', permille: 200 } }),
    aDish('b', dish('b'), {
      ate: { kind: 'mass', lowMg: plate - 1000, valueMg: plate, highMg: plate + 1000 },
    }),
  ];
  return aFile(segments, foods);
};

export const COOKING_CASES: readonly [string, MakeKitchen, readonly Nutrient[]][] = [
  ['cooks of one’s own', ownCooks, ['energyKcal', 'protein']],
  ['a finished weight that is worked out', citedCooking, ['energyKcal', 'protein']],
  ['fat poured off', pouredFat, ['energyKcal', 'fat', 'protein']],
  ['kept in cooking', keptInCooking, ['potassium', 'vitaminC']],
  ['a running total', runningTotal, ['energyKcal', 'protein']],
  ['recipes in recipes', nestedRecipes, ['energyKcal', 'protein']],
  ['eaten by eye and by weight', eatenByEyeAndByWeight, ['energyKcal', 'protein']],
];
