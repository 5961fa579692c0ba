import { beforeAll, describe, expect, test, vi } from 'vitest';
import { lockStanding } from '#lib/lock/lock-standing';
import { inputsHash } from '#lib/lock/numbers-lock';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readLocks } from '#lib/store/read-locks';
import { copyDescription, lockNumbers } from '../../app/episodes/[id]/publish/actions';
import { GET as evidenceFile } from '../../app/episodes/[id]/evidence/evidence.json/route';
import { description } from '#lib/publish/description';
import { AT, withFreshDatabase } from '../store/database';
import { demoFile, send } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));

const NOW = '2026-12-10T08:00:00.000Z';

async function read(episodeId: string) {
  const file = await readEpisodeFile(episodeId, NOW);
  if (!file) throw new Error(`no episode ${episodeId}`);
  return file;
}

const asked = (id: string) => ({ params: Promise.resolve({ id }) });

describe('a lock taken by hand', () => {
  withFreshDatabase();
  let id = '';
  beforeAll(async () => {
    const done = await importEpisodeFile(demoFile(), AT);
    if (!done.ok) throw new Error(JSON.stringify(done.problems));
    id = done.value.episodeId;
  });

  test('stands without any text that was copied', async () => {
    const file = await read(id);
    const sent = await send(lockNumbers, { episodeId: id, inputsSha256: inputsHash(file) });
    expect(sent.state.problems).toEqual([]);
    const [lock, ...others] = await readLocks(id);
    expect(others).toEqual([]);
    expect(lock).toMatchObject({ seq: 1, published: [] });
    expect(lockStanding(lock?.snapshot ?? null, file)).toBe('locked');
  });

  test('is not taken twice while nothing has changed, and copying takes one of its own', async () => {
    const file = await read(id);
    const sent = await send(lockNumbers, { episodeId: id, inputsSha256: inputsHash(file) });
    expect(sent.state.done).toContain('locked already');
    await send(copyDescription, { episodeId: id, text: description(file).text });
    expect((await readLocks(id)).map(({ seq, published }) => [seq, published.length])).toEqual([
      [2, 1],
      [1, 0],
    ]);
  });

  test('of numbers that are no longer those on the page is refused', async () => {
    const other = inputsHash({ ...(await read(id)), foods: [] });
    const refused = await send(lockNumbers, { episodeId: id, inputsSha256: other });
    expect(refused.state.problems).toMatchObject([{ code: 'changed' }]);
    const mistyped = await send(lockNumbers, { episodeId: id, inputsSha256: 'x' });
    expect(mistyped.state.problems).not.toEqual([]);
    expect(await readLocks(id)).toHaveLength(2);
  });

  test('is in the evidence; no episode has none', async () => {
    const answer = await evidenceFile(new Request('http://localhost/'), asked(id));
    expect(await answer.json()).toMatchObject({
      format: 'scale-and-slate/evidence',
      lock: { seq: 2, holds: true },
      difference: null,
    });
    const nothing = await evidenceFile(new Request('http://localhost/'), asked('nobody'));
    expect(nothing.status).toBe(404);
  });
});
