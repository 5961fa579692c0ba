import fc from 'fast-check';
import type { RecipeLine, Weighing } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import type { Food } from '#lib/foods/food';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, grams } from '../support/build';

const one = { low: { num: 1, den: 1 }, high: { num: 1, den: 1 } };

const tableFood = (id: string) =>
  fc
    .tuple(fc.integer({ min: 0, max: 9000 }), fc.integer({ min: 0, max: 9000 }))
    .map(([protein, energy]): Food =>
      aFood(
        id,
        {
          protein: (protein / 100).toFixed(2),
          energyKcal: String(Math.round(energy / 10)),
          fibre: '1.5',
          carbohydrate: '8.25',
        },
        {
          measures: [
            {
              id: 'cup',
              name: 'cup',
              qtyNum: 1,
              qtyDen: 1,
              massMg: 90_000,
              digits: 0,
              source: 's',
            },
          ],
        },
      ),
    );

const labelFood = (id: string) =>
  fc.integer({ min: 0, max: 40 }).map((protein): Food =>
    aFood(
      id,
      { protein: String(protein), energyKcal: String(protein * 10), fibre: '2', carbohydrate: '3' },
      { kind: 'label' },
      {
        basis: 'serving',
        rule: 'us',
        serving: { massMg: 50_000, volumeMl: null, decimals: 0, text: '', perPack: null },
      },
    ),
  );

const amount = (id: string) =>
  fc
    .tuple(
      fc.constantFrom('table-a', 'table-b', 'label'),
      fc.integer({ min: 1, max: 900 }),
      fc.constantFrom('grams', 'cup', 'serving', 'leftBehind'),
    )
    .map(([foodId, g, how]): RecipeLine => {
      if (how === 'serving' && foodId === 'label') {
        return aLine(id, foodId, { quantity: one, unit: 'serving' });
      }
      if (how === 'cup' && foodId !== 'label') {
        return aLine(id, foodId, { quantity: one, unit: 'cup' });
      }
      if (how === 'leftBehind') {
        const leftBehind = {
          kind: 'mass',
          lowMg: 0,
          valueMg: g * 200,
          highMg: g * 300,
          where: 'pan',
          made: 'alike',
        } as const;
        return grams(id, foodId, g, { leftBehind });
      }
      return grams(id, foodId, g);
    });

/**
 * Episodes of two dishes, all of whose figures are known: table and label foods, scales, cups and servings, what
 * stays behind, one reading that two lines share, portions by count and by weight.
 */
export const knownEpisode: fc.Arbitrary<EpisodeFile> = fc
  .record({
    foods: fc.tuple(tableFood('table-a'), tableFood('table-b'), labelFood('label')),
    first: fc.integer({ min: 1, max: 5 }).chain((n) => fc.tuple(...lines('a', n))),
    second: fc.integer({ min: 1, max: 4 }).chain((n) => fc.tuple(...lines('b', n))),
    shared: fc.boolean(),
    finished: fc.integer({ min: 200, max: 3000 }),
    accuracyPpm: fc.constantFrom(0, 3000),
  })
  .map(({ foods, first, second, shared, finished, accuracyPpm }) => {
    const done = aReading('done', 'finished', finished);
    const both: Weighing = aReading('both', 'raw', 300, {
      shares: [
        { lineId: 'a0', share: { num: 1, den: 3 } },
        { lineId: 'a1', share: { num: 2, den: 3 } },
      ],
    });
    const plain = first.map((line): RecipeLine => ({ ...line, leftBehind: { kind: 'none' } }));
    const recipe = aRecipe('ra', shared ? plain : first, {
      weighings: shared ? [done, both] : [done],
      portions: [
        { id: 'third', kind: 'count', name: '', of: 3 },
        { id: 'slice', kind: 'mass', name: 'a slice', massMg: 150_000 },
      ],
    });
    const file = aFile(
      [
        aDish('first', recipe, { eaten: { num: 1, den: 3 } }),
        aDish('second', aRecipe('rb', second)),
      ],
      foods,
    );
    const scales = file.kitchen.scales.map((scale) => ({ ...scale, accuracyPpm }));
    return { ...file, kitchen: { ...file.kitchen, scales } };
  });

function lines(dish: string, count: number): fc.Arbitrary<RecipeLine>[] {
  return Array.from({ length: count }, (_, index) => amount(`${dish}${index}`));
}
