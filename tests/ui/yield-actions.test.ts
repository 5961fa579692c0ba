import { describe, expect, test, vi } from 'vitest';
import type { YieldObservation } from '#lib/foods/food';
import { episodeFigures } from '#lib/figures/episode-figures';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeChanges } from '#lib/store/read-episode-changes';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readStoredFood } from '#lib/store/read-foods';
import { takeBack } from '../../app/episodes/[id]/actions';
import { weighLine } from '../../app/episodes/[id]/weigh-actions';
import { keepYield, sayYield, takeYield } from '../../app/episodes/[id]/yield-actions';
import { saveRefuse } from '../../app/pantry/refuse-actions';
import { addYield, removeYield } from '../../app/pantry/yield-actions';
import { withFreshDatabase } from '../store/database';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';
import { Redirected, send } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({
  redirect: (href: string) => {
    throw new Redirected(href);
  },
}));

const PUBLISHED: YieldObservation = {
  id: 'y',
  method: 'patty',
  rawMg: 113_400,
  cookedMg: 82_000,
  source: 'USDA SR28, Weight file',
  own: null,
};

/** 500 g of mince weighed raw; its food is an own one in the state given, beside a published one like it. */
async function begin(state: 'raw' | 'cooked' = 'raw') {
  const mince = aFood(
    'mince',
    { protein: '20.00' },
    { kind: 'label', section: 'meatAndFish', witnessId: 'turkey' },
    { state, source: 'package label' },
  );
  const turkey = aFood(
    'turkey',
    { protein: '20.00' },
    { kind: 'label', section: 'meatAndFish', yields: [PUBLISHED] },
    { state: 'raw', source: 'package label' },
  );
  const line = grams('mince', 'mince', 500, { state: 'raw' });
  const file = aFile([aDish('s', aRecipe('r', [line]))], [mince, turkey]);
  const brought = await importEpisodeFile(file, new Date());
  if (!brought.ok) throw new Error(JSON.stringify(brought.problems));
  return read(brought.value.episodeId);
}

async function read(episodeId: string) {
  const file = await readEpisodeFile(episodeId, '2026-12-10T08:00:00.000Z');
  const line = file?.episode.segments[0]?.recipe?.lines[0];
  const food = file?.foods.find(({ id }) => id === line?.foodId);
  if (!file || !line || !food) throw new Error('the dish must be there');
  const figures = episodeFigures(file).dishes[0]?.lines[0];
  const witness = file.foods.find(({ id }) => id === food.witnessId);
  return {
    ids: { episodeId, lineId: line.id },
    scaleId: file.kitchen.scales[0]?.id ?? '',
    line,
    food,
    witness,
    gap: figures?.gap ?? null,
    eatenG: figures?.eatenMg ? figures.eatenMg.value / 1000 : null,
    again: () => read(episodeId),
    undo: async () => {
      const groupId = (await readEpisodeChanges(episodeId)).acts[0]?.groupId ?? '';
      await send(takeBack, { episodeId, groupId });
      return read(episodeId);
    },
  };
}

describe('a cooked weight', () => {
  withFreshDatabase();

  test('is kept by one press once both are read: half a step of the scale, this ingredient, its method', async () => {
    const before = await begin();
    const early = await send(keepYield, { ...before.ids, method: 'pan' });
    expect(early.state.problems).toMatchObject([{ code: 'not-weighed' }]);
    const on = { ...before.ids, scaleId: before.scaleId, method: 'direct' };
    await send(weighLine, { ...on, gross: '500' });
    await send(weighLine, { ...on, of: 'cooked', gross: '360' });
    const noMethod = await send(keepYield, { ...before.ids, method: '' });
    expect(noMethod.state.problems).toMatchObject([{ path: 'method' }]);
    await send(keepYield, { ...before.ids, method: 'pan' });
    const { food, line, undo } = await before.again();
    expect(food.yields).toMatchObject([
      {
        method: 'pan',
        rawMg: 500_000,
        cookedMg: 360_000,
        source: 'my own weights',
        own: { halfMg: 500, lineId: line.id },
      },
    ]);
    // Kept again after another reading, it is one cook still.
    await send(weighLine, { ...on, of: 'cooked', gross: '10' });
    await send(keepYield, { ...before.ids, method: 'pan' });
    const twice = (await before.again()).food.yields;
    expect(twice).toMatchObject([{ cookedMg: 370_000 }]);
    expect((await undo()).food.yields).toMatchObject([{ cookedMg: 360_000 }]);
  });

  test('that is odd is asked about, never silently taken, and taken when confirmed', async () => {
    const before = await begin();
    const weights = { ...before.ids, raw: '500', cooked: '36', method: 'pan' };
    const asked = await send(sayYield, weights);
    expect(asked.state.problems).toMatchObject([{ path: 'sure', code: 'odd-yield' }]);
    expect(asked.state.problems[0]?.message).toMatch(/Is that right\?$/);
    expect(asked.state.typed).toMatchObject({ raw: '500', cooked: '36' });
    expect((await before.again()).food.yields).toEqual([]);
    await send(sayYield, { ...weights, sure: 'on' });
    expect((await before.again()).food.yields).toMatchObject([{ cookedMg: 36_000 }]);
  });

  test('settles raw against cooked: typed, or taken from a food like it; undone, it is open again', async () => {
    const before = await begin('cooked');
    expect(before.gap).toBe('states');
    await send(sayYield, { ...before.ids, raw: '500', cooked: '350', method: 'oven' });
    const typed = await before.again();
    expect([typed.gap, typed.eatenG]).toEqual([null, 350]);
    const open = await typed.undo();
    expect(open.gap).toBe('states');
    const from = { fromFoodId: open.witness?.id ?? '', yieldId: open.witness?.yields[0]?.id ?? '' };
    await send(takeYield, { ...open.ids, ...from });
    const taken = await before.again();
    expect(taken.eatenG).toBeCloseTo((500 * 82) / 113.4, 6);
    expect(taken.food.yields).toMatchObject([
      { own: null, source: 'USDA SR28, Weight file, of turkey' },
    ]);
  });
});

describe('a food’s own page', () => {
  withFreshDatabase();

  test('takes a cooked weight of a day, asks about an odd one, and lets it be taken out', async () => {
    const { food } = await begin();
    const foodId = food.id;
    const weights = { foodId, raw: '400', cooked: '280', method: 'oven', on: '2026-03-01' };
    for (const [texts, path] of [
      [{ raw: '0' }, 'raw'],
      [{ cooked: '-3' }, 'cooked'],
      [{ cooked: '20–30' }, 'cooked'],
      [{ method: ' ' }, 'method'],
      [{ on: '2999-01-01' }, 'on'],
      [{ cooked: '4000' }, 'sure'],
    ] as const) {
      const { state } = await send(addYield, { ...weights, ...texts });
      expect(state.problems.map((problem) => problem.path)).toEqual([path]);
    }
    await send(addYield, weights);
    const stored = await readStoredFood(foodId);
    const [kept] = stored?.food.yields ?? [];
    expect(kept).toMatchObject({ rawMg: 400_000, own: { lineId: null } });
    const partId = kept?.id ?? '';
    expect(stored?.yieldFacts[partId]).toEqual({ on: '2026-03-01', mine: true });
    await send(removeYield, { foodId, partId, rev: stored?.revs[partId] ?? 0 });
    expect((await readStoredFood(foodId))?.food.yields).toEqual([]);
  });

  test('says peel and trim as a further reading of the same values; a stale page writes nothing', async () => {
    const { food } = await begin();
    const sent = { foodId: food.id, versionId: food.version.id };
    const bad = await send(saveRefuse, { ...sent, refuseText: 'bone' });
    expect(bad.state.problems.map(({ path }) => path)).toEqual(['refusePercent']);
    const much = await send(saveRefuse, { ...sent, refusePercent: '100' });
    expect(much.state.problems.map(({ path }) => path)).toEqual(['refusePercent']);
    const texts = { refusePercent: '20', refuseText: 'bone', refuseInValues: 'on' };
    await send(saveRefuse, { ...sent, ...texts });
    const stored = await readStoredFood(food.id);
    expect(stored?.food.version).toMatchObject({
      seq: 2,
      values: food.version.values,
      refuse: { percent: 20, text: 'bone', inValues: true },
    });
    const late = await send(saveRefuse, { ...sent, refusePercent: '5' });
    expect(late.state.problems).toMatchObject([{ code: 'conflict' }]);
  });
});
