import { describe, expect, test, vi } from 'vitest';
import { dishesOf } from '#lib/episode/context';
import { boundedValues, boundOffers } from '#lib/figures/bound-offer';
import { episodeFigures } from '#lib/figures/episode-figures';
import { figureStatus } from '#lib/figures/figure';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { readEpisodeChanges } from '#lib/store/read-episode-changes';
import { takeBack } from '../../app/episodes/[id]/actions';
import {
  countAllAsRanges,
  countAsRange,
  giveBackRange,
} from '../../app/episodes/[id]/bound-actions';
import { withFreshDatabase } from '../store/database';
import { remarkedEpisode } from '../support/remarked-episode';
import { Redirected, send } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({
  redirect: (href: string) => {
    throw new Redirected(href);
  },
}));

/** A pinch of paprika, whose food states neither fibre nor sugars, in a pot of barley. */
async function begin() {
  const brought = await importEpisodeFile(remarkedEpisode(), new Date());
  if (!brought.ok) throw new Error(JSON.stringify(brought.problems));
  return read(brought.value.episodeId);
}

async function read(episodeId: string) {
  const file = await readEpisodeFile(episodeId, '2026-12-10T08:00:00.000Z');
  const dish = file && dishesOf(file.episode.segments)[0];
  const line = dish?.recipe.lines.find(({ text }) => text === '0.6 g paprika');
  if (!file || !dish || !line) throw new Error('the dish must be there');
  const figures = episodeFigures(file);
  const whole = figures.dishes[0]?.whole ?? {};
  const revs = await readRevisions(episodeId);
  return {
    line,
    ids: { episodeId, lineId: line.id, rev: revs[line.id] ?? 0 },
    all: { episodeId, recipeId: dish.recipe.id },
    other: { episodeId, recipeId: dishesOf(file.episode.segments)[1]?.recipe.id ?? '' },
    offers: boundOffers(file, figures, dish.id).map(({ nutrient }) => nutrient),
    values: boundedValues(file, dish),
    fibre: whole.fibre,
    statuses: [whole.fibre, whole.sugars].map((figure) => figure && figureStatus(figure)),
    again: () => read(episodeId),
    undo: async () => {
      const groupId = (await readEpisodeChanges(episodeId)).acts[0]?.groupId ?? '';
      await send(takeBack, { episodeId, groupId });
      return read(episodeId);
    },
  };
}

describe('what a source does not state', () => {
  withFreshDatabase();

  test('is counted from 0 to the most that is typed; undone, it is missing again', async () => {
    const before = await begin();
    expect(before.offers).toEqual(['fibre', 'sugars']);
    expect(before.statuses).toEqual(['atLeast', 'atLeast']);
    await send(countAsRange, { ...before.ids, nutrient: 'fibre', maxPer100: '50' });
    const after = await before.again();
    expect(after.line.bounded).toEqual([{ nutrient: 'fibre', maxPer100: 50 }]);
    expect(after.statuses).toEqual(['known', 'atLeast']);
    // Up to 0.6005 g of the scale with 50 g in 100 g: the lower bound is what it was, the upper one 0.3 g above the rest.
    expect(after.fibre?.low).toBeCloseTo(before.fibre?.low ?? 0, 9);
    // 72.3005 g with 15.65 g in 100 g, 4.5 g of the label in 60.0005 of 59.5 g, half a gram (21 CFR 101.9(c)(6)(i)) in
    // each of 20 servings labelled 0, and the pinch.
    expect(after.fibre?.high).toBeCloseTo(
      72.3005 * 0.1565 + (4.5 * 60.0005) / 59.5 + 20 * 0.5 + 0.6005 * 0.5,
      6,
    );
    expect((await after.undo()).statuses).toEqual(['atLeast', 'atLeast']);
  });

  test('is counted anew in the place of what was counted before', async () => {
    const { ids, again } = await begin();
    await send(countAsRange, { ...ids, nutrient: 'fibre', maxPer100: '50' });
    await send(countAsRange, { ...(await again()).ids, nutrient: 'fibre', maxPer100: '0' });
    expect((await again()).line.bounded).toEqual([{ nutrient: 'fibre', maxPer100: 0 }]);
  });

  test('is counted for all that is negligible in one act, and given back one by one', async () => {
    const { all, again, undo } = await begin();
    await send(countAllAsRanges, all);
    const counted = await again();
    expect(counted.statuses).toEqual(['known', 'known']);
    expect(counted.offers).toEqual([]);
    expect(counted.values.map(({ top }) => top)).toEqual([
      expect.closeTo(0.6005 * 0.54, 3),
      expect.closeTo(0.6005 * 0.54, 3),
    ]);
    await send(giveBackRange, { ...counted.ids, nutrient: 'sugars' });
    expect((await again()).statuses).toEqual(['known', 'atLeast']);
    expect((await undo()).statuses).toEqual(['known', 'known']);
    const last = await again();
    await send(giveBackRange, { ...last.ids, nutrient: 'sugars' });
    await send(giveBackRange, { ...(await again()).ids, nutrient: 'fibre' });
    expect((await again()).line.bounded).toEqual([]);
  });

  test.each([
    ['', 'nothing'],
    ['some', 'a word'],
    ['-1', 'less than nothing'],
    ['NaN', 'no number'],
    ['1e999', 'no end'],
    ['101', 'more than 100 g in 100 g'],
  ])('is not counted up to "%s": %s', async (maxPer100) => {
    const { ids, again } = await begin();
    const { state } = await send(countAsRange, { ...ids, nutrient: 'fibre', maxPer100 });
    expect(state.problems.map(({ path }) => path)).toEqual(['maxPer100']);
    expect(state.problems[0]?.message).not.toBe('');
    expect(state.typed.maxPer100).toBe(maxPer100);
    expect((await again()).line.bounded).toEqual([]);
  });

  test('says the most that anything holds: fat has 902 kcal in 100 g', async () => {
    const { ids } = await begin();
    const { state } = await send(countAsRange, {
      ...ids,
      nutrient: 'energyKcal',
      maxPer100: '903',
    });
    expect(state.problems[0]?.message).toBe(
      '100 g of anything hold at most 902 kcal calories: this is 903.',
    );
  });

  test.each([
    ['a nutrient that there is none of', { nutrient: 'luck' }],
    ['a number that is worked out and never stated', { nutrient: 'netCarbohydrate' }],
    ['no nutrient', { nutrient: '' }],
    ['no ingredient', { lineId: '' }],
    ['no revision', { rev: 'x' }],
  ])('is refused for %s, and nothing is written', async (_, wrong) => {
    const { ids, again } = await begin();
    const sent = { ...ids, nutrient: 'fibre', maxPer100: '1', ...wrong };
    for (const act of [countAsRange, giveBackRange]) {
      expect((await send(act, sent)).state.problems).not.toEqual([]);
    }
    expect((await again()).line.bounded).toEqual([]);
  });

  test('is refused from a page that is out of date, or for what is gone', async () => {
    const { ids, all, other, again } = await begin();
    const sent = { ...ids, nutrient: 'fibre', maxPer100: '1' };
    await send(countAsRange, sent);
    const stale = await send(countAsRange, { ...sent, nutrient: 'sugars' });
    expect(stale.state.problems).not.toEqual([]);
    expect((await again()).line.bounded).toEqual([{ nutrient: 'fibre', maxPer100: 1 }]);

    const gone = { lineId: crypto.randomUUID() };
    for (const act of [countAsRange, giveBackRange]) {
      const { state } = await send(act, { ...sent, ...gone });
      expect(state.problems).toMatchObject([{ code: 'gone' }]);
    }
    for (const each of [
      other,
      { ...all, recipeId: crypto.randomUUID() },
      { ...all, episodeId: crypto.randomUUID() },
    ]) {
      const { state } = await send(countAllAsRanges, each);
      expect(state.problems).toMatchObject([{ code: 'gone' }]);
    }
  });
});
