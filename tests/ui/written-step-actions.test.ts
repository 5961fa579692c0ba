import { describe, expect, test, vi } from 'vitest';
import { description } from '#lib/publish/description';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { readEpisodeChanges } from '#lib/store/read-episode-changes';
import { takeBack } from '../../app/episodes/[id]/actions';
import { writeCaloriesTo } from '../../app/episodes/[id]/written-step-actions';
import { withFreshDatabase } from '../store/database';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';
import { Redirected, send } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({
  redirect: (href: string) => {
    throw new Redirected(href);
  },
}));

/** One dish of 486 kcal. */
async function begin() {
  const food = aFood('food', { energyKcal: '486', protein: '9.91', fat: '1.16' });
  const dish = aDish('d', aRecipe('r', [grams('100 g', 'food', 100)]), { title: 'Pot' });
  const brought = await importEpisodeFile(aFile([dish], [food]), new Date());
  if (!brought.ok) throw new Error(JSON.stringify(brought.problems));
  return read(brought.value.episodeId);
}

async function read(episodeId: string) {
  const file = await readEpisodeFile(episodeId, '2026-12-10T08:00:00.000Z');
  if (!file) throw new Error('the episode must be there');
  const revs = await readRevisions(episodeId);
  return {
    ids: { episodeId, rev: revs[episodeId] ?? 0 },
    step: file.episode.energyStep,
    text: description(file).text,
    again: () => read(episodeId),
  };
}

describe('what calories are written to', () => {
  withFreshDatabase();

  test('is 1, 5 or 10 kcal, and the description follows; undone, it is as it was', async () => {
    const { ids, step, text, again } = await begin();
    expect(step).toBe(1);
    expect(text).toContain('486');
    await send(writeCaloriesTo, { ...ids, energyStep: '5' });
    expect((await again()).text).toMatch(/\b485\b/);
    expect((await again()).text).not.toContain('486');
    await send(writeCaloriesTo, { ...(await again()).ids, energyStep: 10 });
    expect((await again()).text).toMatch(/\b490\b/);
    const groupId = (await readEpisodeChanges(ids.episodeId)).acts[0]?.groupId ?? '';
    await send(takeBack, { episodeId: ids.episodeId, groupId });
    expect((await again()).step).toBe(5);
  });

  test.each(['', '0', '2', '-5', '5.5', '50', 'ten', 'NaN', '1e1000'])(
    'is not "%s"',
    async (energyStep) => {
      const { ids, again } = await begin();
      const { state } = await send(writeCaloriesTo, { ...ids, energyStep });
      expect(state.problems).toMatchObject([
        { path: 'energyStep', message: 'Choose 1, 5 or 10 kcal.' },
      ]);
      expect((await again()).step).toBe(1);
    },
  );

  test('is not changed by a page that is out of date, nor where there is no episode', async () => {
    const { ids, again } = await begin();
    await send(writeCaloriesTo, { ...ids, energyStep: 5 });
    const stale = await send(writeCaloriesTo, { ...ids, energyStep: 10 });
    expect(stale.state.problems).not.toEqual([]);
    expect((await again()).step).toBe(5);
    const sent = { ...ids, episodeId: crypto.randomUUID(), energyStep: 10 };
    expect((await send(writeCaloriesTo, sent)).state.problems).not.toEqual([]);
  });
});
