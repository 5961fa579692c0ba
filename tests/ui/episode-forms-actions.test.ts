import { describe, expect, test, vi } from 'vitest';
import type { Segment } from '#lib/episode/schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import { judgeLimit } from '#lib/figures/judge-limit';
import { shoppingList } from '#lib/shopping/shopping-list';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeChanges } from '#lib/store/read-episode-changes';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { saveLine, saveSegment, takeBack } from '../../app/episodes/[id]/actions';
import { removePortion } from '../../app/episodes/[id]/portion-actions';
import { addTarget, removeTarget, saveTarget } from '../../app/episodes/[id]/target-actions';
import { removeReading, weighDish, weighLine } from '../../app/episodes/[id]/weigh-actions';
import { withFreshDatabase } from '../store/database';
import { aDish, aFile, aFood, aLine, aRecipe } from '../support/build';
import { Redirected, send } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({
  redirect: (href: string) => {
    throw new Redirected(href);
  },
}));

/** Ten grams of protein in 100 g; a piece may be a small or a large one. */
const EGG = aFood(
  'egg',
  { protein: '10.0' },
  {
    measures: [
      { id: 'small', name: 'small', qtyNum: 1, qtyDen: 1, massMg: 40_000, digits: 0, source: 't' },
      { id: 'large', name: 'large', qtyNum: 1, qtyDen: 1, massMg: 60_000, digits: 0, source: 't' },
    ],
  },
);
const TWO = { low: { num: 2, den: 1 }, high: { num: 2, den: 1 } };

/** An episode of one dish of two eggs, in the store: everything in it by its new ids. */
async function begin(more: Partial<Segment> = {}) {
  const line = aLine('two eggs', 'egg', { quantity: TWO, unit: 'piece' });
  const recipe = aRecipe('r', [line], {
    portions: [{ id: 'p', kind: 'mass', name: 'a bowl', massMg: 50_000 }],
  });
  const brought = await importEpisodeFile(aFile([aDish('s', recipe, more)], [EGG]), new Date());
  if (!brought.ok) throw new Error(JSON.stringify(brought.problems));
  return read(brought.value.episodeId);
}

async function read(episodeId: string) {
  const file = await readEpisodeFile(episodeId, '2026-12-10T08:00:00.000Z');
  const segment = file?.episode.segments[0];
  const line = segment?.recipe?.lines[0];
  if (!file || !segment?.recipe || !line) throw new Error('the dish must be there');
  const figures = episodeFigures(file);
  const [dish] = figures.dishes;
  if (!dish) throw new Error('the dish must have figures');
  const revs = await readRevisions(episodeId);
  return {
    file,
    figures,
    dish,
    segment,
    recipe: segment.recipe,
    line,
    on: { episodeId, scaleId: file.kitchen.scales[0]?.id ?? '', method: 'direct' },
    rev: (id: string) => revs[id] ?? 0,
  };
}

/** What the form of an ingredient sends where nothing was touched. */
function typed({ on, line, rev }: Awaited<ReturnType<typeof read>>) {
  return {
    episodeId: on.episodeId,
    lineId: line.id,
    rev: rev(line.id),
    text: line.text,
    quantity: '2',
    unit: 'piece',
    state: 'asIs',
    foodId: line.foodId ?? '',
    measuresOf: line.foodId ?? '',
  };
}

describe('what a scale shows', () => {
  withFreshDatabase();

  test('of an ingredient counts instead of what was written, and a second reading adds to it', async () => {
    const before = await begin();
    // Two of the first measure: 80 g, so 8 g of protein.
    expect(before.dish.whole.protein?.value).toBeCloseTo(8, 6);
    const { on, line } = before;
    const { href } = await send(weighLine, { ...on, lineId: line.id, gross: '150', tare: '50' });
    expect(href).toContain(`#row-${line.id}`);
    const once = await read(on.episodeId);
    expect(once.dish.whole.protein?.value).toBeCloseTo(10, 6);
    // The scale shows whole grams: 99.5 to 100.5 g of a food that prints 9.95 to 10.05 g.
    expect(once.dish.whole.protein?.low).toBeCloseTo(0.995 * 9.95, 6);
    expect(once.dish.whole.protein?.high).toBeCloseTo(1.005 * 10.05, 6);
    await send(weighLine, {
      ...on,
      lineId: line.id,
      gross: '20',
      after: '0',
      method: 'difference',
    });
    const twice = await read(on.episodeId);
    expect(twice.dish.whole.protein?.value).toBeCloseTo(12, 6);
    expect(twice.recipe.weighings.map(({ kind, method }) => [kind, method])).toEqual([
      ['raw', 'direct'],
      ['raw', 'difference'],
    ]);
    // The ingredient itself is untouched: a form that stands open on it is not refused.
    expect(twice.rev(line.id)).toBe(before.rev(line.id));
  });

  test('is taken back and in again; a stale page takes nothing back twice', async () => {
    const { on, line } = await begin();
    await send(weighLine, { ...on, lineId: line.id, gross: '100' });
    const { recipe, rev } = await read(on.episodeId);
    const weighingId = recipe.weighings[0]?.id ?? '';
    const taken = { episodeId: on.episodeId, weighingId, rev: rev(weighingId) };
    await send(removeReading, taken);
    const without = await read(on.episodeId);
    expect(without.dish.whole.protein?.value).toBeCloseTo(8, 6);
    const again = await send(removeReading, taken);
    expect(again.state.problems).toMatchObject([{ code: 'gone' }]);
    const groupId = (await readEpisodeChanges(on.episodeId)).acts[0]?.groupId ?? '';
    await send(takeBack, { episodeId: on.episodeId, groupId });
    expect((await read(on.episodeId)).dish.whole.protein?.value).toBeCloseTo(10, 6);
  });

  test('of the finished dish gives portions in grams and 100 g, the newest reading alone', async () => {
    const { on, line, recipe, dish } = await begin();
    expect(dish.per100g).toBeNull();
    await send(weighLine, { ...on, lineId: line.id, gross: '100' });
    await send(weighDish, { ...on, recipeId: recipe.id, gross: '500', tare: '100' });
    await new Promise((resolve) => setTimeout(resolve, 5));
    await send(weighDish, { ...on, recipeId: recipe.id, gross: '300', tare: '100' });
    const after = await read(on.episodeId);
    // 10 g of protein in 200 g: 5 g in 100 g, 2.5 g in a bowl of 50 g.
    expect(after.dish.per100g?.protein?.value).toBeCloseTo(5, 6);
    expect(after.dish.portions[0]?.figures.protein?.value).toBeCloseTo(2.5, 6);
    // It is no ingredient: the whole stays.
    expect(after.dish.whole.protein?.value).toBeCloseTo(10, 6);
  });

  test.each([
    [{ gross: '' }, 'gross'],
    [{ gross: '0' }, 'gross'],
    [{ gross: '90-110' }, 'gross'],
    [{ gross: '1,250' }, 'gross'],
    [{ gross: '100', tare: '100' }, 'tare'],
    [{ gross: '100', tare: 'a bowl' }, 'tare'],
    [{ gross: '100', method: 'by eye' }, 'method'],
  ])('%o is refused at %s, kept as typed, and nothing is written', async (texts, field) => {
    const { on, line } = await begin();
    const { state } = await send(weighLine, { ...on, lineId: line.id, ...texts });
    expect(state.problems.map(({ path }) => path)).toEqual([field]);
    expect(state.typed).toMatchObject(texts);
    expect((await read(on.episodeId)).recipe.weighings).toEqual([]);
  });

  test('of what was removed meanwhile is refused in words', async () => {
    const { on } = await begin();
    const { state } = await send(weighLine, { ...on, lineId: 'nowhere', gross: '100' });
    expect(state.problems).toMatchObject([{ code: 'gone' }]);
    expect(state.typed.gross).toBe('100');
  });
});

describe('an ingredient in pieces or servings', () => {
  withFreshDatabase();

  test('means the measure that was chosen, until another food is', async () => {
    const before = await begin();
    await send(saveLine, { ...typed(before), measureName: 'large' });
    const large = await read(before.on.episodeId);
    expect(large.line.measureName).toBe('large');
    // Two of 60 g.
    expect(large.dish.whole.protein?.value).toBeCloseTo(12, 6);
    await send(saveLine, { ...typed(large), measureName: 'large', text: 'two fresh eggs' });
    const renamed = await read(before.on.episodeId);
    expect(renamed.line).toMatchObject({ measureName: 'large', text: 'two fresh eggs' });
    await send(saveLine, { ...typed(renamed), measureName: 'large', measuresOf: 'another' });
    expect((await read(before.on.episodeId)).line.measureName).toBeNull();
  });

  test('of a food whose label states no serving is refused at the unit', async () => {
    const before = await begin();
    const { state } = await send(saveLine, { ...typed(before), unit: 'serving' });
    expect(state.problems).toMatchObject([{ path: 'unit', code: 'no-serving' }]);
    expect(state.typed.unit).toBe('serving');
    expect((await read(before.on.episodeId)).line.unit).toBe('piece');
  });

  test('peel and trim, what stays behind and what a take spoils come and go by its form', async () => {
    const before = await begin();
    const boxes = { asBought: 'on', spoiltByTake: 'on', shopNote: ' the nice one ' };
    await send(saveLine, { ...typed(before), ...boxes, leftBehind: '2-4' });
    const set = await read(before.on.episodeId);
    expect(set.line).toMatchObject({
      asBought: true,
      spoiltByTake: true,
      shopNote: 'the nice one',
      leftBehind: { kind: 'mass', lowMg: 2000, valueMg: 3000, highMg: 4000 },
    });
    // 80 g less 3 g.
    expect(set.dish.whole.protein?.value).toBeCloseTo(7.7, 6);
    const weighed = { leftWeighed: 'on', leftWhere: 'tray', leftMade: 'fat' };
    const cooked = { cookMethod: 'boiled', retention: '431' };
    const both = await send(saveLine, { ...typed(set), ...weighed, leftBehind: '3' });
    expect(both.state.problems.map(({ path }) => path)).toEqual(['leftBehind']);
    await send(saveLine, { ...typed(set), ...weighed, ...cooked });
    const left = await read(before.on.episodeId);
    expect(left.line).toMatchObject({
      ...cooked,
      leftBehind: { kind: 'weighed', where: 'tray', made: 'fat' },
    });
    await send(saveLine, typed(left));
    expect((await read(before.on.episodeId)).line).toMatchObject({
      asBought: false,
      spoiltByTake: false,
      leftBehind: { kind: 'none' },
      cookMethod: null,
      retention: null,
    });
  });

  test('is bought again for spare takes as the dish’s form says', async () => {
    const before = await begin({ spareScope: 'spoiltLines' });
    const { segment, on, rev } = before;
    const form = { episodeId: on.episodeId, segmentId: segment.id, rev: rev(segment.id) };
    const texts = { title: 'Eggs', planned: '1:00', batches: '2' };
    const refused = await send(saveSegment, { ...form, ...texts, spareTakes: '11' });
    expect(refused.state.problems.map(({ path }) => path)).toEqual(['spareTakes']);
    await send(saveSegment, {
      ...form,
      ...texts,
      spareTakes: '3',
      spareScope: 'whole',
      pickupReserve: '2',
    });
    const after = await read(on.episodeId);
    expect(after.segment).toMatchObject({
      spareTakes: 3,
      pickupReserve: 2,
      spareScope: 'whole',
      batches: { num: 2, den: 1 },
    });
    // Two of 40 g, seven times: twice made, three spare takes and what two pickups need.
    expect(shoppingList(after.file).items[0]?.needMg).toBe(560_000);
    // How often it is made changes nothing of what was eaten.
    expect(after.figures.day.protein?.value).toBeCloseTo(8, 6);
  });
});

describe('targets', () => {
  withFreshDatabase();

  test('are added, changed, removed and taken back in, each held against its figure', async () => {
    const { on, segment } = await begin();
    const { episodeId } = on;
    const target = { episodeId, nutrient: 'protein', relation: 'atLeast', segmentId: '' };
    expect((await send(addTarget, { ...target, amount: '7.5' })).state.done).not.toBe('');
    await send(addTarget, { ...target, relation: 'atMost', amount: '5', segmentId: segment.id });
    const added = await read(episodeId);
    const [day, dish] = added.file.episode.targets;
    expect(day).toMatchObject({ nutrient: 'protein', amount: 7.5, segmentId: null });
    expect(dish).toMatchObject({ relation: 'atMost', amount: 5, segmentId: segment.id });
    const protein = added.dish.whole.protein;
    if (!day || !dish || !protein) throw new Error('both targets must be there');
    expect(judgeLimit(protein, dish.relation, dish.amount)).toBe('missed');
    const change = { ...target, targetId: day.id, rev: added.rev(day.id) };
    await send(saveTarget, { ...change, amount: '20' });
    const stale = await send(saveTarget, { ...change, amount: '30' });
    expect(stale.state.problems).toMatchObject([{ path: 'amount', code: 'conflict' }]);
    expect(stale.state.typed.amount).toBe('30');
    const changed = await read(episodeId);
    expect(changed.file.episode.targets.map(({ amount }) => amount)).toEqual([20, 5]);
    await send(removeTarget, {
      episodeId,
      targetId: day.id,
      rev: changed.rev(day.id),
    });
    expect((await read(episodeId)).file.episode.targets.map(({ id }) => id)).toEqual([dish.id]);
    const groupId = (await readEpisodeChanges(episodeId)).acts[0]?.groupId ?? '';
    await send(takeBack, { episodeId, groupId });
    expect((await read(episodeId)).file.episode.targets).toHaveLength(2);
  });

  test('of a portion may be about so much, and go and come back with it', async () => {
    const { on, segment } = await begin();
    const { episodeId } = on;
    const portion = segment.recipe?.portions[0];
    if (!portion) throw new Error('the dish has a portion');
    const scope = `${segment.id} ${portion.id}`;
    await send(addTarget, {
      episodeId,
      nutrient: 'protein',
      relation: 'about',
      amount: '4',
      segmentId: scope,
    });
    const added = await read(episodeId);
    const target = { relation: 'about', segmentId: segment.id, portionId: portion.id };
    expect(added.file.episode.targets).toMatchObject([target]);
    await send(removePortion, { episodeId, portionId: portion.id, rev: added.rev(portion.id) });
    expect((await read(episodeId)).file.episode.targets).toEqual([]);
    const groupId = (await readEpisodeChanges(episodeId)).acts[0]?.groupId ?? '';
    await send(takeBack, { episodeId, groupId });
    expect((await read(episodeId)).file.episode.targets).toMatchObject([target]);
  });

  test.each([
    [{ amount: '' }, 'amount'],
    [{ amount: 'much' }, 'amount'],
    [{ amount: '-3' }, 'amount'],
    [{ nutrient: 'joy' }, 'nutrient'],
    [{ relation: 'nearly' }, 'relation'],
  ])('%o is refused at %s and kept as typed', async (texts, field) => {
    const { on } = await begin();
    const good = { nutrient: 'protein', relation: 'atLeast', amount: '7', segmentId: '' };
    const { state } = await send(addTarget, { ...good, ...texts, episodeId: on.episodeId });
    expect(new Set(state.problems.map(({ path }) => path))).toEqual(new Set([field]));
    expect(state.typed).toMatchObject(texts);
    expect((await read(on.episodeId)).file.episode.targets).toEqual([]);
  });
});
