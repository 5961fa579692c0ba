import { describe, expect, it } from 'vitest';
import type { Result } from '#lib/result';
import { database } from '#lib/store/client';
import type { Edit, Written } from '#lib/store/command';
import { removalEdits } from '#lib/store/remove-rows';
import { undo } from '#lib/store/undo';
import { write } from '#lib/store/write';
import { AT, withFreshDatabase } from './database';

withFreshDatabase();

const BY = { actor: 'me', at: AT };
const act = (label: string, ...edits: Edit[]) => write({ ...BY, label, edits });

function written(result: Result<Written>): string {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value.groupId;
}
const problems = (result: Result<unknown>) => (result.ok ? [] : result.problems);

let next = 0;
async function episode(): Promise<{ id: string; groupId: string }> {
  const id = `e-${++next}`;
  const row = {
    id,
    title: 'Quay day',
    hook: 'a',
    region: 'US' as const,
    publishOn: null,
    rateNum: 25,
    rateDen: 1,
    anythingElseKind: null,
    anythingElseWhat: null,
    disclosure: '',
    kitchenId: null,
  };
  const groupId = written(await act('New episode', { op: 'create', entity: 'Episode', row }));
  return { id, groupId };
}
const talk = (id: string, episodeId: string): Edit => ({
  op: 'create',
  entity: 'Segment',
  row: {
    id,
    episodeId,
    position: 0,
    kind: 'talk',
    title: 'Opening',
    recipeId: null,
    batchesNum: 1,
    batchesDen: 1,
    eatenNum: 0,
    eatenDen: 1,
    inFrame: null,
    outFrame: null,
    plannedS: 30,
    spareTakes: 0,
    spareScope: 'whole',
    washUpS: 0,
    filmedWhen: null,
  },
});
const point = (id: string, segmentId: string): Edit => ({
  op: 'create',
  entity: 'TalkingPoint',
  row: { id, segmentId, position: 0, text: 'Good evening' },
});
const patch = (id: string, rev: number, columns: { title?: string; hook?: string }): Edit => ({
  op: 'update',
  entity: 'Episode',
  id,
  rev,
  patch: columns,
});
const stored = (id: string) => database().episode.findUniqueOrThrow({ where: { id } });

describe('an undo after later changes', () => {
  it('takes back its own columns and leaves those that changed since', async () => {
    const { id } = await episode();
    const first = written(await act('Rename', patch(id, 1, { title: 'Harbour' })));
    written(await act('Hook', patch(id, 2, { hook: 'b' })));
    written(await undo(first, BY));
    expect(await stored(id)).toMatchObject({ title: 'Quay day', hook: 'b' });
  });

  it('refuses where the same column changed since, and names the later act', async () => {
    const { id } = await episode();
    const first = written(await act('Rename', patch(id, 1, { title: 'Harbour' })));
    const second = written(await act('Rename again', patch(id, 2, { title: 'Pier' })));
    const [refused] = problems(await undo(first, BY));
    expect(refused).toMatchObject({ code: 'conflict', facts: { laterGroupId: second } });
    expect(refused?.message).toContain('“Rename again”');
    expect((await stored(id)).title).toBe('Pier');
    written(await undo(second, BY));
    written(await undo(first, BY));
    expect((await stored(id)).title).toBe('Quay day');
  });

  it('refuses to take out what has been built upon, until that is undone', async () => {
    const { id } = await episode();
    const added = written(await act('Add talk', talk(`s-${id}`, id)));
    const said = written(await act('Add a sentence', point(`p-${id}`, `s-${id}`)));
    const [refused] = problems(await undo(added, BY));
    expect(refused?.message).toContain('“Add a sentence”');
    expect(await database().segment.count({ where: { id: `s-${id}`, deletedAt: null } })).toBe(1);
    written(await undo(said, BY));
    written(await undo(added, BY));
    expect(await database().segment.count({ where: { id: `s-${id}`, deletedAt: null } })).toBe(0);
  });

  it('brings nothing back under what is gone', async () => {
    const { id } = await episode();
    written(await act('Add talk', talk(`s-${id}`, id)));
    written(await act('Add a sentence', point(`p-${id}`, `s-${id}`)));
    const out = written(
      await act('Take out', ...(await removalEdits('TalkingPoint', `p-${id}`, 1))),
    );
    const all = written(
      await act('Take out talk', ...(await removalEdits('Segment', `s-${id}`, 1))),
    );
    expect(problems(await undo(out, BY))).toMatchObject([{ code: 'gone' }]);
    written(await undo(all, BY));
    written(await undo(out, BY));
    expect(await database().talkingPoint.count({ where: { id: `p-${id}`, deletedAt: null } })).toBe(
      1,
    );
  });

  it('is called undo and redo in turn, and says when it was done already', async () => {
    const { id } = await episode();
    const first = written(await act('Rename', patch(id, 1, { title: 'Harbour' })));
    const back = written(await undo(first, BY));
    expect(problems(await undo(first, BY))[0]).toMatchObject({ code: 'gone' });
    const again = written(await undo(back, BY));
    written(await undo(again, BY));
    const labels = await database().change.findMany({
      where: { entityId: id },
      orderBy: { seq: 'asc' },
    });
    expect(labels.map(({ label }) => label)).toEqual([
      'New episode',
      'Rename',
      'Undo: Rename',
      'Redo: Rename',
      'Undo: Rename',
    ]);
    expect((await stored(id)).title).toBe('Quay day');
  });
});
