import { describe, expect, it } from 'vitest';
import type { Result } from '#lib/result';
import { database } from '#lib/store/client';
import type { Edit, Written } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import type { RowInput } from '#lib/store/rows';
import { undo } from '#lib/store/undo';
import { write } from '#lib/store/write';
import { AT, withFreshDatabase } from './database';
import { UNSAID_DAY, UNSAID_KITCHEN } from '#lib/episode/unsaid';

withFreshDatabase();

const act = (label: string, edits: Edit[]) => write({ actor: 'me', label, at: AT, edits });

let next = 0;
function episodeRow(over: Partial<RowInput<'Episode'>> = {}): RowInput<'Episode'> {
  return {
    id: `episode-${++next}`,
    title: 'A day on the quay',
    hook: '',
    region: 'US',
    publishOn: null,
    rateNum: 25,
    rateDen: 1,
    anythingElseKind: null,
    anythingElseWhat: null,
    disclosure: '',
    kitchenId: null,
    ...over,
  };
}

function written(result: Result<Written>): Written {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}
const codes = (result: Result<unknown>) =>
  result.ok ? [] : result.problems.map((problem) => problem.code);

async function created(over: Partial<RowInput<'Episode'>> = {}) {
  const row = episodeRow(over);
  const { groupId } = written(await act('New episode', [{ op: 'create', entity: 'Episode', row }]));
  return { id: row.id, groupId };
}
const stored = (id: string) => database().episode.findUniqueOrThrow({ where: { id } });
const journal = (entityId: string) =>
  database().change.findMany({ where: { entityId }, orderBy: { seq: 'asc' } });

describe('write', () => {
  it('creates a row at revision 1 with its creator, and journals it', async () => {
    const { id, groupId } = await created({ title: 'Barley' });
    expect(await stored(id)).toMatchObject({
      title: 'Barley',
      rev: 1,
      deletedAt: null,
      creatorId: DEFAULT_CREATOR_ID,
    });
    const [change, ...more] = await journal(id);
    expect(more).toEqual([]);
    expect(change).toMatchObject({
      groupId,
      actor: 'me',
      label: 'New episode',
      before: null,
      at: AT,
    });
    expect(JSON.parse(change?.after ?? '')).toMatchObject({ title: 'Barley', rev: 1 });
  });

  it('changes the columns given, raises the revision, and journals before and after', async () => {
    const { id } = await created();
    const { revs } = written(
      await act('Rename', [
        {
          op: 'update',
          entity: 'Episode',
          id,
          rev: 1,
          patch: { title: 'Skyr', publishOn: '2026-06-01' },
        },
      ]),
    );
    expect(revs).toEqual({ [id]: 2 });
    expect(await stored(id)).toMatchObject({
      title: 'Skyr',
      publishOn: '2026-06-01',
      hook: '',
      rev: 2,
    });
    const change = (await journal(id)).at(-1);
    expect(JSON.parse(change?.before ?? '')).toMatchObject({ title: 'A day on the quay', rev: 1 });
    expect(JSON.parse(change?.after ?? '')).toMatchObject({ title: 'Skyr', rev: 2 });
  });

  it('refuses a row that was changed meanwhile, with both texts, and keeps what was typed', async () => {
    const { id } = await created({ title: 'first' });
    const other = await created({ title: 'untouched' });
    const patch = (title: string) =>
      ({ op: 'update', entity: 'Episode', id, rev: 1, patch: { title } }) as const;
    written(await act('Rename', [patch('theirs')]));
    const refused = await act('Rename', [
      { op: 'update', entity: 'Episode', id: other.id, rev: 1, patch: { title: 'changed' } },
      patch('mine'),
    ]);
    expect(codes(refused)).toEqual(['conflict']);
    const [problem] = refused.ok ? [] : refused.problems;
    expect(problem).toMatchObject({
      path: 'edits[1].patch.title',
      facts: { typed: 'mine', stored: 'theirs', baseRev: 1, storedRev: 2 },
    });
    expect((await stored(id)).title).toBe('theirs');
    expect((await stored(other.id)).title).toBe('untouched');
    const draft = await database().draft.findUniqueOrThrow({
      where: { id: String(problem?.facts?.draftId) },
    });
    expect(draft).toMatchObject({ entity: 'Episode', entityId: id, baseRev: 1 });
    expect(JSON.parse(draft.payload)).toEqual({ title: 'mine' });
  });

  it('keeps all edits of a command or none', async () => {
    const row = episodeRow();
    const refused = await act('Two at once', [
      { op: 'create', entity: 'Episode', row },
      { op: 'remove', entity: 'Episode', id: 'nowhere', rev: 1 },
    ]);
    expect(codes(refused)).toEqual(['gone']);
    expect(await database().episode.findUnique({ where: { id: row.id } })).toBeNull();
    expect(await journal(row.id)).toEqual([]);
  });

  it('tells every fault of every row, at its column', async () => {
    const refused = await act('Bad', [
      { op: 'create', entity: 'Episode', row: episodeRow({ title: '', rateNum: 0 }) },
      { op: 'create', entity: 'Shop', row: { id: 'shop', name: '' } },
    ]);
    expect(refused.ok ? [] : refused.problems.map((problem) => problem.path)).toEqual([
      'edits[0].row.title',
      'edits[0].row.rateNum',
      'edits[1].row.name',
    ]);
  });

  it('checks a change together with the columns that it leaves', async () => {
    const { id } = await created();
    const patch = { anythingElseKind: 'notCounted' } as const;
    const refused = await act('Half', [{ op: 'update', entity: 'Episode', id, rev: 1, patch }]);
    expect(codes(refused)).toEqual(['invalid']);
    expect((await stored(id)).rev).toBe(1);
  });

  it('refuses what points at nothing, and the same id twice', async () => {
    const kitchenId = 'no-such-kitchen';
    const pointing = await act('x', [
      { op: 'create', entity: 'Episode', row: episodeRow({ kitchenId }) },
    ]);
    expect(codes(pointing)).toEqual(['missing-row']);
    const { id } = await created();
    const again = await act('x', [{ op: 'create', entity: 'Episode', row: episodeRow({ id }) }]);
    expect(codes(again)).toEqual(['exists-already']);
  });

  it.each([
    ['a NUL', 'Quay\0side'],
    ['the first half of a sign', 'Quay \ud83c'],
    ['the second half of a sign', '\udf4b Quay'],
  ])('refuses %s, which no text on every database holds, also inside data', async (_, bad) => {
    const event = { id: 'bad', dayId: 'd', deviceId: 'p', deviceSeq: 9, at: AT, kind: 'note' };
    const results = await Promise.all([
      act('x', [{ op: 'create', entity: 'Episode', row: episodeRow({ title: bad }) }]),
      act('x', [
        { op: 'create', entity: 'DayEvent', row: { ...event, refs: {}, payload: { a: [bad] } } },
      ]),
      act('x', [
        { op: 'create', entity: 'DayEvent', row: { ...event, refs: { [bad]: 1 }, payload: {} } },
      ]),
    ]);
    expect(results.map(codes)).toEqual([['invalid'], ['invalid'], ['invalid']]);
  });

  it('keeps every other sign', async () => {
    const { id } = await created({ hook: '🍋 ’n’ \u0001\u2028 e\u0301' });
    expect((await stored(id)).hook).toBe('🍋 ’n’ \u0001\u2028 e\u0301');
  });

  it('marks as deleted and takes the mark off again', async () => {
    const { id } = await created();
    written(await act('Remove', [{ op: 'remove', entity: 'Episode', id, rev: 1 }]));
    expect((await stored(id)).deletedAt).toEqual(AT);
    const late = await act('x', [
      { op: 'update', entity: 'Episode', id, rev: 2, patch: { hook: 'y' } },
    ]);
    expect(codes(late)).toEqual(['gone']);
    written(await act('Back', [{ op: 'bringBack', entity: 'Episode', id }]));
    expect(await stored(id)).toMatchObject({ deletedAt: null, rev: 3 });
    expect(codes(await act('x', [{ op: 'bringBack', entity: 'Episode', id }]))).toEqual([
      'not-removed',
    ]);
  });

  it('changes nothing that is written once', async () => {
    const row: RowInput<'NumbersLock'> = {
      id: 'lock-1',
      episodeId: 'any',
      seq: 1,
      snapshot: '{}',
      sha256: '0'.repeat(64),
      schemaVersion: 1,
      engineVersion: '1',
      at: AT,
    };
    written(await act('Lock', [{ op: 'create', entity: 'NumbersLock', row }]));
    const refused = await act('x', [
      { op: 'update', entity: 'NumbersLock', id: 'lock-1', rev: 1, patch: { snapshot: '[]' } },
    ]);
    expect(codes(refused)).toEqual(['append-only']);
  });

  it("changes nothing of another creator's", async () => {
    const row = episodeRow();
    written(
      await write({
        actor: 'x',
        label: 'x',
        at: AT,
        creatorId: 'someone-else',
        edits: [{ op: 'create', entity: 'Episode', row }],
      }),
    );
    const refused = await act('x', [{ op: 'remove', entity: 'Episode', id: row.id, rev: 1 }]);
    expect(codes(refused)).toEqual(['not-yours']);
  });

  it('folds names for searching, also when they change', async () => {
    written(
      await act('Shop', [
        { op: 'create', entity: 'Shop', row: { id: 's1', name: 'Crème  Corner' } },
      ]),
    );
    const shop = () => database().shop.findUniqueOrThrow({ where: { id: 's1' } });
    expect((await shop()).nameFolded).toBe('creme corner');
    written(
      await act('x', [{ op: 'update', entity: 'Shop', id: 's1', rev: 1, patch: { name: 'QUAY' } }]),
    );
    expect((await shop()).nameFolded).toBe('quay');
  });

  it('takes a message of a device once', async () => {
    const base = { deviceId: 'phone', at: AT, kind: 'done', refs: {}, payload: {} };
    const { appliances: _none, houseShots: _nor, ...unsaid } = UNSAID_KITCHEN;
    const kitchen = { ...unsaid, id: 'k', name: '', zone: 'UTC', lat: null, lon: null, burners: 4 };
    const day = {
      id: 'd',
      date: '2026-05-02',
      kitchenId: 'k',
      kind: 'packed',
      startMin: 540,
      wrapByMin: null,
      mealGapMin: 0,
      ...UNSAID_DAY,
    } as const;
    written(
      await act('x', [
        { op: 'create', entity: 'Kitchen', row: kitchen },
        { op: 'create', entity: 'FilmingDay', row: day },
        { op: 'create', entity: 'DayEvent', row: { ...base, id: 'e1', dayId: 'd', deviceSeq: 1 } },
      ]),
    );
    const again = await act('x', [
      { op: 'create', entity: 'DayEvent', row: { ...base, id: 'e2', dayId: 'd', deviceSeq: 1 } },
    ]);
    expect(codes(again)).toEqual(['exists-already']);
  });

  it('gives fifty writes at once fifty revisions and loses none', async () => {
    const { id } = await created();
    const results = await Promise.all(
      Array.from({ length: 50 }, (_, index) =>
        act('x', [
          { op: 'update', entity: 'Episode', id, rev: index + 1, patch: { hook: `hook ${index}` } },
        ]),
      ),
    );
    expect(results.every((result) => result.ok)).toBe(true);
    expect(await stored(id)).toMatchObject({ rev: 51, hook: 'hook 49' });
    expect(await journal(id)).toHaveLength(51);
  });
});

describe('a row under another', () => {
  const link = (episodeId: string, id: string): Edit => ({
    op: 'create',
    entity: 'WebLink',
    row: { id, episodeId, position: 0, label: 'Scale', url: 'https://example.org' },
  });

  it('is refused where what it hangs on was removed, and goes in again once it is back', async () => {
    const { id } = await created();
    written(await act('Take out', [{ op: 'remove', entity: 'Episode', id, rev: 1 }]));
    const refused = await act('Add a link', [link(id, 'link-1')]);
    expect(codes(refused)).toEqual(['gone']);
    expect(await database().webLink.count({ where: { id: 'link-1' } })).toBe(0);
    written(await act('Bring back', [{ op: 'bringBack', entity: 'Episode', id }]));
    written(await act('Add a link', [link(id, 'link-1')]));
  });

  it('goes in together with its parent, and never under one that never was', async () => {
    const row = episodeRow();
    const both: Edit[] = [{ op: 'create', entity: 'Episode', row }, link(row.id, 'link-2')];
    written(await act('New', both));
    expect(codes(await act('Add a link', [link('nowhere', 'link-3')]))).toEqual(['gone']);
  });
});

describe('undo', () => {
  it('takes back a change, a creation and a removal, and can be taken back', async () => {
    const { id, groupId } = await created({ title: 'as made' });
    const patch = { title: 'changed' };
    const change = written(
      await act('Rename', [{ op: 'update', entity: 'Episode', id, rev: 1, patch }]),
    );
    const back = written(await undo(change.groupId, { actor: 'me', at: AT }));
    expect((await stored(id)).title).toBe('as made');
    written(await undo(back.groupId, { actor: 'me', at: AT }));
    expect((await stored(id)).title).toBe('changed');

    const removal = written(await act('Remove', [{ op: 'remove', entity: 'Episode', id, rev: 4 }]));
    expect((await stored(id)).deletedAt).toEqual(AT);
    written(await undo(removal.groupId, { actor: 'me', at: AT }));
    expect(await stored(id)).toMatchObject({ deletedAt: null, title: 'changed' });

    // The creation was followed by other changes, which a late undo must not throw away.
    expect(codes(await undo(groupId, { actor: 'me', at: AT }))).toEqual(['conflict']);
    const fresh = await created();
    written(await undo(fresh.groupId, { actor: 'me', at: AT }));
    expect((await stored(fresh.id)).deletedAt).toEqual(AT);
  });

  it('says so where there is nothing to undo', async () => {
    expect(codes(await undo('no-such-group', { actor: 'me', at: AT }))).toEqual(['gone']);
  });
});
