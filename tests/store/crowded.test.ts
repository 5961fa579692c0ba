import { v7 as uuid } from 'uuid';
import { beforeEach, describe, expect, it } from 'vitest';
import { MOST } from '#lib/episode/most';
import type { Result } from '#lib/result';
import type { Edit } from '#lib/store/command';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeFile } from '#lib/store/read-episode';
import { undo } from '#lib/store/undo';
import { write } from '#lib/store/write';
import { AT, withFreshDatabase } from './database';
import { FILE } from './fixture';

withFreshDatabase();

const BY = { actor: 'me', at: AT };
function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

let episodeId = '';
let segmentId = '';
beforeEach(async () => {
  episodeId = value(await importEpisodeFile(FILE, AT)).episodeId;
  segmentId = (await segment()).id;
});
async function segment() {
  const file = await readEpisodeFile(episodeId, FILE.savedAt, { publish: true });
  const [first] = file?.episode.segments ?? [];
  if (!first) throw new Error('the episode cannot be read');
  return first;
}
const point = (at: number): Edit => ({
  op: 'create',
  entity: 'TalkingPoint',
  row: { id: uuid(), segmentId, position: 1000 + at, text: `Point ${at}` },
});
const act = (edits: readonly Edit[]) => write({ ...BY, label: 'Act', edits });

describe('rows under one parent', () => {
  it('are as many as the episode file holds, and the one too many is refused in words', async () => {
    const there = (await segment()).talkingPoints.length;
    const room = MOST.talkingPoints - there;
    value(await act(Array.from({ length: room }, (_, at) => point(at))));
    expect((await segment()).talkingPoints).toHaveLength(MOST.talkingPoints);
    expect(await act([point(room)])).toMatchObject({
      ok: false,
      problems: [{ code: 'too-many', message: expect.stringContaining('talking points') }],
    });
    expect((await segment()).talkingPoints).toHaveLength(MOST.talkingPoints);
  });

  it('may be exchanged when there is no room, and none is brought back into a place that was taken', async () => {
    const there = (await segment()).talkingPoints.length;
    const room = MOST.talkingPoints - there;
    value(await act(Array.from({ length: room }, (_, at) => point(at))));
    const last = (await segment()).talkingPoints.at(-1);
    if (!last) throw new Error('no talking point');
    const remove: Edit = { op: 'remove', entity: 'TalkingPoint', id: last.id, rev: 1 };
    const { groupId } = value(await act([remove]));
    value(await act([point(room)]));
    expect(await undo(groupId, BY)).toMatchObject({ ok: false, problems: [{ code: 'too-many' }] });
    expect((await segment()).talkingPoints).toHaveLength(MOST.talkingPoints);
  });

  it('are counted by parent: many segments share no room', async () => {
    const pieces = Array.from({ length: MOST.pieces }, (_, position): Edit => ({
      op: 'create',
      entity: 'Piece',
      row: {
        ...{ id: uuid(), episodeId, position, kind: 'text', title: 'x', ofDay: true, limit: 100 },
      },
    }));
    value(await act(pieces));
    const other = value(await importEpisodeFile(FILE, AT)).episodeId;
    const [first] = pieces;
    if (first?.op !== 'create' || first.entity !== 'Piece') throw new Error('no piece');
    const another = { ...first.row, id: uuid(), episodeId: other };
    value(await act([{ op: 'create', entity: 'Piece', row: another }]));
    expect(
      await act([{ op: 'create', entity: 'Piece', row: { ...first.row, id: uuid() } }]),
    ).toMatchObject({ ok: false, problems: [{ code: 'too-many' }] });
  });
});
