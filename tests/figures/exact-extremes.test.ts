import { describe, expect, it } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import type { Figure } from '#lib/figures/figure';
import type { Nutrient } from '#lib/foods/nutrients';
import { trueKitchen, type TrueKitchen } from '../support/true-kitchen';
import { uniform } from '../support/uniform';
import { COOKING_CASES } from './simulation-cooking';
import * as kitchens from './simulation-kitchens';

/** Beyond so many uncertain things the corners are too many to try. */
const MOST = 12;
const FILES = 12;

type Truth = (kitchen: TrueKitchen) => number;

/** The least and the most that a total can be with every uncertain thing at one end or the other, by trying all. */
function overCorners(file: EpisodeFile, truth: Truth): readonly [number, number] | null {
  let asked = 0;
  truth(
    trueKitchen(file, () => {
      asked += 1;
      return 0;
    }),
  );
  if (asked > MOST) return null;
  let [low, high] = [Infinity, -Infinity];
  for (let corner = 0; corner < 2 ** asked; corner += 1) {
    let bit = 0;
    const value = truth(
      trueKitchen(file, () => {
        const end = (corner >> bit) & 1;
        bit += 1;
        return end;
      }),
    );
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return [low, high];
}

/** The first dishes' ingredients, a few of them. */
function few(file: EpisodeFile, random: () => number): EpisodeFile {
  const segments = file.episode.segments.map((segment) => {
    const { recipe } = segment;
    if (!recipe) return segment;
    const from = Math.floor(random() * Math.max(1, recipe.lines.length - 2));
    return { ...segment, recipe: { ...recipe, lines: recipe.lines.slice(from, from + 3) } };
  });
  return { ...file, episode: { ...file.episode, segments } };
}

type Case = [string, kitchens.MakeKitchen, Nutrient];
const CASES: readonly Case[] = [
  ['plain lines', kitchens.plainLines, 'protein'],
  ['one label in several lines', kitchens.sixLinesOfOneLabel, 'protein'],
  ['shared readings', kitchens.sharedReadings, 'energyKcal'],
  ['labels by rule', kitchens.labelsByRule, 'energyKcal'],
  ['yields', kitchens.throughYields, 'protein'],
  ['scales that are off', kitchens.scalesOff, 'energyKcal'],
  ['by eye, peel, pan', kitchens.byEye, 'protein'],
  ['carbohydrate of two kinds', kitchens.carbohydrateOfTwoKinds, 'carbohydrate'],
  ['a day of two dishes', kitchens.dayOfTwoDishes, 'energyKcal'],
  ...COOKING_CASES.map(([name, make, [nutrient = 'protein']]): Case => [name, make, nutrient]),
];

// A figure rises or falls in each of its sources, so its extremes stand at corners of the box of their intervals. The
// hard bound must be those extremes: not less, and no wider than floating point needs.
describe('the hard bound is the least and the most over all corners', () => {
  it.each(CASES)('%s', (_name, make, nutrient) => {
    const random = uniform(7);
    let tried = 0;
    for (let n = 0; n < FILES; n += 1) {
      const file = few(make(random), random);
      const { dishes, day } = episodeFigures(file, [nutrient]);
      const places: [Figure | undefined, Truth][] = [
        [day[nutrient], (kitchen) => kitchen.day(nutrient)],
        ...dishes.flatMap(
          ({ segmentId, whole, per100g, portions }): [Figure | undefined, Truth][] => [
            [whole[nutrient], (kitchen) => kitchen.whole(segmentId, nutrient)],
            ...(per100g
              ? [
                  [per100g[nutrient], (kitchen) => kitchen.per100g(segmentId, nutrient)] as [
                    Figure | undefined,
                    Truth,
                  ],
                ]
              : []),
            ...portions.map(({ portionId, figures }): [Figure | undefined, Truth] => [
              figures[nutrient],
              (kitchen) => kitchen.portion(segmentId, portionId, nutrient),
            ]),
          ],
        ),
      ];
      for (const [figure, truth] of places) {
        const corners = overCorners(file, truth);
        if (!corners) continue;
        tried += 1;
        const [low, high] = corners.map((each) => Math.max(0, each));
        const noise = 1e-9 * Math.max(1, high ?? 0);
        expect(Math.abs((figure?.low ?? NaN) - (low ?? NaN))).toBeLessThanOrEqual(noise);
        expect(Math.abs((figure?.high ?? NaN) - (high ?? NaN))).toBeLessThanOrEqual(noise);
      }
    }
    expect(tried).toBeGreaterThan(FILES);
  });
});
