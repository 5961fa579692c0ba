import { beforeAll, describe, expect, test, vi } from 'vitest';
import { dishesOf } from '#lib/episode/context';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { readEpisodeChanges } from '#lib/store/read-episode-changes';
import { removalEdits } from '#lib/store/remove-rows';
import { undo } from '#lib/store/undo';
import { write } from '#lib/store/write';
import { addPiece, changePiece, removePiece } from '../../app/episodes/[id]/publish/piece-actions';
import { AT, withFreshDatabase } from '../store/database';
import { demoFile, send } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));

// What forms take and refuse is our own; no source outside.
describe('pieces', () => {
  withFreshDatabase();
  let id = '';
  let dishes: readonly string[] = [];
  beforeAll(async () => {
    const { publish: _, ...file } = demoFile();
    const done = await importEpisodeFile(file, AT);
    if (!done.ok) throw new Error(JSON.stringify(done.problems));
    id = done.value.episodeId;
    dishes = dishesOf((await read()).episode.segments).map((dish) => dish.id);
  });

  async function read() {
    const file = await readEpisodeFile(id, AT.toISOString(), { publish: true });
    if (!file) throw new Error('no episode');
    return file;
  }
  const pieces = async () => (await read()).publish?.pieces ?? [];
  const dish = (at: number) => dishes[at] ?? '';
  const tick = (at: number) => ({ [`dish-${dish(at)}`]: 'on' });
  const texts = () => ({ episodeId: id, kind: 'clip', title: 'Loaf in a minute', limit: '600' });
  const ofPiece = async (title: string) => {
    const piece = (await pieces()).find((each) => each.title === title);
    const pieceId = piece?.id ?? '';
    return { piece, pieceId, rev: (await readRevisions(id))[pieceId] ?? 0 };
  };
  const undoLast = async () => {
    const [last] = (await readEpisodeChanges(id, { take: 1 })).acts;
    return undo(last?.groupId ?? '', { actor: DEFAULT_CREATOR_ID, at: new Date() });
  };

  test('refuse what is missing or against itself, field by field, and keep the typing', async () => {
    const cases: [Record<string, string>, string, string][] = [
      [{ ...texts(), ...tick(0), title: ' ' }, 'title', 'what it is called'],
      [{ ...texts(), ...tick(0), kind: 'film' }, 'kind', 'a clip or a text'],
      [{ ...texts(), ...tick(0), limit: 'short' }, 'limit', 'from 20 to 100000'],
      [{ ...texts(), ...tick(0), limit: '19' }, 'limit', 'from 20 to 100000'],
      [{ ...texts(), ...tick(0), limit: '100001' }, 'limit', 'from 20 to 100000'],
      [texts(), 'day', 'the day, or some dishes'],
      [{ ...texts(), ...tick(0), day: 'on' }, 'day', 'not both'],
      [{ ...texts(), 'dish-nowhere': 'on' }, 'day', 'no longer in the episode'],
    ];
    for (const [typed, path, message] of cases) {
      const { state } = await send(addPiece, typed);
      expect(state.problems).toMatchObject([{ path }]);
      expect(state.problems[0]?.message).toContain(message);
      expect(state.typed).toEqual(typed);
    }
    expect(await pieces()).toEqual([]);
  });

  test('are added one after the other, of dishes or of the day', async () => {
    const first = await send(addPiece, { ...texts(), ...tick(1), ...tick(0) });
    expect(first.state.problems).toEqual([]);
    await send(addPiece, { ...texts(), kind: 'text', title: 'The day', day: 'on', limit: '280' });
    const [clip, day] = await pieces();
    expect(clip).toMatchObject({ kind: 'clip', title: 'Loaf in a minute', limit: 600 });
    expect(new Set(clip?.segmentIds)).toEqual(new Set([dish(0), dish(1)]));
    expect(day).toMatchObject({ kind: 'text', title: 'The day', segmentIds: null, limit: 280 });
  });

  test('are changed: a dish that stays keeps its row, a stale form overwrites nothing', async () => {
    const { pieceId, rev } = await ofPiece('Loaf in a minute');
    const sent = { ...texts(), pieceId, rev, title: 'Other' };
    expect((await send(changePiece, { ...sent, ...tick(1), ...tick(2) })).state.problems).toEqual(
      [],
    );
    const changed = await ofPiece('Other');
    expect(new Set(changed.piece?.segmentIds)).toEqual(new Set([dish(1), dish(2)]));
    const stale = await send(changePiece, { ...sent, title: 'Late', ...tick(0) });
    expect(stale.state).toMatchObject({ typed: { title: 'Late' }, rev: changed.rev });
    expect(stale.state.problems[0]?.code).toBe('conflict');
    expect((await ofPiece('Other')).piece).toEqual(changed.piece);
    await send(changePiece, { ...sent, rev: changed.rev, day: 'on' });
    expect((await ofPiece('Other')).piece?.segmentIds).toBeNull();
    const gone = await send(changePiece, { ...sent, pieceId: 'none', day: 'on' });
    expect(gone.state).toMatchObject({ problems: [{ code: 'gone' }], typed: { title: 'Other' } });
  });

  test('are taken out, and undoing it brings back which dishes they are of', async () => {
    await send(addPiece, { ...texts(), title: 'Two', ...tick(0), ...tick(1) });
    const { piece, pieceId, rev } = await ofPiece('Two');
    await send(removePiece, { episodeId: id, pieceId, rev });
    expect((await ofPiece('Two')).piece).toBeUndefined();
    expect((await undoLast()).ok).toBe(true);
    expect((await ofPiece('Two')).piece).toEqual(piece);
  });

  test('whose dish is taken out are of the others, or of none', async () => {
    await send(addPiece, { ...texts(), title: 'Alone', ...tick(0) });
    const rev = (await readRevisions(id))[dish(0)] ?? 0;
    const edits = await removalEdits('Segment', dish(0), rev);
    const act = { actor: DEFAULT_CREATOR_ID, label: 'Take a dish out', at: new Date(), edits };
    expect((await write(act)).ok).toBe(true);
    expect((await ofPiece('Alone')).piece?.segmentIds).toEqual([]);
    expect((await ofPiece('Two')).piece?.segmentIds).toEqual([dish(1)]);
  });
});
