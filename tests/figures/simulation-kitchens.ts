import type { RecipeLine, Weighing } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { foodSchema, type Food, type FoodVersion } from '#lib/foods/food';
import { oneOf, whole } from '../support/uniform';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, grams } from '../support/build';

/** Random kitchens of one kind each: what is uncertain differs from kind to kind. Everything in them is invented. */
export type MakeKitchen = (random: () => number) => EpisodeFile;

const ratio = (num: number, den = 1) => ({ num, den });
const exactly = (num: number, den = 1) => ({ low: ratio(num, den), high: ratio(num, den) });
const times = <T>(n: number, make: (index: number) => T): T[] =>
  Array.from({ length: n }, (_, index) => make(index));

/** A food as a table states it, with the digits that such tables print. */
export function tableFood(
  random: () => number,
  id: string,
  version: Partial<FoodVersion> = {},
): Food {
  const carbohydrate = whole(random, 0, 6000) / 100;
  const protein = whole(random, 0, 3000) / 100;
  const fat = whole(random, 0, 5000) / 100;
  const values = {
    energyKcal: String(Math.round(4 * protein + 9 * fat + 4 * carbohydrate)),
    protein: protein.toFixed(2),
    fat: fat.toFixed(2),
    carbohydrate: carbohydrate.toFixed(2),
    fibre: ((carbohydrate * whole(random, 0, 40)) / 100).toFixed(1),
  };
  return aFood(id, values, {}, version);
}

function oneDish(
  random: () => number,
  lines: RecipeLine[],
  foods: Food[],
  weighings: Weighing[] = [],
  region: 'US' | 'EU' = 'US',
): EpisodeFile {
  const done = aReading('done', 'finished', whole(random, 300, 2500));
  const recipe = aRecipe('r', lines, {
    weighings: [done, ...weighings],
    portions: [
      { id: 'third', kind: 'count', name: 'One of three', of: 3 },
      { id: 'bowl', kind: 'mass', name: 'A bowl', massMg: 250_000 },
    ],
  });
  return aFile([aDish('d', recipe)], foods, { episode: { region } });
}

/** Grams of table foods on a scale of 1 g. */
export const plainLines: MakeKitchen = (random) => {
  const foods = times(whole(random, 4, 12), (n) => tableFood(random, `f${n}`));
  const lines = foods.map((food, n) => grams(`l${n}`, food.id, whole(random, 2, 400)));
  return oneDish(random, lines, foods);
};

/** One EU label per 100 g, whole grams of protein, in six lines; three others beside it. */
export const sixLinesOfOneLabel: MakeKitchen = (random) => {
  const protein = String(whole(random, 11, 60));
  const energyKcal = String(whole(random, 90, 600));
  const label = aFood('label', { protein, energyKcal }, { kind: 'label' }, { rule: 'eu' });
  const others = times(3, (n) => tableFood(random, `f${n}`));
  const lines = [
    ...times(6, (n) => grams(`s${n}`, 'label', whole(random, 60, 140))),
    ...others.map((food, n) => grams(`l${n}`, food.id, whole(random, 5, 60))),
  ];
  return oneDish(random, lines, [label, ...others]);
};

/** One reading of a scale of 5 g shared by two lines, and another by three. */
export const sharedReadings: MakeKitchen = (random) => {
  const foods = times(5, (n) => tableFood(random, `f${n}`));
  const lines = foods.map((food, n) => aLine(`l${n}`, food.id));
  const third = { num: 1, den: 3 };
  const shared = [
    aReading('two', 'raw', whole(random, 20, 60) * 5, {
      shares: [
        { lineId: 'l0', share: third },
        { lineId: 'l1', share: { num: 2, den: 3 } },
      ],
    }),
    aReading('three', 'raw', whole(random, 20, 60) * 5, {
      method: 'difference',
      shares: ['l2', 'l3', 'l4'].map((lineId) => ({ lineId, share: third })),
    }),
  ];
  const file = oneDish(random, lines, foods, shared);
  const scales = file.kitchen.scales.map((scale) => ({ ...scale, resolutionMg: 5000 }));
  return { ...file, kitchen: { ...file.kitchen, scales } };
};

/** US labels per serving, among them numbers at the joints of the grids, taken in servings and in grams. */
export const labelsByRule: MakeKitchen = (random) => {
  const foods = times(whole(random, 2, 5), (n) =>
    aFood(
      `label${n}`,
      {
        energyKcal: oneOf(random, ['0', '5', '45', '50', '60', '110', '240']),
        fat: oneOf(random, ['0', '0.5', '2.5', '4.5', '5', '6', '14']),
        protein: oneOf(random, ['0', '<1', '1', '4', '12']),
        sodium: oneOf(random, ['0', '5', '135', '140', '150', '480']),
      },
      { kind: 'label' },
      {
        rule: 'us',
        basis: 'serving',
        serving: {
          massMg: whole(random, 20, 240) * 1000,
          volumeMl: null,
          decimals: 0,
          text: '',
          perPack: null,
        },
      },
    ),
  );
  const lines = times(whole(random, 3, 7), (n) => {
    const { id } = oneOf(random, foods);
    if (n % 2 === 0) return grams(`l${n}`, id, whole(random, 20, 300));
    return aLine(`l${n}`, id, { quantity: exactly(whole(random, 1, 6), 2), unit: 'serving' });
  });
  return oneDish(random, lines, foods);
};

/** Foods whose composition holds cooked, weighed raw, and the other way round; one, two or three past cooks. */
export const throughYields: MakeKitchen = (random) => {
  const foods = times(4, (n) => {
    const state = n % 2 === 0 ? 'cooked' : 'raw';
    const yields = times(whole(random, 1, 3), (cook) => ({
      id: `y${n}${cook}`,
      method: 'pan',
      rawMg: 500_000,
      cookedMg: whole(random, 330, 420) * 1000,
      source: 'own',
    }));
    const food = tableFood(random, `f${n}`, { state });
    return foodSchema.parse({ ...food, yields });
  });
  const lines = foods.map((food, n) =>
    grams(`l${n}`, food.id, whole(random, 50, 500), { state: n % 2 === 0 ? 'raw' : 'cooked' }),
  );
  // The same food twice: its yield is one error.
  lines.push(grams('again', 'f0', whole(random, 50, 300), { state: 'raw' }));
  return oneDish(random, lines, foods);
};

/** Two scales that are off by up to so many parts per million, each for all that it weighed. */
export const scalesOff: MakeKitchen = (random) => {
  const foods = times(6, (n) => tableFood(random, `f${n}`));
  const lines = foods.map((food, n) => aLine(`l${n}`, food.id));
  const readings = lines.map((line, n) =>
    aReading(`w${n}`, 'raw', whole(random, 40, 600), {
      scaleId: n % 2 === 0 ? 'scale' : 'other',
      method: n % 3 === 0 ? 'difference' : 'direct',
      shares: [{ lineId: line.id, share: ratio(1) }],
    }),
  );
  const file = oneDish(random, lines, foods, readings);
  const [scale] = file.kitchen.scales;
  if (!scale) throw new Error('a kitchen has a scale');
  const scales = [
    { ...scale, accuracyPpm: oneOf(random, [2000, 10_000, 30_000]) },
    { ...scale, id: 'other', resolutionMg: 100, accuracyPpm: oneOf(random, [1000, 20_000]) },
  ];
  return { ...file, kitchen: { ...file.kitchen, scales } };
};

/** Cups, spoons and pieces (one of them twice), grams as bought, ranges, and what stays in the pan. */
export const byEye: MakeKitchen = (random) => {
  const foods = times(4, (n) => {
    const food = tableFood(random, `f${n}`, { refuse: null });
    const measures = (['cup', 'tbsp', 'large'] as const).map((name, at) => ({
      id: `m${n}${at}`,
      name,
      qtyNum: 1,
      qtyDen: 1,
      massMg: [whole(random, 60, 250), whole(random, 5, 18), whole(random, 20, 180)][at] ?? 1,
      digits: 0,
      source: 'own',
    }));
    const weights = measures.map((each) => ({ ...each, massMg: each.massMg * 1000 }));
    const refuse = n === 0 ? { percent: whole(random, 3, 40), text: 'peel' } : null;
    return foodSchema.parse({ ...food, measures: weights, version: { ...food.version, refuse } });
  });
  const half = whole(random, 1, 5);
  const lines = [
    grams('bought', 'f0', whole(random, 100, 500), { asBought: true }),
    aLine('cup', 'f1', { quantity: exactly(half, 2), unit: 'cup' }),
    aLine('more', 'f1', { quantity: exactly(1), unit: 'cup' }),
    aLine('spoon', 'f2', {
      quantity: { low: ratio(2), high: ratio(3) },
      unit: 'tbsp',
      measureName: 'tbsp',
    }),
    aLine('piece', 'f3', { quantity: exactly(2), unit: 'piece', measureName: 'large' }),
    grams('pan', 'f3', 60, {
      leftBehind: {
        kind: 'mass',
        lowMg: 5000,
        valueMg: 8000,
        highMg: 15_000,
        where: 'pan',
        made: 'alike',
      },
    }),
    aLine('range', 'f2', { planned: { lowMg: 40_000, valueMg: 50_000, highMg: 70_000 } }),
  ];
  return oneDish(random, lines, foods);
};

/** Carbohydrate with and without fibre in one dish, brought to the region's basis; kJ from factors of their own. */
export const carbohydrateOfTwoKinds: MakeKitchen = (random) => {
  const foods = times(6, (n) =>
    tableFood(random, `f${n}`, { carbBasis: n % 2 === 0 ? 'total' : 'available' }),
  );
  const lines = foods.map((food, n) => grams(`l${n}`, food.id, whole(random, 20, 300)));
  return oneDish(random, lines, foods, [], oneOf(random, ['US', 'EU'] as const));
};

/** A day of two dishes of which parts are eaten; a label and a scale stand in both. */
export const dayOfTwoDishes: MakeKitchen = (random) => {
  const label = aFood(
    'label',
    { protein: String(whole(random, 11, 40)), energyKcal: String(whole(random, 90, 400)) },
    { kind: 'label' },
    { rule: 'eu' },
  );
  const foods = [label, ...times(3, (n) => tableFood(random, `f${n}`))];
  const dish = (id: string, num: number, den: number) => {
    const lines = foods.map((food, n) => grams(`${id}${n}`, food.id, whole(random, 20, 300)));
    return aDish(id, aRecipe(`r${id}`, lines), { eaten: ratio(num, den) });
  };
  return aFile([dish('a', 1, 3), dish('b', 1, 1)], foods);
};
