import { describe, expect, test, vi } from 'vitest';
import { dishesOf } from '#lib/episode/context';
import { importEpisodeFile } from '#lib/store/import-file';
import type * as ReadEpisode from '#lib/store/read-episode';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readRevisedEpisode } from '#lib/store/read-revised-episode';
import { countAllAsRanges, countAsRange } from '../../app/episodes/[id]/bound-actions';
import { confirmAll, sayGrams } from '../../app/episodes/[id]/match-actions';
import { withFreshDatabase } from '../store/database';
import { aDish, aFile, aFood, aLine, aRecipe } from '../support/build';
import { remarkedEpisode } from '../support/remarked-episode';
import { Redirected, send } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({
  redirect: (href: string) => {
    throw new Redirected(href);
  },
}));

/** What somebody else does as soon as the first part of an episode was read. */
const elsewhere = vi.hoisted(() => ({ act: null as (() => Promise<unknown>) | null }));

vi.mock('#lib/store/read-episode', async (original) => {
  const real = await original<typeof ReadEpisode>();
  const andThen =
    <A extends unknown[], R>(read: (...asked: A) => Promise<R>) =>
    async (...asked: A): Promise<R> => {
      const found = await read(...asked);
      const { act } = elsewhere;
      elsewhere.act = null;
      await act?.();
      return found;
    };
  return {
    ...real,
    readEpisodeFile: andThen(real.readEpisodeFile),
    readRevisions: andThen(real.readRevisions),
  };
});

const NOW = '2026-12-10T08:00:00.000Z';

async function dishOf(episodeId: string) {
  const file = await readEpisodeFile(episodeId, NOW);
  const dish = file && dishesOf(file.episode.segments)[0];
  if (!dish) throw new Error('no dish');
  return dish;
}

async function imported(file: Parameters<typeof importEpisodeFile>[0]): Promise<string> {
  const done = await importEpisodeFile(file, new Date(NOW));
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  return done.value.episodeId;
}

describe('what is changed elsewhere while an act reads', () => {
  withFreshDatabase();

  test('is a conflict of that act and stays: the same of the values of a dish', async () => {
    const episodeId = await imported(remarkedEpisode());
    const { recipe } = await dishOf(episodeId);
    const line = recipe.lines.find(({ text }) => text === '0.6 g paprika');
    if (!line) throw new Error('no line');
    elsewhere.act = () =>
      send(countAsRange, {
        ...{ episodeId, lineId: line.id, rev: 1 },
        ...{ nutrient: 'sugars', maxPer100: '50' },
      });
    const { state } = await send(countAllAsRanges, { episodeId, recipeId: recipe.id });
    expect(state.problems).toMatchObject([{ code: 'conflict' }]);
    const after = (await dishOf(episodeId)).recipe.lines.find(({ id }) => id === line.id);
    expect(after?.bounded).toEqual([{ nutrient: 'sugars', maxPer100: 50 }]);
  });

  test('is a conflict where all foods of a dish are confirmed at once', async () => {
    const bean = aFood('bean', { energyKcal: '101' }, { name: 'Beans' });
    const lines = [aLine('a', 'bean', { text: 'a handful of beans', match: 'provisional' })];
    const episodeId = await imported(aFile([aDish('s', aRecipe('r', lines))], [bean]));
    const { recipe } = await dishOf(episodeId);
    elsewhere.act = () =>
      send(sayGrams, { episodeId, lineId: recipe.lines[0]?.id ?? '', rev: 1, grams: '30' });
    const { state } = await send(confirmAll, { episodeId, recipeId: recipe.id });
    expect(state.problems).toMatchObject([{ code: 'conflict' }]);
    expect((await dishOf(episodeId)).recipe.lines).toMatchObject([
      { match: 'provisional', planned: { valueMg: 30_000 } },
    ]);
  });

  test('has a revision that no longer stands, so that no act of what was read overwrites it', async () => {
    const episodeId = await imported(remarkedEpisode());
    const [line] = (await dishOf(episodeId)).recipe.lines;
    if (!line) throw new Error('no line');
    elsewhere.act = () => send(sayGrams, { episodeId, lineId: line.id, rev: 1, grams: '41' });
    const read = await readRevisedEpisode(episodeId, NOW);
    const now = await readRevisedEpisode(episodeId, NOW);
    expect([read, now].map((each) => each?.revs[line.id])).toEqual([1, 2]);
  });
});
