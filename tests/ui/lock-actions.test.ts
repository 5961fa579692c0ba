import { beforeAll, describe, expect, test, vi } from 'vitest';
import { lockStanding } from '#lib/lock/lock-standing';
import { inputsHash } from '#lib/lock/numbers-lock';
import { importEpisodeFile } from '#lib/store/import-file';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { write } from '#lib/store/write';
import { dishesOf } from '#lib/episode/context';
import { numbersToPublish } from '#lib/publish/from-lock';
import { nextLockSeq, readLastLock } from '#lib/store/read-locks';
import { copyDescription, lockNumbers } from '../../app/episodes/[id]/publish/actions';
import { GET as evidenceFile } from '../../app/episodes/[id]/evidence/evidence.json/route';
import { description, descriptionOf } from '#lib/publish/description';
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
    const lock = await readLastLock(id);
    expect(lock).toMatchObject({ seq: 1, published: [] });
    expect(lockStanding(lock?.snapshot ?? null, file)).toBe('locked');
  });

  test('is not taken twice while nothing has changed, and a text that is copied is kept with it', async () => {
    const file = await read(id);
    const sent = await send(lockNumbers, { episodeId: id, inputsSha256: inputsHash(file) });
    expect(sent.state.done).toContain('locked already');
    const copied = await send(copyDescription, { episodeId: id, text: description(file).text });
    expect(copied.state.done).toContain('lock 1');
    const lock = await readLastLock(id);
    expect([lock?.seq, lock?.published.length]).toEqual([1, 1]);
  });

  test('of numbers that are no longer those on the page is refused', async () => {
    const other = inputsHash({ ...(await read(id)), foods: [] });
    const refused = await send(lockNumbers, { episodeId: id, inputsSha256: other });
    expect(refused.state.problems).toMatchObject([{ code: 'changed' }]);
    const mistyped = await send(lockNumbers, { episodeId: id, inputsSha256: 'x' });
    expect(mistyped.state.problems).not.toEqual([]);
    expect(await nextLockSeq(id)).toBe(2);
  });

  test('is in the evidence; no episode has none', async () => {
    const answer = await evidenceFile(new Request('http://localhost/'), asked(id));
    expect(await answer.json()).toMatchObject({
      format: 'scale-and-slate/evidence',
      lock: { seq: 1, holds: true },
      difference: null,
    });
    const nothing = await evidenceFile(new Request('http://localhost/'), asked('nobody'));
    expect(nothing.status).toBe(404);
  });

  test('that is broken stays as it is when a text is copied: its numbers go out, in any form', async () => {
    const before = await read(id);
    const [line] = dishesOf(before.episode.segments)[0]?.recipe.lines ?? [];
    const revs = await readRevisions(id);
    const planned = { plannedLowMg: 400_000, plannedMg: 400_000, plannedHighMg: 400_000 };
    const edit = { op: 'update', entity: 'RecipeLine', id: line?.id ?? '' } as const;
    const rev = revs[edit.id] ?? 0;
    const done = await write({
      ...{ actor: DEFAULT_CREATOR_ID, label: 'More barley', at: new Date(NOW) },
      edits: [{ ...edit, rev, patch: planned }],
    });
    expect(done.ok).toBe(true);
    const now = await read(id);
    const lock = await readLastLock(id);
    expect(lockStanding(lock?.snapshot ?? null, now)).toBe('broken');
    const form = 'markdown';
    const { text } = descriptionOf(numbersToPublish(now, lock?.snapshot ?? null), { form });
    expect(text).toContain('The whole dish: 1409 kcal');
    const refused = await send(copyDescription, { episodeId: id, form, text: `${text} and more` });
    expect(refused.state.problems).toMatchObject([{ code: 'changed' }]);
    const copied = await send(copyDescription, { episodeId: id, form, text });
    expect(copied.state).toMatchObject({ problems: [] });
    const only = await readLastLock(id);
    expect(only?.seq).toBe(1);
    expect(only?.published.map((each) => [each.form, each.text === text])).toEqual([
      ['markdown', true],
      ['plain', false],
    ]);
  });
});
