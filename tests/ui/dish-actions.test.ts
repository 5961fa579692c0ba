import { describe, expect, test, vi } from 'vitest';
import type { Segment } from '#lib/episode/schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import { figureStatus } from '#lib/figures/figure';
import { takeLock, lockHolds } from '#lib/lock/numbers-lock';
import { importEpisodeFile } from '#lib/store/import-file';
import { readDishChoices, readDishPlaces } from '#lib/store/read-dishes';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { saveSegment } from '../../app/episodes/[id]/actions';
import { removeCooking, saveCooking } from '../../app/episodes/[id]/cooking-actions';
import {
  addFromDish,
  countAsFood,
  placeDish,
  saveFromDish,
} from '../../app/episodes/[id]/dish-line-actions';
import { GET } from '../../app/episodes/[id]/dishes/route';
import { takeFood } from '../../app/episodes/[id]/match-actions';
import { withFreshDatabase } from '../store/database';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, grams } from '../support/build';
import { Redirected, send } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({
  redirect: (href: string) => {
    throw new Redirected(href);
  },
}));
withFreshDatabase();

/** Ten grams of protein in 100 g. */
const BEAN = aFood('bean', { protein: '10.0', energyKcal: '100' });
const SAUCE = aRecipe('sauce', [grams('400 g beans', 'bean', 400)], {
  title: 'Sauce',
  portions: [{ id: 'p', kind: 'count', name: 'a jar', of: 4 }],
});

async function brought(segments: Segment[], title = 'Sundays', recipes = [] as (typeof SAUCE)[]) {
  const file = aFile(segments, [BEAN], { recipes, episode: { title } });
  const done = await importEpisodeFile(file, new Date());
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  return done.value.episodeId;
}

async function read(episodeId: string) {
  const file = await readEpisodeFile(episodeId, '2026-12-10T08:00:00.000Z');
  if (!file) throw new Error('no episode');
  const revs = await readRevisions(episodeId);
  const segments = file.episode.segments;
  const dish = (at: number) => {
    const segment = segments.at(at);
    if (!segment?.recipe) throw new Error(`no dish ${at}`);
    return { ...segment, recipe: segment.recipe };
  };
  const protein = (at: number) => episodeFigures(file, ['protein']).dishes.at(at)?.whole.protein;
  return { file, dish, protein, rev: (id: string) => revs[id] ?? 0 };
}

/** A lasagne of 100 g beans in one episode, and a sauce that was weighed finished at 320 g in another. */
async function twoEpisodes() {
  const sauces = await brought([
    aDish('s', { ...SAUCE, weighings: [aReading('w', 'finished', 320)] }, { title: 'Sauce' }),
  ]);
  const episodeId = await brought(
    [aDish('l', aRecipe('r', [grams('100 g beans', 'bean', 100)]), { title: 'Lasagne' })],
    'Mondays',
  );
  const [sauce] = await readDishChoices({ words: 'sauce sundays' });
  const { dish } = await read(episodeId);
  const on = { episodeId, recipeId: dish(0).recipe.id };
  const taken = { ...on, madeFromId: sauce?.recipeId ?? '', quantity: '160', unit: 'g' };
  return { episodeId, sauces, sauce, taken };
}

describe('an ingredient from a dish', () => {
  test.each([
    ['160', 'g', 20],
    ['1/2', 'batch', 20],
    ['2', 'portion:a jar', 20],
    ['', 'g', null],
  ])('of %s %s adds the protein of that part', async (quantity, unit, protein) => {
    const { episodeId, taken } = await twoEpisodes();
    const { state } = await send(addFromDish, { ...taken, quantity, unit });
    expect(state.problems).toEqual([]);
    const after = await read(episodeId);
    const line = after.dish(0).recipe.lines[1];
    // Its words are the dish's own, where none were typed.
    expect(line).toMatchObject({ text: 'Sauce', foodId: null, match: 'confirmed' });
    const figure = after.protein(0);
    if (protein === null) expect(figure && figureStatus(figure)).toBe('open');
    else expect(figure?.value).toBeCloseTo(10 + protein, 9);
  });

  test.each([
    [{ madeFromId: '' }, 'madeFromId', 'Choose the dish'],
    [{ madeFromId: 'no such' }, 'madeFromId', 'no longer there'],
    [{ unit: 'cup' }, 'unit', 'Choose grams, batches or a portion'],
    [{ unit: 'portion:a bucket', quantity: '1' }, 'unit', 'no portion called “a bucket”'],
    [{ quantity: '-5' }, 'quantity', 'Write an amount'],
    [{ quantity: 'a lot' }, 'quantity', 'Write an amount'],
  ])('with %o is refused at its field, and what was typed is kept', async (wrong, field, words) => {
    const { episodeId, taken } = await twoEpisodes();
    const { state } = await send(addFromDish, { ...taken, ...wrong });
    expect(state.problems.map(({ path }) => path)).toEqual([field]);
    expect(state.problems[0]?.message).toContain(words);
    expect(state.typed).toMatchObject(wrong);
    expect((await read(episodeId)).dish(0).recipe.lines).toHaveLength(1);
  });

  test('that would make a dish from itself is refused at the dish, and the ring is named', async () => {
    const { episodeId, sauces, taken } = await twoEpisodes();
    await send(addFromDish, taken);
    const { dish } = await read(sauces);
    const lasagne = (await read(episodeId)).dish(0);
    const back = { ...taken, episodeId: sauces, recipeId: dish(0).recipe.id };
    const { state } = await send(addFromDish, { ...back, madeFromId: lasagne.recipe.id });
    expect(state.problems).toMatchObject([
      {
        path: 'madeFromId',
        message: 'This would make a dish from itself: Sauce → Lasagne → Sauce.',
      },
    ]);
  });

  test('can be made of one that was of a food, and back again', async () => {
    const { episodeId, taken } = await twoEpisodes();
    const before = await read(episodeId);
    const line = before.dish(0).recipe.lines[0];
    const ids = { episodeId, lineId: line?.id ?? '', rev: before.rev(line?.id ?? '') };
    const texts = { ...taken, text: 'sauce of beans', ...ids };
    const { href } = await send(saveFromDish, texts);
    expect(href).toContain(`#row-${ids.lineId}`);
    const dished = await read(episodeId);
    expect(dished.dish(0).recipe.lines[0]).toMatchObject({
      text: 'sauce of beans',
      foodId: null,
      // The 100 g of before would win over the 160 g of now.
      planned: null,
      madeFrom: { recipeId: taken.madeFromId },
    });
    expect(dished.protein(0)?.value).toBeCloseTo(20, 9);
    const stale = await send(saveFromDish, texts);
    expect(stale.state.problems[0]).toMatchObject({ code: 'conflict' });
    await send(countAsFood, { ...ids, rev: dished.rev(ids.lineId) });
    const open = await read(episodeId);
    expect(open.dish(0).recipe.lines[0]).toMatchObject({ madeFrom: null, quantity: null });
    const foodId = before.file.foods[0]?.id ?? '';
    await send(takeFood, { ...ids, rev: open.rev(ids.lineId), foodId });
    expect((await read(episodeId)).dish(0).recipe.lines[0]?.foodId).toBe(foodId);
  });

  test('is called as its dish, and breaks a lock where that dish changes', async () => {
    const { episodeId, sauces, sauce, taken } = await twoEpisodes();
    await send(addFromDish, taken);
    const before = await read(episodeId);
    const lock = takeLock(before.file);
    const other = await read(sauces);
    const segmentId = other.dish(0).id;
    const rename = { episodeId: sauces, segmentId, rev: other.rev(segmentId), title: 'Red sauce' };
    await send(saveSegment, { ...rename, planned: '1:00', batches: '1' });
    const renamed = await read(episodeId);
    expect(renamed.file.recipes.map(({ title }) => title)).toEqual(['Red sauce']);
    // A name is no number.
    expect(lockHolds(lock, renamed.file)).toBe(true);
    const recipeId = sauce?.recipeId ?? '';
    const cooked = { episodeId: sauces, recipeId, rev: (await read(sauces)).rev(recipeId) };
    await send(saveCooking, { ...cooked, moisture: '-20', source: 'a table' });
    expect(lockHolds(lock, (await read(episodeId)).file)).toBe(false);
  });

  test('from one that came with a file can be put among the dishes, once', async () => {
    const made = aLine('sauce', null, { madeFrom: { recipeId: 'sauce', rev: 1 } });
    const episodeId = await brought([aDish('l', aRecipe('r', [made]))], 'Mondays', [SAUCE]);
    const recipeId = (await read(episodeId)).file.recipes[0]?.id ?? '';
    expect(await readDishPlaces([recipeId])).toEqual({});
    await send(placeDish, { episodeId, recipeId });
    const after = await read(episodeId);
    expect(after.file.recipes).toEqual([]);
    expect(after.dish(-1)).toMatchObject({ title: 'Sauce', eaten: { num: 0, den: 1 } });
    expect((await readDishPlaces([recipeId]))[recipeId]).toMatchObject({ episodeId });
    await send(placeDish, { episodeId, recipeId });
    expect((await read(episodeId)).file.episode.segments).toHaveLength(2);
  });

  test('is looked for by words of the dish and its episode', async () => {
    const episodeId = await brought(
      [
        aDish('a', aRecipe('ra', []), { title: 'Gooseberry broth' }),
        aDish('b', aRecipe('rb', []), { title: 'Samphire tart' }),
      ],
      'Harbour picnic',
    );
    const found = async (q: string) => {
      const url = new URL(`http://localhost/episodes/${episodeId}/dishes`);
      url.searchParams.set('q', q);
      const response = await GET({ nextUrl: url } as unknown as Parameters<typeof GET>[0]);
      return ((await response.json()) as { title: string }[]).map(({ title }) => title);
    };
    expect(await found('samphire')).toEqual(['Samphire tart']);
    expect((await found('harbour picnic')).sort()).toEqual(['Gooseberry broth', 'Samphire tart']);
    expect(await found('samphire broth')).toEqual([]);
    // Before anything is looked for, the latest.
    expect(await found('')).toContain('Samphire tart');
  });
});

describe('the change of weight in cooking', () => {
  const texts = { moisture: '−20', fat: '', spread: '', source: 'my own three trays' };
  async function begin() {
    const episodeId = await brought([aDish('s', SAUCE, { title: 'Sauce' })]);
    const before = await read(episodeId);
    const recipeId = before.dish(0).recipe.id;
    return { episodeId, recipeId, rev: before.rev(recipeId) };
  }

  test('gives 100 g of a dish that nobody weighed, with its spread, and goes again', async () => {
    const ids = await begin();
    const per100g = async () => {
      const { file } = await read(ids.episodeId);
      return episodeFigures(file, ['protein']).dishes[0]?.per100g?.protein ?? null;
    };
    expect(await per100g()).toBeNull();
    const { state } = await send(saveCooking, { ...ids, ...texts });
    expect(state.problems).toEqual([]);
    const after = await read(ids.episodeId);
    expect(after.dish(0).recipe.cooking).toEqual({
      moisturePermille: -200,
      fatPermille: 0,
      spreadPermille: 50,
      source: 'my own three trays',
    });
    // 40 g of protein in 400 g less 20 %: 12.5 g in 100 g; and about 75 to 85 % of it left.
    const figure = await per100g();
    expect(figure?.value).toBeCloseTo(12.5, 9);
    expect(figure?.low).toBeLessThan(40 / 3.4 + 0.01);
    expect(figure?.high).toBeGreaterThan(40 / 3 - 0.01);
    await send(removeCooking, { ...ids, rev: after.rev(ids.recipeId) });
    expect(await per100g()).toBeNull();
  });

  test.each([
    [{ source: '' }, 'source'],
    [{ moisture: '' }, 'moisture'],
    [{ moisture: 'a bit' }, 'moisture'],
    [{ moisture: '-101' }, 'moisture'],
    [{ moisture: '-60', fat: '-40' }, 'moisture'],
    [{ moisture: '-96' }, 'moisture'],
    [{ fat: '-150' }, 'fat'],
    [{ spread: '-5' }, 'spread'],
  ])('with %o is refused at %s and nothing is written', async (wrong, field) => {
    const ids = await begin();
    const { state } = await send(saveCooking, { ...ids, ...texts, ...wrong });
    expect(state.problems.map(({ path }) => path)).toEqual([field]);
    expect((await read(ids.episodeId)).dish(0).recipe.cooking).toBeNull();
  });
});
