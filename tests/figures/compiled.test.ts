import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dishesOf } from '#lib/episode/context';
import { finishedWeight } from '#lib/episode/finished-weight';
import type { EpisodeFile } from '#lib/episode/schema';
import { keptDish } from '#lib/figures/compiled/compiled-lines';
import { isInNumbers } from '#lib/figures/compiled/dish-sum';
import { memoryOf } from '#lib/figures/compiled/memory';
import { panelOf } from '#lib/figures/compiled/panel';
import { compiled } from '#lib/figures/compiled/reckoning';
import { scopeOf } from '#lib/figures/compiled/scope';
import { episodeFigures, type EpisodeFigures } from '#lib/figures/episode-figures';
import type { Figure } from '#lib/figures/figure';
import { shareByMass } from '#lib/figures/finished-weight';
import { byTerms } from '#lib/figures/reckoning';
import { NUTRIENT_NAMES, type Nutrient } from '#lib/foods/nutrients';
import { largeEpisode } from '../support/large-episode';
import { uniform } from '../support/uniform';
import { anyEpisode } from './compiled-kitchens';

/** What stands for the rest: stated and derived, by region, with and without rules of their own. */
const SOME: readonly Nutrient[] = [
  'water',
  'energyKcal',
  'energyKj',
  'fat',
  'saturated',
  'carbohydrate',
  'fibre',
  'sodium',
  'salt',
  'vitaminC',
];

const episode = (plain: boolean) =>
  fc
    .record({
      seed: fc.integer({ min: 0, max: 2 ** 32 - 1 }),
      dishes: fc.integer({ min: 1, max: 3 }),
      lines: fc.integer({ min: 1, max: 6 }),
    })
    .map(({ seed, ...size }) => anyEpisode(uniform(seed), { ...size, plain }));

const close = (a: number | null, b: number | null, size: number) =>
  a === b || (a !== null && b !== null && Math.abs(a - b) <= 1e-9 * Math.max(1e-300, size));

/** Equal but for rounding: numbers within 1e-9 of the figure's size, all else to the letter. */
function expectSame(a: unknown, b: unknown, path = 'figures'): void {
  if (isFigure(a) && isFigure(b)) {
    const size = Math.max(Math.abs(b.value), b.high ?? 0);
    for (const end of ['value', 'low', 'high', 'likelyLow', 'likelyHigh'] as const) {
      if (!close(a[end], b[end], size)) {
        expect.fail(`${path}.${end}: ${String(a[end])} compiled, ${String(b[end])} by terms`);
      }
    }
    expect({ ...a, ...NO_NUMBERS }, path).toEqual({ ...b, ...NO_NUMBERS });
  } else if (Array.isArray(a) && Array.isArray(b)) {
    expect(a.length, path).toBe(b.length);
    a.forEach((each, place) => expectSame(each, b[place], `${path}[${place}]`));
  } else if (isRecord(a) && isRecord(b)) {
    expect(Object.keys(a), path).toEqual(Object.keys(b));
    for (const key of Object.keys(a)) expectSame(a[key], b[key], `${path}.${key}`);
  } else expect(a, path).toEqual(b);
}

const NO_NUMBERS = { value: 0, low: 0, high: 0, likelyLow: 0, likelyHigh: 0 };
const isRecord = (of: unknown): of is Record<string, unknown> =>
  typeof of === 'object' && of !== null && !Array.isArray(of);
const isFigure = (of: unknown): of is Figure => isRecord(of) && 'nutrient' in of;

const both = (file: EpisodeFile, nutrients: readonly Nutrient[] = SOME) =>
  [compiled, byTerms].map((way) => episodeFigures(file, nutrients, way)) as [
    EpisodeFigures,
    EpisodeFigures,
  ];

describe('compiled figures', () => {
  it('are those by terms, where amounts are multiplied by compositions', () => {
    fc.assert(
      fc.property(episode(true), (file) => expectSame(...both(file))),
      { numRuns: 60 },
    );
  });

  it('are those by terms, whatever an episode holds', () => {
    fc.assert(
      fc.property(episode(false), (file) => expectSame(...both(file))),
      { numRuns: 60 },
    );
  });

  it('name no source that comes to nothing: the finished weight of a dish in a dish, added and taken away', () => {
    const file = anyEpisode(uniform(21), { dishes: 3, lines: 1, plain: false });
    const [quick, slow] = both(file);
    expectSame(quick, slow);
    const [, outer] = quick.dishes;
    expect(outer?.whole.water?.sources).toContain('weighing:d1-done');
    expect(outer?.whole.water?.sources).not.toContain('weighing:d0-done');
  });

  it('are those by terms in all nutrients', () => {
    const check = (file: EpisodeFile) => expectSame(...both(file, NUTRIENT_NAMES));
    fc.assert(fc.property(fc.boolean().chain(episode), check), { numRuns: 4 });
  });

  it('come from numbers and not from terms, wherever amounts are multiplied by compositions', () => {
    const file = largeEpisode();
    const panel = panelOf('US', NUTRIENT_NAMES);
    const memory = memoryOf(file, panel);
    const asked = dishesOf(file.episode.segments).flatMap((dish) => {
      const { sum } = keptDish(dish, memory.context, memory);
      const finished = finishedWeight(dish.recipe, memory.context);
      const scope = scopeOf((whole) => (finished ? shareByMass(whole, finished, 1000) : whole));
      const all = [sum.whole(), scope.kind === 'by' ? sum.shared(scope) : sum.whole()];
      return all.flatMap(({ arrangement, sums }) =>
        NUTRIENT_NAMES.filter((_, place) => !sums || !isInNumbers(arrangement, sums, place)),
      );
    });
    expect(asked).toEqual([]);
  });
});
