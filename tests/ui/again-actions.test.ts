import { expect, test, vi } from 'vitest';
import { database } from '#lib/store/client';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeFile } from '#lib/store/read-episode';
import { addAgain, sameLabel } from '../../app/episodes/[id]/again-actions';
import { beginAgain } from '../../app/again-actions';
import { AT, withFreshDatabase } from '../store/database';
import { FILE } from '../store/fixture';
import { Redirected, send } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({
  redirect: (href: string) => {
    throw new Redirected(href);
  },
}));

withFreshDatabase();

async function begin() {
  const brought = await importEpisodeFile(FILE, AT);
  if (!brought.ok) throw new Error(JSON.stringify(brought.problems));
  const { episodeId } = brought.value;
  const file = await readEpisodeFile(episodeId, AT.toISOString());
  const segmentId = file?.episode.segments[1]?.id ?? '';
  const foodOf = (name: string) => file?.foods.find((food) => food.name === name)?.id ?? '';
  return { episodeId, segmentId, foodOf };
}

test('one press leads to the copy; what is gone or missing is said, and nothing is made', async () => {
  const { episodeId, segmentId } = await begin();
  const { href } = await send(addAgain, { episodeId, segmentId, amounts: 'weighed' });
  expect(href).toMatch(new RegExp(`^/episodes/${episodeId}\\?copied=(.+)#row-\\1$`));
  const made = await database().segment.count();
  const wrong = [
    { episodeId, segmentId: '', amounts: 'weighed' },
    { episodeId, segmentId: '<b>', amounts: 'weighed' },
    { episodeId: 'none', segmentId, amounts: 'planned' },
    { episodeId, segmentId, amounts: 'guessed' },
  ];
  for (const texts of wrong) {
    const { state } = await send(addAgain, texts);
    expect(state.problems.length, JSON.stringify(texts)).toBeGreaterThan(0);
  }
  expect(await database().segment.count()).toBe(made);
  const again = await send(beginAgain, { episodeId });
  expect(again.href).toMatch(/^\/episodes\/(.+)\?edit=\1&copied=\1$/);
  expect((await send(beginAgain, { episodeId: 'none' })).state.problems[0]?.code).toBe('gone');
});

test('the same label is one reading however often it is pressed, and of own foods alone', async () => {
  const { episodeId, foodOf } = await begin();
  const cheese = foodOf('Quay cheese, grated');
  const readings = () => database().foodVersion.count({ where: { foodId: cheese } });
  const before = await readings();
  await send(sameLabel, { episodeId, foodIds: `${cheese} ${cheese}` });
  await send(sameLabel, { episodeId, foodIds: cheese });
  expect(await readings()).toBe(before + 1);
  for (const foodIds of ['', ' ', 'none', `${cheese} none`]) {
    const { state } = await send(sameLabel, { episodeId, foodIds });
    expect(state.problems.length, foodIds).toBeGreaterThan(0);
  }
  expect(await readings()).toBe(before + 1);
});
