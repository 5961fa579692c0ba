import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseEpisodeFile } from '#lib/episode/file';
import type { EpisodeFile } from '#lib/episode/schema';
import { takeLock } from '#lib/lock/numbers-lock';
import { usesOfFood } from '#lib/publish/correction/food-uses';
import { sweep } from '#lib/publish/correction/sweep';
import { importEpisodeFile } from '#lib/store/import-file';
import {
  readCopiesOut,
  readCorrections,
  readEpisodesLockedWith,
  readEpisodeTitles,
  readWentOut,
} from '#lib/store/read-corrections';
import { countHistoryLocks, readFrozen, readLastLock, readPublished } from '#lib/store/read-locks';
import { readEpisodeFile } from '#lib/store/read-episode';
import { undo } from '#lib/store/undo';
import { write } from '#lib/store/write';
import { AT, withFreshDatabase } from './database';

withFreshDatabase();

const parsed = parseEpisodeFile(
  readFileSync(new URL('../../seed/demo.episode.json', import.meta.url), 'utf8'),
);
if (!parsed.ok) throw new Error('the demo must be readable');
const demo = parsed.value;

async function brought(): Promise<EpisodeFile> {
  const done = await importEpisodeFile(demo, AT);
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  const file = await readEpisodeFile(done.value.episodeId, demo.savedAt);
  if (!file) throw new Error('it is there');
  return file;
}

async function does(label: string, edits: Parameters<typeof write>[0]['edits']): Promise<string> {
  const done = await write({ actor: 'test', label, at: AT, edits });
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  return done.value.groupId;
}

let made = 0;
const lockRow = (file: EpisodeFile, seq: number) => {
  const { inputsSha256: _, ...lock } = takeLock(file);
  made += 1;
  const id = `lock-${String(made).padStart(4, '0')}`;
  return {
    op: 'create',
    entity: 'NumbersLock',
    row: { ...lock, id, episodeId: file.episode.id, seq, at: AT },
  } as const;
};
const correction = (oldLockId: string, newLockId: string, id: string) =>
  ({
    op: 'create',
    entity: 'Correction',
    row: { id, oldLockId, newLockId, reason: 'Weighed again.', on: '2026-11-30' },
  }) as const;

describe('corrections that are kept', () => {
  it('stand at the newest lock that viewers know: copied with, or corrected to; undone with their lock', async () => {
    const file = await brought();
    const { id: episodeId } = file.episode;
    const out = (publishOn: string | null = null) =>
      readWentOut({ ...file, episode: { ...file.episode, publishOn } });
    expect(await out()).toEqual([]);

    const [first, second, third] = [1, 2, 3].map((seq) => lockRow(file, seq));
    if (!first || !second || !third) throw new Error('three were made');
    await does('Lock', [first]);
    expect(await out()).toMatchObject([{ seq: 1, told: false }]);

    const text = { id: 'copied-1', lockId: first.row.id, text: 'As it stood', at: AT };
    await does('Copy', [{ op: 'create', entity: 'Published', row: text }]);
    await does('Lock again', [second]);
    // Locked again and nobody was told: what went out is still the first.
    expect(await out()).toMatchObject([{ seq: 1, told: true }]);

    const act = await does('Correct', [third, correction(first.row.id, third.row.id, 'corr-1')]);
    expect(await out()).toMatchObject([{ seq: 3, told: true }]);
    const { rows } = await readCorrections({ episodeId });
    expect(rows).toMatchObject([{ id: 'corr-1', before: { seq: 1 }, after: { seq: 3 } }]);
    const frozen = await readFrozen(episodeId, [first.row.id, third.row.id]);
    expect(frozen.get(third.row.id)).toEqual({ snapshot: third.row.snapshot, historyOnly: false });
    expect(frozen.size).toBe(2);
    const copies = (await readCopiesOut(episodeId)).map((each) => ({ ...each, at: '' }));
    expect(sweep(3, copies, [])).toMatchObject([
      { key: 'plain', done: false },
      { key: 'cards', done: null },
    ]);
    expect(sweep(1, copies, [])[0]?.done).toBe(true);

    // As long as nothing is out, a text that is copied replaces the one before; from its day on both are known.
    const again = { id: 'copied-2', lockId: second.row.id, text: 'Again', at: AT };
    await does('Copy again', [{ op: 'create', entity: 'Published', row: again }]);

    const undone = await undo(act, { actor: 'test', at: AT });
    expect(undone.ok).toBe(true);
    expect(await out()).toMatchObject([{ seq: 2 }]);
    const [day] = AT.toISOString().split('T');
    expect(await out(day)).toMatchObject([
      { seq: 1, copiedAt: AT, snapshot: first.row.snapshot },
      { seq: 2, copiedAt: AT, snapshot: second.row.snapshot },
    ]);
    expect(await out('2099-01-01')).toMatchObject([{ seq: 2 }]);
    expect((await readCorrections({ episodeId })).rows).toEqual([]);
  });

  it('pass over a lock that came as history, also where a text was copied with that one alone', async () => {
    const [file, other] = [await brought(), await brought()];
    const [history, own] = [lockRow(other, 1), lockRow(file, 2)];
    const kept = { ...history, row: { ...history.row, episodeId: file.episode.id } };
    const text = { id: 'copied-3', lockId: kept.row.id, text: 'Elsewhere', at: AT };
    await does('Bring in', [kept, { op: 'create', entity: 'Published', row: text }]);
    expect(await readWentOut(file)).toEqual([]);
    await does('Lock', [own]);
    expect(await readWentOut(file)).toMatchObject([{ seq: 2, told: false }]);
    expect(await readCopiesOut(file.episode.id)).toEqual([]);
    // It hides none either where it has the higher number.
    const later = { ...kept, row: { ...kept.row, id: 'later', seq: 3 } };
    const unlike = { ...own, row: { ...own.row, id: 'unlike', seq: 4, schemaVersion: 0 } };
    await does('Bring in', [later, unlike]);
    expect(await readLastLock(file.episode.id)).toMatchObject({ seq: 2 });
    expect(await readWentOut(file)).toMatchObject([{ seq: 2 }]);
    expect(await countHistoryLocks(file.episode.id)).toEqual({ otherRows: 2, unlike: 1 });
    const ids = [kept.row.id, own.row.id, later.row.id, unlike.row.id];
    const frozen = await readFrozen(file.episode.id, ids);
    expect(ids.map((id) => frozen.get(id)?.historyOnly)).toEqual([true, false, true, true]);
    expect(await readPublished(file.episode.id)).toBeNull();
  });

  it('are listed over all episodes in parts, the last made first, each once', async () => {
    const file = await brought();
    const [from, to] = [lockRow(file, 1), lockRow(file, 2)];
    const ids = Array.from({ length: 7 }, (_, at) => `row-${String(at)}`);
    await does('Lock', [from, to]);
    for (const id of ids) await does('Correct', [correction(from.row.id, to.row.id, id)]);
    const seen: string[] = [];
    let after: string | undefined;
    do {
      const page = await readCorrections({ take: 3, after });
      expect(page.rows.length).toBeLessThanOrEqual(3);
      seen.push(...page.rows.map(({ id }) => id));
      after = page.next ?? undefined;
    } while (after !== undefined);
    expect(seen).toEqual([...ids].reverse());
    const titles = await readEpisodeTitles([file.episode.id, 'nobody']);
    expect([...titles]).toEqual([[file.episode.id, file.episode.title]]);
  });

  it('lead to other episodes whose locks keep a food, and to where they use it', async () => {
    const [one, other] = [await brought(), await brought()];
    const food = one.foods.find(({ id }) => usesOfFood(one, id).length > 0);
    if (!food) throw new Error('the demo uses foods');
    const [lock] = [lockRow(other, 1)];
    await does('Lock', [lock]);
    expect(await readEpisodesLockedWith(food.id)).toContain(other.episode.id);
    expect(await readEpisodesLockedWith(food.id)).not.toContain(one.episode.id);
    expect(await readEpisodesLockedWith('no such food')).toEqual([]);
    const [use] = usesOfFood(other, food.id);
    expect(use?.ingredient).toMatch(/\d+ g/);
    expect(usesOfFood(other, 'no such food')).toEqual([]);
  });
});
