import { beforeAll, describe, expect, test, vi } from 'vitest';
import { v7 as uuid } from 'uuid';
import { episodeFigures } from '#lib/figures/episode-figures';
import { description } from '#lib/publish/description';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { writeFoods } from './match-support';
import { beginShort } from '../../app/actions';
import {
  confirmAll,
  confirmMatch,
  pasteLines,
  sayGrams,
  takeEither,
  takeFood,
  takeMeasure,
} from '../../app/episodes/[id]/match-actions';
import { withFreshDatabase } from '../store/database';
import { Redirected, send } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({
  redirect: (href: string) => {
    throw new Redirected(href);
  },
}));

withFreshDatabase();
let foods: Awaited<ReturnType<typeof writeFoods>>;
beforeAll(async () => {
  foods = await writeFoods();
});

/** Begins by the short way and reads what is there. */
async function begin(list: string, more: Record<string, string> = {}) {
  const { href, state } = await send(beginShort, {
    list,
    portions: '2',
    title: uuid(),
    ...more,
  });
  const episodeId = /^\/episodes\/([^/]+)\/numbers$/.exec(href)?.[1];
  if (episodeId === undefined) throw new Error(JSON.stringify(state.problems));
  return read(episodeId);
}

async function read(episodeId: string) {
  const file = await readEpisodeFile(episodeId, '2026-12-10T08:00:00.000Z');
  const recipe = file?.episode.segments[0]?.recipe;
  if (!file || !recipe) throw new Error('the dish must be there');
  const [dish] = episodeFigures(file).dishes;
  if (!dish) throw new Error('the dish must have figures');
  return { episodeId, file, recipe, dish, revs: await readRevisions(episodeId) };
}

type Read = Awaited<ReturnType<typeof read>>;

function line({ recipe, revs, episodeId }: Read, at = 0) {
  const found = recipe.lines[at];
  if (!found) throw new Error(`no ingredient ${at}`);
  return { line: found, ids: { episodeId, lineId: found.id, rev: String(revs[found.id]) } };
}

describe('the short way', () => {
  test('gives numbers that count on the page and stay out of the text until confirmed', async () => {
    const begun = await begin('200 g oat groats\n100 g curd cheese');
    expect(begun.recipe.lines.map(({ match }) => match)).toEqual(['provisional', 'provisional']);
    expect(begun.dish.portions[0]?.figures.energyKcal?.value).toBeCloseTo(380 + 50, 6);
    expect(description(begun.file).text).toContain('not confirmed yet');
    const { episodeId, recipe } = begun;
    await send(confirmAll, { episodeId, recipeId: recipe.id });
    const after = await read(episodeId);
    expect(after.recipe.lines.map(({ match }) => match)).toEqual(['confirmed', 'confirmed']);
    expect(description(after.file).text).toContain('430 kcal');
  });

  test('refuses an empty list and a portion that is none, and keeps what was typed', async () => {
    const { state: empty } = await send(beginShort, { list: ' \n ', portions: '2' });
    expect(empty.problems.map(({ path }) => path)).toEqual(['list']);
    const { state: none } = await send(beginShort, { list: '200 g oat groats', portions: '0' });
    expect(none.problems.map(({ path }) => path)).toEqual(['portions']);
    expect(none.typed.list).toBe('200 g oat groats');
  });

  test('takes a dish of 400 ingredients, and refuses 401 whole with their number', async () => {
    const full = await begin(Array.from({ length: 400 }, (_, at) => `${at + 1} g salt`).join('\n'));
    expect(full.recipe.lines).toHaveLength(400);
    const many = Array.from({ length: 401 }, (_, at) => `${at + 1} g salt`).join('\n');
    const { state: refused } = await send(beginShort, { list: many, portions: '1' });
    expect(refused.problems[0]?.message).toMatch(/400/);
    expect(refused.typed.list).toBe(many);
  });
});

describe('a pasted list', () => {
  test('is added behind what is there, in its order, and undone as one', async () => {
    const begun = await begin('200 g oat groats');
    const { episodeId, recipe } = begun;
    await send(pasteLines, {
      episodeId,
      recipeId: recipe.id,
      list: '<ul><li>2 tbsp honey drops</li><li>salt to taste</li></ul>',
    });
    const after = await read(episodeId);
    expect(after.recipe.lines.map(({ text }) => text)).toEqual([
      '200 g oat groats',
      '2 tbsp honey drops',
      'salt to taste',
    ]);
    expect(after.recipe.lines[2]?.quantity).toBeNull();
  });

  test('with nothing in it that could be food is refused', async () => {
    const { episodeId, recipe } = await begin('200 g oat groats');
    const { state: refused } = await send(pasteLines, {
      episodeId,
      recipeId: recipe.id,
      list: '---\n\n***',
    });
    expect(refused.problems.map(({ path }) => path)).toEqual(['list']);
  });

  test('for a dish that is gone says so', async () => {
    const { episodeId } = await begin('200 g oat groats');
    const { state: refused } = await send(pasteLines, {
      episodeId,
      recipeId: uuid(),
      list: '1 g salt',
    });
    expect(refused.problems[0]?.code).toBe('gone');
  });
});

describe('a match', () => {
  test('that was confirmed is remembered for the same words, whatever the amount', async () => {
    const begun = await begin('70 g breakfast curd');
    const first = line(begun);
    await send(takeFood, { ...first.ids, foodId: foods.curd });
    const again = line(await begin('1 tbsp Breakfast CURD'));
    expect(again.line).toMatchObject({ foodId: foods.curd, match: 'confirmed' });
    // A later word counts: the last that was confirmed.
    const other = line(await begin('9 g breakfast curd'));
    await send(takeFood, { ...other.ids, foodId: foods.groats });
    expect(line(await begin('5 g breakfast curd')).line.foodId).toBe(foods.groats);
  });

  test('is confirmed alone; a page that is out of date is refused and changes nothing', async () => {
    const begun = await begin('200 g groats of oat\n100 g cheese curd');
    const first = line(begun);
    await send(confirmMatch, first.ids);
    const after = await read(begun.episodeId);
    expect(after.recipe.lines.map(({ match }) => match)).toEqual(['confirmed', 'provisional']);
    const { state: refused } = await send(takeFood, { ...first.ids, foodId: foods.curd });
    expect(refused.problems[0]?.message).toMatch(/changed elsewhere/);
  });

  test('may be either of two foods, never twice the same', async () => {
    const begun = line(await begin('100 g curd cheese'));
    const { state: same } = await send(takeEither, {
      ...begun.ids,
      orFoodId: begun.line.foodId ?? '',
    });
    expect(same.problems.map(({ path }) => path)).toEqual(['orFoodId']);
    await send(takeEither, { ...begun.ids, orFoodId: foods.groats });
    const after = await read(begun.ids.episodeId);
    const { energyKcal } = after.dish.whole;
    expect(energyKcal?.low ?? NaN).toBeLessThan(100.5);
    expect(energyKcal?.high ?? NaN).toBeGreaterThan(379);
    expect(energyKcal?.provisional).toEqual([]);
  });
});

describe('an ingredient without grams', () => {
  test('is open alone, and settled by grams or by a range', async () => {
    const begun = await begin('a handful of curd cheese\n200 g oat groats');
    const { ids } = line(begun);
    expect(begun.dish.lines.map(({ gap }) => gap)).toEqual(['noGrams', null]);
    const { state: wrong } = await send(sayGrams, { ...ids, grams: 'some' });
    expect(wrong.problems.map(({ path }) => path)).toEqual(['grams']);
    expect(wrong.typed.grams).toBe('some');
    await send(sayGrams, { ...ids, grams: '15-25' });
    const after = await read(begun.episodeId);
    const { low = NaN, high = NaN } = after.dish.lines[0]?.eatenMg ?? {};
    expect(low).toBeCloseTo(15_000, 6);
    expect(high).toBeCloseTo(25_000, 6);
  });

  test('is settled by one of its food’s own measures where the words left it open', async () => {
    const begun = await begin('2 farm eggs');
    const { ids } = line(begun);
    expect(begun.dish.lines[0]?.gap).toBe('noGrams');
    await send(takeMeasure, { ...ids, measureName: 'large' });
    const after = await read(begun.episodeId);
    expect(after.dish.lines[0]?.eatenMg?.value).toBe(120_000);
  });
});
