import { describe, expect, test, vi } from 'vitest';
import type { Segment } from '#lib/episode/schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import { figureStatus } from '#lib/figures/figure';
import { publishedNumbers } from '#lib/figures/published-numbers';
import { importEpisodeFile } from '#lib/store/import-file';
import { readKitchen } from '#lib/store/read-kitchen';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { saveEaten } from '../../app/episodes/[id]/eaten-actions';
import { addPortion, removePortion } from '../../app/episodes/[id]/portion-actions';
import { saveSpreads } from '../../app/kitchen/actions';
import { withFreshDatabase } from '../store/database';
import { aDish, aFile, aFood, aReading, aRecipe, grams } from '../support/build';
import { Redirected, send } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({
  redirect: (href: string) => {
    throw new Redirected(href);
  },
}));
withFreshDatabase();

/** Ten grams of protein in 100 g, so forty in the dish. */
const BEAN = aFood('bean', { protein: '10.0', energyKcal: '101' });
const WEIGHED = { weighings: [aReading('w', 'finished', 300)] };

async function begin(more: Partial<Segment> = {}, recipe = {}) {
  const stew = aRecipe('stew', [grams('beans', 'bean', 400)], recipe);
  const file = aFile([aDish('s', stew, { title: 'Stew', ...more })], [BEAN]);
  const done = await importEpisodeFile(file, new Date());
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  return read(done.value.episodeId);
}

async function read(episodeId: string) {
  const file = await readEpisodeFile(episodeId, '2026-12-10T08:00:00.000Z');
  const segment = file?.episode.segments[0];
  if (!file || !segment?.recipe) throw new Error('no dish');
  const revs = await readRevisions(episodeId);
  const figures = episodeFigures(file);
  const [dish] = figures.dishes;
  if (!dish) throw new Error('no figures');
  return {
    file,
    figures,
    dish,
    segment,
    recipe: segment.recipe,
    on: { episodeId, recipeId: segment.recipe.id },
    eaten: { episodeId, segmentId: segment.id, rev: revs[segment.id] ?? 0 },
    rev: (id: string) => revs[id] ?? 0,
  };
}

describe('portions', () => {
  test('are one of so many, exactly; grams, exactly; and a share by eye with the kitchen’s spread', async () => {
    const { on } = await begin({}, WEIGHED);
    for (const [kind, size] of [
      ['count', '4'],
      ['mass', '150'],
      ['byEye', '1/4'],
    ]) {
      const { state } = await send(addPortion, { ...on, kind: kind ?? '', size: size ?? '' });
      expect(state.problems).toEqual([]);
    }
    const { dish, recipe } = await read(on.episodeId);
    expect(recipe.portions.map(({ name }) => name)).toEqual(['one of 4', '150 g', 'about 1/4']);
    const [equal, byGrams, byEye] = dish.portions.map(({ figures }) => figures.protein);
    // A quarter of 40 g as bounded by the beans alone: 9.95 to 10.05 g in 100 g, 399.5 to 400.5 g of them.
    expect([equal?.value, equal?.low, equal?.high]).toEqual([
      expect.closeTo(10, 9),
      expect.closeTo((0.995 * 399.5) / 40, 6),
      expect.closeTo((1.005 * 400.5) / 40, 6),
    ]);
    expect(byGrams?.value).toBeCloseTo(20, 9);
    // A quarter that may be 15 % of itself more or less.
    expect(byEye?.value).toBeCloseTo(10, 9);
    expect(byEye?.low).toBeCloseTo(0.85 * (equal?.low ?? NaN), 6);
    expect(byEye?.high).toBeCloseTo(1.15 * (equal?.high ?? NaN), 6);
  });

  test('by eye take the spread of the kitchen’s own form, and one typed beside them', async () => {
    const { on, file } = await begin();
    const stored = await readKitchen(file.kitchen.id);
    const spreads = { spoon: '10', cup: '10', piece: '15', slice: '10', handful: '35' };
    const saved = await send(saveSpreads, {
      kitchenId: stored?.kitchen.id ?? '',
      ...spreads,
      portion: '20',
    });
    expect(saved.state.problems).toEqual([]);
    await send(addPortion, { ...on, kind: 'byEye', size: '1/2', name: 'hers' });
    await send(addPortion, { ...on, kind: 'byEye', size: '1/2', name: 'his', spread: '7.5' });
    const { recipe } = await read(on.episodeId);
    expect(recipe.portions.map((each) => each.kind === 'byEye' && each.permille)).toEqual([
      200, 75,
    ]);
  });

  test.each([
    [{ kind: 'count', size: '0' }, 'size'],
    [{ kind: 'mass', size: '10-20' }, 'size'],
    [{ kind: 'byEye', size: '5/4' }, 'size'],
    [{ kind: 'byEye', size: '' }, 'size'],
    [{ kind: 'byEye', size: '1/2', spread: '101' }, 'spread'],
    [{ kind: 'a lot', size: '1' }, 'kind'],
  ])('%o is refused at %s and nothing is written', async (texts, field) => {
    const { on } = await begin();
    const { state } = await send(addPortion, { ...on, ...texts });
    expect(state.problems.map(({ path }) => path)).toEqual([field]);
    expect((await read(on.episodeId)).recipe.portions).toEqual([]);
  });

  test('are told apart by their names, since others are made from them by name', async () => {
    const { on } = await begin();
    await send(addPortion, { ...on, kind: 'count', size: '4', name: 'a bowl' });
    const { state } = await send(addPortion, { ...on, kind: 'count', size: '5', name: 'a bowl' });
    expect(state.problems).toMatchObject([{ path: 'name', code: 'same' }]);
    const { recipe, rev } = await read(on.episodeId);
    const [bowl] = recipe.portions;
    const ids = { episodeId: on.episodeId, portionId: bowl?.id ?? '', rev: rev(bowl?.id ?? '') };
    await send(removePortion, ids);
    expect((await read(on.episodeId)).recipe.portions).toEqual([]);
  });

  test.each([
    ['mass', ['100', '100', '100'], ['135', '135', '134']],
    ['byEye', ['1/3', '1/3', '1/3'], ['135', '135', '134']],
    // They are not all of it, and each is rounded alone: 404 kcal in three hundred grams.
    ['mass', ['100', '100'], ['135', '135']],
  ])('%s of %o add up to the dish where they are all of it', async (kind, sizes, printed) => {
    const { on } = await begin({}, WEIGHED);
    for (const [index, size] of sizes.entries()) {
      await send(addPortion, { ...on, kind, size, name: `part ${index}` });
    }
    const { file, figures, recipe } = await read(on.episodeId);
    const numbers = publishedNumbers(file, figures);
    const texts = recipe.portions.map(
      ({ id }) => numbers('energyKcal', { kind: 'portion', portionId: id }).text,
    );
    expect(texts).toEqual(printed);
    const whole = numbers('energyKcal', {
      kind: 'whole',
      segmentId: figures.dishes[0]?.segmentId ?? '',
    });
    expect(whole.text).toBe('404');
  });
});

describe('what was eaten of a dish', () => {
  test.each<[Record<string, string>, Partial<Segment>]>([
    [{ way: 'all' }, { eaten: { num: 1, den: 1 }, ate: { kind: 'share' } }],
    [{ way: 'none' }, { eaten: { num: 0, den: 1 }, ate: { kind: 'share' } }],
    [
      { way: 'share', share: '1/3' },
      { eaten: { num: 1, den: 3 }, ate: { kind: 'share' } },
    ],
    [
      { way: 'byEye', share: '1/3' },
      { eaten: { num: 1, den: 3 }, ate: { kind: 'byEye', permille: 150 } },
    ],
    [
      { way: 'byEye', share: '0.5', spread: '5' },
      { eaten: { num: 1, den: 2 }, ate: { kind: 'byEye', permille: 50 } },
    ],
    [
      { way: 'mass', grams: '150' },
      {
        eaten: { num: 1, den: 1 },
        ate: { kind: 'mass', lowMg: 149_500, valueMg: 150_000, highMg: 150_500 },
      },
    ],
    [
      { way: 'mass', grams: '150 ± 10' },
      {
        eaten: { num: 1, den: 1 },
        ate: { kind: 'mass', lowMg: 140_000, valueMg: 150_000, highMg: 160_000 },
      },
    ],
    [
      { way: 'plate', before: '812', after: '662' },
      {
        eaten: { num: 1, den: 1 },
        ate: { kind: 'mass', lowMg: 149_000, valueMg: 150_000, highMg: 151_000 },
      },
    ],
  ])('is kept from %o, and read again', async (texts, kept) => {
    // Another kitchen's spread must not decide what is a default here.
    const { eaten, on } = await begin({ eaten: { num: 1, den: 7 } }, WEIGHED);
    const typed = texts.way === 'byEye' ? { spread: '15', ...texts } : texts;
    const { state } = await send(saveEaten, { ...eaten, ...typed });
    expect(state.problems).toEqual([]);
    const after = await read(on.episodeId);
    expect(after.segment).toMatchObject(kept);
    const day = after.figures.day.protein;
    const { ate } = after.segment;
    const share =
      ate.kind === 'mass'
        ? ate.valueMg / 300_000
        : after.segment.eaten.num / after.segment.eaten.den;
    expect(day?.value).toBeCloseTo(40 * share, 6);
  });

  test('by eye is less certain than exactly, and so is a plate than the grams that were typed', async () => {
    const width = async (texts: Record<string, string>) => {
      const { eaten, on } = await begin({}, WEIGHED);
      await send(saveEaten, { ...eaten, ...texts });
      const day = (await read(on.episodeId)).figures.day.protein;
      return (day?.high ?? NaN) - (day?.low ?? NaN);
    };
    const exactly = await width({ way: 'share', share: '1/2' });
    expect(await width({ way: 'byEye', share: '1/2', spread: '15' })).toBeGreaterThan(exactly + 5);
    const typed = await width({ way: 'mass', grams: '150' });
    expect(await width({ way: 'plate', before: '812', after: '662' })).toBeGreaterThan(typed);
  });

  test('by grams is open while nothing says what the finished dish weighs; the dish itself is known', async () => {
    const { eaten, on } = await begin();
    await send(saveEaten, { ...eaten, way: 'mass', grams: '150' });
    const { figures, dish } = await read(on.episodeId);
    const status = (figure = dish.eaten.protein) => figure && figureStatus(figure);
    expect([status(), status(figures.day.protein), status(dish.whole.protein)]).toEqual([
      'open',
      'open',
      'known',
    ]);
  });

  test.each([
    [{ way: 'share', share: '' }, 'share'],
    [{ way: 'share', share: '1-2' }, 'share'],
    [{ way: 'byEye', share: '0' }, 'share'],
    [{ way: 'byEye', share: '1/2', spread: 'some' }, 'spread'],
    [{ way: 'mass', grams: '' }, 'grams'],
    [{ way: 'mass', grams: '0' }, 'grams'],
    [{ way: 'plate', before: '812' }, 'after'],
    [{ way: 'plate', after: '812' }, 'before'],
    [{ way: 'plate', before: '662', after: '812' }, 'after'],
    [{ way: 'plate', before: '800-812', after: '662' }, 'before'],
    [{ way: '' }, 'way'],
  ])('is refused from %o at %s, and what was typed is kept', async (texts, field) => {
    const { eaten, on, segment } = await begin({ eaten: { num: 1, den: 7 } });
    const { state } = await send(saveEaten, { ...eaten, ...texts });
    expect(state.problems.map(({ path }) => path)).toEqual([field]);
    expect(state.typed).toMatchObject(texts);
    expect((await read(on.episodeId)).segment).toEqual(segment);
  });
});
