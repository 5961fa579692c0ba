import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures, type EpisodeFigures, type Figures } from '#lib/figures/episode-figures';
import type { Figure } from '#lib/figures/figure';
import { printFigure } from '#lib/figures/print-figure';
import { publishedNumbers } from '#lib/figures/published-numbers';
import type { Nutrient } from '#lib/foods/nutrients';
import { boundsOf } from '#lib/units/bounds';
import type { Interval } from '#lib/units/interval';
import { divideBySource, multiply, scale, source, type Term } from '#lib/units/sum-of-products';
import { seeded } from '../shoot/seeded';
import { knownEpisode } from './breakdown-arbitrary';

const NUTRIENTS: readonly Nutrient[] = ['energyKcal', 'protein', 'fibre', 'carbohydrate'];

/** The same episode with its dishes, ingredients, readings and foods told in another order. */
function reordered(file: EpisodeFile, seed: number): EpisodeFile {
  const { shuffle } = seeded(seed);
  const segments = shuffle(file.episode.segments).map((segment) => {
    const { recipe } = segment;
    if (!recipe) return segment;
    const [lines, weighings] = [shuffle(recipe.lines), shuffle(recipe.weighings)];
    return { ...segment, recipe: { ...recipe, lines, weighings } };
  });
  return { ...file, foods: shuffle(file.foods), episode: { ...file.episode, segments } };
}

/** Every figure of an episode by the name of its place. */
function allFigures(figures: EpisodeFigures): [string, Figure][] {
  const named = (place: string, of: Figures | null) =>
    Object.values(of ?? {}).map((each): [string, Figure] => [`${place} ${each.nutrient}`, each]);
  return [
    ...named('day', figures.day),
    ...figures.dishes.flatMap(({ segmentId, whole, eaten, per100g, portions, lines }) => [
      ...named(`whole ${segmentId}`, whole),
      ...named(`eaten ${segmentId}`, eaten),
      ...named(`per 100 g ${segmentId}`, per100g),
      ...portions.flatMap(({ portionId, figures: of }) => named(portionId, of)),
      ...lines.flatMap(({ lineId, figures: of }) => named(`line ${lineId}`, of)),
    ]),
  ];
}

/** Two numbers that are the same but for the noise of the processor's arithmetic. */
function expectSame(a: number | null | undefined, b: number | null | undefined) {
  if (a == null || b == null) throw new Error('both are known');
  expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(a), Math.abs(b)));
}

describe('sums have no order', () => {
  it('to the last bit that is shown: the same words in any order of dishes, ingredients and readings', () => {
    let differ = 0;
    fc.assert(
      fc.property(knownEpisode, fc.nat(), (file, seed) => {
        const [here, there] = [file, reordered(file, seed)].map(
          (of) => new Map(allFigures(episodeFigures(of, NUTRIENTS))),
        );
        expect(here?.size).toBeGreaterThan(20);
        for (const [place, figure] of here ?? []) {
          const other = there?.get(place);
          if (!other) throw new Error(`${place} in any order`);
          if (other.value !== figure.value || other.high !== figure.high) differ += 1;
          for (const step of [1, 0.1, 0.01]) {
            const [words, otherWords] = [printFigure(figure, step), printFigure(other, step)];
            expect([place, otherWords]).toEqual([place, words]);
          }
        }
      }),
      { numRuns: 150 },
    );
    // The sums themselves do differ in their last bits: that is what must not be seen.
    expect(differ).toBeGreaterThan(0);
  });

  it('as published: the day reads the same in any order of its dishes', () => {
    fc.assert(
      fc.property(knownEpisode, fc.nat(), fc.constantFrom(1, 5, 10), (file, seed, energyStep) => {
        const day = (of: EpisodeFile) => {
          const numbers = publishedNumbers(of, episodeFigures(of), { energyStep });
          return (['energyKcal', 'protein', 'fibre'] as const).map(
            (nutrient) => numbers(nutrient, { kind: 'day' }).text,
          );
        };
        expect(day(reordered(file, seed))).toEqual(day(file));
      }),
      { numRuns: 100 },
    );
  });
});

describe('figures scale', () => {
  it('an eaten share is that share of the dish, and n portions of n are the dish, bounds and all', () => {
    fc.assert(
      fc.property(knownEpisode, fc.integer({ min: 1, max: 9 }), (file, n) => {
        const segments = file.episode.segments.map((segment) => ({
          ...segment,
          eaten: { num: 1, den: n },
        }));
        const figures = episodeFigures({ ...file, episode: { ...file.episode, segments } });
        for (const { whole, eaten } of figures.dishes) {
          for (const end of ['value', 'low', 'high', 'likelyLow', 'likelyHigh'] as const) {
            expectSame((eaten.protein?.[end] ?? NaN) * n, whole.protein?.[end]);
          }
        }
        const third = figures.dishes[0]?.portions.find(({ portionId }) => portionId === 'third');
        expectSame((third?.figures.protein?.low ?? NaN) * 3, figures.dishes[0]?.whole.protein?.low);
      }),
    );
  });

  it('so many times the grams, with their ranges, are so many times the dish', () => {
    fc.assert(
      fc.property(knownEpisode, fc.integer({ min: 2, max: 7 }), (file, k) => {
        const times = (of: number) =>
          episodeFigures(
            withLines(file, (mg) => ({
              lowMg: mg * of,
              valueMg: (mg + 2) * of,
              highMg: (mg + 9000) * of,
            })),
          );
        const [one, many] = [times(1), times(k)];
        one.dishes.forEach(({ whole }, index) => {
          const other = many.dishes[index]?.whole.energyKcal;
          for (const end of ['value', 'low', 'high', 'likelyLow', 'likelyHigh'] as const) {
            expectSame((whole.energyKcal?.[end] ?? NaN) * k, other?.[end]);
          }
        });
      }),
    );
  });
});

/** Every ingredient by grams with the range given, and nothing else that has an amount. */
function withLines(
  file: EpisodeFile,
  planned: (mg: number) => { lowMg: number; valueMg: number; highMg: number },
): EpisodeFile {
  const segments = file.episode.segments.map((segment) => {
    const { recipe } = segment;
    if (!recipe) return segment;
    const lines = recipe.lines.map((line, at) => ({
      ...line,
      planned: planned(line.planned?.valueMg ?? 1000 * (at + 7)),
      leftBehind: { kind: 'none' as const },
    }));
    return { ...segment, recipe: { ...recipe, lines, weighings: [] } };
  });
  return { ...file, episode: { ...file.episode, segments } };
}

describe('a wider source never makes a narrower hard bound', () => {
  const sums = fc.record({
    grams: fc.array(fc.integer({ min: 1, max: 500 }), { minLength: 1, maxLength: 4 }),
    foods: fc.array(fc.integer({ min: 0, max: 900 }), { minLength: 1, maxLength: 3 }),
    lines: fc.array(fc.tuple(fc.nat(3), fc.nat(2), fc.constantFrom(1, 1, 1, -0.2)), {
      minLength: 1,
      maxLength: 8,
    }),
    divided: fc.boolean(),
    widen: fc.nat(7),
    by: fc.tuple(
      fc.double({ min: 0, max: 0.9, noNaN: true }),
      fc.double({ min: 0, max: 9, noNaN: true }),
    ),
  });

  it('in sums and ratios of any sources', () => {
    fc.assert(
      fc.property(sums, ({ grams, foods, lines, divided, widen, by }) => {
        const sources = new Map<string, Interval>([
          ['done', { low: 480, value: 500, high: 520 }],
          ...grams.map((g, n): [string, Interval] => [
            `g${n}`,
            { low: g - 0.5, value: g, high: g + 0.5 },
          ]),
          ...foods.map((food, n): [string, Interval] => [
            `f${n}`,
            { low: Math.max(0, food - 5), value: food, high: food + 5 },
          ]),
        ]);
        const terms: Term[] = lines.flatMap(([g, f, sign]) =>
          scale(multiply([source(`g${g % grams.length}`)], [source(`f${f % foods.length}`)]), sign),
        );
        const whole = divided ? divideBySource(terms, 'done') : terms;
        const ids = [...sources.keys()];
        const id = ids[widen % ids.length] ?? 'done';
        const narrow = sources.get(id) ?? { low: 0, value: 0, high: 0 };
        const wide = {
          ...narrow,
          low: narrow.low * (1 - by[0]),
          high: narrow.high * (1 + by[1]),
        };
        const before = boundsOf(whole, sources);
        const after = boundsOf(whole, new Map([...sources, [id, wide]]));
        const noise = 1e-9 * Math.max(1, Math.abs(before.high), Math.abs(before.low));
        expect(after.low).toBeLessThanOrEqual(before.low + noise);
        expect(after.high).toBeGreaterThanOrEqual(before.high - noise);
      }),
      { numRuns: 1000 },
    );
  });

  it('in figures: a coarser scale, a worse one, measures that miss by more', () => {
    const worse = fc.record({
      resolution: fc.constantFrom(1, 2, 5),
      ppm: fc.constantFrom(0, 2000, 20_000),
      permille: fc.constantFrom(100, 150, 400),
    });
    fc.assert(
      fc.property(knownEpisode, worse, (file, { resolution, ppm, permille }) => {
        const scales = file.kitchen.scales.map((each) => ({
          ...each,
          resolutionMg: each.resolutionMg * resolution,
          accuracyPpm: each.accuracyPpm + ppm,
        }));
        const spreads = [{ id: 'cups', kind: 'cup' as const, permille }];
        const kitchen = { ...file.kitchen, scales, spreads };
        const before = allFigures(episodeFigures(file, NUTRIENTS));
        const after = new Map(allFigures(episodeFigures({ ...file, kitchen }, NUTRIENTS)));
        for (const [place, { low, high }] of before) {
          const wide = after.get(place);
          const noise = 1e-9 * Math.max(1, high ?? 0);
          expect(wide?.low).toBeLessThanOrEqual((low ?? NaN) + noise);
          expect(wide?.high).toBeGreaterThanOrEqual((high ?? NaN) - noise);
        }
      }),
    );
  });
});
