import { describe, expect, test, vi } from 'vitest';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeChanges } from '#lib/store/read-episode-changes';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { takeBack } from '../../app/episodes/[id]/actions';
import { removeReading, weighDish, weighLine } from '../../app/episodes/[id]/weigh-actions';
import { withFreshDatabase } from '../store/database';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';
import { Redirected, send } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({
  redirect: (href: string) => {
    throw new Redirected(href);
  },
}));

/** A dish of oil, sauce and meat of 20, 60 and 500 g planned, in the store, each found by its words. */
async function begin() {
  const foods = ['oil', 'sauce', 'meat'].map((id) =>
    aFood(id, { protein: '10.0', fat: '50.0' }, {}, { state: 'raw' }),
  );
  const lines = [
    grams('oil', 'oil', 20, { state: 'raw' }),
    grams('sauce', 'sauce', 60, { state: 'raw' }),
    grams('meat', 'meat', 500, { state: 'raw' }),
  ];
  const file = aFile([aDish('s', aRecipe('r', lines))], foods);
  const brought = await importEpisodeFile(file, new Date());
  if (!brought.ok) throw new Error(JSON.stringify(brought.problems));
  return read(brought.value.episodeId);
}

async function read(episodeId: string) {
  const file = await readEpisodeFile(episodeId, '2026-12-10T08:00:00.000Z');
  const recipe = file?.episode.segments[0]?.recipe;
  if (!file || !recipe) throw new Error('the dish must be there');
  const [dish] = episodeFigures(file).dishes;
  const revs = await readRevisions(episodeId);
  const line = (text: string): RecipeLine => {
    const found = recipe.lines.find((each) => each.text === text);
    if (!found) throw new Error(`no ingredient ${text}`);
    return found;
  };
  return {
    recipe,
    line,
    eaten: (text: string) => {
      const eatenMg = dish?.lines.find((each) => each.text === text)?.eatenMg;
      return eatenMg ? Math.round(eatenMg.value) / 1000 : null;
    },
    width: (text: string) => {
      const eatenMg = dish?.lines.find((each) => each.text === text)?.eatenMg;
      return eatenMg ? Math.round(eatenMg.high - eatenMg.low) / 1000 : null;
    },
    fat: dish?.whole.fat,
    on: (text: string, method = 'direct') => ({
      episodeId,
      lineId: line(text).id,
      scaleId: file.kitchen.scales[0]?.id ?? '',
      method,
    }),
    rev: (id: string) => revs[id] ?? 0,
    again: () => read(episodeId),
    undo: async () => {
      const groupId = (await readEpisodeChanges(episodeId)).acts[0]?.groupId ?? '';
      await send(takeBack, { episodeId, groupId });
      return read(episodeId);
    },
    kinds: recipe.weighings.map(({ kind, method }) => `${kind} ${method}`),
  };
}

describe('before and after', () => {
  withFreshDatabase();

  test('a jar is read, waits, is read again, and the difference counts; each can be undone', async () => {
    const before = await begin();
    const on = before.on('oil', 'difference');
    await send(weighLine, { ...on, gross: '410' });
    const waits = await before.again();
    expect(waits.kinds).toEqual(['container direct']);
    // One reading says nothing yet: the planned grams count on.
    expect(waits.eaten('oil')).toBe(20);
    const waitingId = waits.recipe.weighings[0]?.id ?? '';
    const more = await send(weighLine, { ...on, gross: '500', waitingId });
    expect(more.state.problems).toMatchObject([{ path: 'gross', code: 'nothing-weighed' }]);
    await send(weighLine, { ...on, gross: '395.5', waitingId });
    const done = await before.again();
    expect(done.kinds).toEqual(['raw difference']);
    expect(done.recipe.weighings[0]).toMatchObject({ grossMg: 410_000, tareMg: 395_500 });
    expect(done.eaten('oil')).toBe(14.5);
    // Two readings of a scale of 1 g: a whole step each way.
    expect(done.width('oil')).toBeCloseTo(2, 6);
    expect((await done.undo()).kinds).toEqual(['container direct']);
  });

  test('in one go is the same reading', async () => {
    const before = await begin();
    await send(weighLine, { ...before.on('oil', 'difference'), gross: '410', after: '395.5' });
    const done = await before.again();
    expect(done.kinds).toEqual(['raw difference']);
    expect(done.eaten('oil')).toBe(14.5);
  });

  test('a reading that was answered elsewhere is not answered twice', async () => {
    const before = await begin();
    const on = before.on('oil', 'difference');
    await send(weighLine, { ...on, gross: '410' });
    const waitingId = (await before.again()).recipe.weighings[0]?.id ?? '';
    await send(weighLine, { ...on, gross: '400', waitingId });
    const late = await send(weighLine, { ...on, gross: '390', waitingId });
    expect(late.state.problems).toMatchObject([{ code: 'conflict' }]);
    expect(late.state.typed.gross).toBe('390');
    expect((await before.again()).eaten('oil')).toBe(10);
  });

  test('a finished dish is full less its tray, which was read before it was filled', async () => {
    const before = await begin();
    const recipeId = before.recipe.id;
    const { lineId: _l, ...on } = before.on('oil', 'difference');
    await send(weighDish, { ...on, recipeId, gross: '905' });
    const waiting = (await before.again()).recipe.weighings[0];
    expect(waiting).toMatchObject({ kind: 'container', shares: [] });
    await send(weighDish, { ...on, recipeId, gross: '1400', waitingId: waiting?.id ?? '' });
    const { recipe } = await before.again();
    expect(recipe.weighings).toMatchObject([
      { kind: 'finished', grossMg: 1_400_000, tareMg: 905_000, method: 'difference' },
    ]);
  });
});

describe('a running total', () => {
  withFreshDatabase();

  test('goes on from what is on the scale; what one gains by a misread total the next loses', async () => {
    const before = await begin();
    await send(weighLine, { ...before.on('oil'), gross: '332', tare: '312' });
    const first = (await before.again()).recipe.weighings[0];
    const onScaleId = first?.id ?? '';
    const on = { ...before.on('sauce', 'total'), onScaleId };
    const less = await send(weighLine, { ...on, gross: '300' });
    expect(less.state.problems).toMatchObject([{ path: 'gross' }]);
    expect(less.state.problems[0]?.message).toContain('332 g were on the scale before');
    const { href } = await send(weighLine, { ...on, gross: '390', next: before.line('meat').id });
    // The next ingredient's scale stands open at once.
    expect(href).toContain(`edit=weigh-${before.line('meat').id}`);
    const then = await before.again();
    expect(then.recipe.weighings[1]).toMatchObject({
      grossMg: 390_000,
      tareMg: 332_000,
      afterId: onScaleId,
      method: 'direct',
    });
    expect([then.eaten('oil'), then.eaten('sauce')]).toEqual([20, 58]);
    // Each alone has both errors of a running total; oil has one, the first of it.
    expect([then.width('oil'), then.width('sauce')]).toEqual([1, 2]);
    const stale = await send(weighLine, { ...before.on('meat', 'total'), gross: '800', onScaleId });
    expect(stale.state.problems).toMatchObject([{ code: 'conflict' }]);
  });

  test('takes the container used last off by one press, or another, not both', async () => {
    const before = await begin();
    await send(weighLine, { ...before.on('oil'), gross: '332', tare: '312' });
    const on = before.on('sauce');
    const both = await send(weighLine, { ...on, gross: '372', tare: '300', tareAgain: '312000' });
    expect(both.state.problems).toMatchObject([{ path: 'tare' }]);
    await send(weighLine, { ...on, gross: '372', tareAgain: '312000' });
    expect((await before.again()).eaten('sauce')).toBe(60);
  });
});

describe('what is left', () => {
  withFreshDatabase();

  test('in one pan is shared by two in the proportion that is given, and counts at once', async () => {
    const before = await begin();
    const { id } = before.line('sauce');
    const left = { ...before.on('oil'), of: 'left', gross: '408', tare: '400', leftWhere: 'pan' };
    const unread = await send(weighLine, {
      ...left,
      [`with-${id}`]: 'on',
      [`parts-${before.line('oil').id}`]: '20',
      [`parts-${id}`]: 'some',
    });
    expect(unread.state.problems.map(({ path }) => path)).toEqual([`parts-${id}`]);
    await send(weighLine, {
      ...left,
      [`with-${id}`]: 'on',
      [`parts-${before.line('oil').id}`]: '20',
      [`parts-${id}`]: '60',
    });
    const done = await before.again();
    expect(done.line('oil').leftBehind).toEqual({ kind: 'weighed', where: 'pan', made: 'alike' });
    expect(done.line('sauce').leftBehind).toEqual(done.line('oil').leftBehind);
    expect(done.line('meat').leftBehind).toEqual({ kind: 'none' });
    expect([done.eaten('oil'), done.eaten('sauce'), done.eaten('meat')]).toEqual([18, 54, 500]);
    // 20 + 60 + 500 less 8 g, half of it fat; one reading of it is one error.
    expect(done.fat?.value).toBeCloseTo(286, 6);
    const undone = await done.undo();
    expect(undone.kinds).toEqual([]);
    expect(undone.line('oil').leftBehind).toEqual({ kind: 'none' });
    expect(undone.eaten('sauce')).toBe(60);
  });

  test('as fat that ran out is less fat and not less of the meat', async () => {
    const before = await begin();
    const of = { of: 'left', leftMade: 'fat', leftWhere: 'tray' };
    await send(weighLine, { ...before.on('meat'), ...of, gross: '30' });
    const done = await before.again();
    expect(done.eaten('meat')).toBe(500);
    expect(done.fat?.value).toBeCloseTo(290 - 30, 6);
    const [weighing] = done.recipe.weighings;
    const weighingId = weighing?.id ?? '';
    const { episodeId } = before.on('meat');
    await send(removeReading, { episodeId, weighingId, rev: done.rev(weighingId) });
    // Its form still says that it is weighed: less than all of it was eaten, nobody knows how much.
    expect((await before.again()).fat?.low).toBeNull();
  });

  test('of an ingredient of another dish is refused, and writes nothing', async () => {
    const before = await begin();
    const left = { ...before.on('oil'), of: 'left', gross: '8' };
    const own = { [`parts-${before.line('oil').id}`]: '1' };
    const { state } = await send(weighLine, {
      ...left,
      ...own,
      'with-elsewhere': 'on',
      'parts-elsewhere': '1',
    });
    expect(state.problems).toMatchObject([{ code: 'gone' }]);
    expect((await before.again()).kinds).toEqual([]);
  });
});
