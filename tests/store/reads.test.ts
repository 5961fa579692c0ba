import { describe, expect, it } from 'vitest';
import { database } from '#lib/store/client';
import type { Edit } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { importEpisodeFile } from '#lib/store/import-file';
import { readChanges } from '#lib/store/read-changes';
import { readDrafts } from '#lib/store/read-drafts';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readKitchen, readKitchens } from '#lib/store/read-kitchen';
import { nextLockSeq, readLastLock, readPublished } from '#lib/store/read-locks';
import { readFoodsInUse } from '#lib/store/read-foods-in-use';
import { readSeason } from '#lib/store/read-season';
import type { RowInput } from '#lib/store/rows';
import { write } from '#lib/store/write';
import { AT, withFreshDatabase } from './database';
import { FILE } from './fixture';
import { UNSAID_DAY } from '#lib/episode/unsaid';

withFreshDatabase();

async function act(edits: Edit[]): Promise<void> {
  const result = await write({ actor: 'me', label: 'Act', at: AT, edits });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
}

let episodeId = '';
const imported = async () => {
  if (episodeId !== '') return episodeId;
  const result = await importEpisodeFile(FILE, AT);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return (episodeId = result.value.episodeId);
};

describe('readSeason', () => {
  it('counts what the stage of an episode follows from', async () => {
    const id = await imported();
    const page = await readSeason();
    expect(page.next).toBeNull();
    expect(page.rows).toEqual([
      {
        id,
        rev: 1,
        title: 'Two dishes by the harbour',
        publishOn: '2026-05-09',
        filmingDates: ['2026-05-02'],
        segments: 3,
        dishes: 2,
        lines: 4,
        // The stock has a food and no amount; the green has neither. The cheese was weighed.
        openLines: 2,
        timedSegments: 1,
        copied: false,
      },
    ]);
  });

  it('lists every episode once, page by page: without a date first, then the latest', async () => {
    await imported();
    const dates = ['2026-06-01', null, '2026-01-01', '2026-06-01', null, '2026-05-09'];
    const rows = dates.map((publishOn, at): RowInput<'Episode'> => ({
      id: `s-${at}`,
      title: `Episode ${at}`,
      hook: '',
      region: 'US',
      publishOn,
      rateNum: 25,
      rateDen: 1,
      anythingElseKind: null,
      anythingElseWhat: null,
      disclosure: '',
      kitchenId: null,
    }));
    await act(rows.map((row): Edit => ({ op: 'create', entity: 'Episode', row })));
    await act([{ op: 'remove', entity: 'Episode', id: 's-3', rev: 1 }]);
    const all = (await readSeason({ take: 100 })).rows;
    expect(all.map((row) => row.publishOn)).toEqual([
      null,
      null,
      '2026-06-01',
      '2026-05-09',
      '2026-05-09',
      '2026-01-01',
    ]);
    for (const take of [1, 2, 5]) {
      const seen: string[] = [];
      for (let after: string | null | undefined; after !== null;) {
        const page = await readSeason({ take, ...(after === undefined ? {} : { after }) });
        seen.push(...page.rows.map((row) => row.id));
        after = page.next;
      }
      expect(seen).toEqual(all.map((row) => row.id));
    }
    expect((await readSeason({}, 'someone-else')).rows).toEqual([]);
  });
});

describe('locks and texts', () => {
  const lock = (seq: number, forEpisode: string): Edit => ({
    op: 'create',
    entity: 'NumbersLock',
    row: {
      id: `lock-${seq}`,
      episodeId: forEpisode,
      seq,
      snapshot: `{"seq":${seq}}`,
      sha256: String(seq).repeat(64),
      schemaVersion: 1,
      engineVersion: 'e',
      at: AT,
    },
  });

  it('are read back as they were, the last first', async () => {
    const id = await imported();
    expect(await nextLockSeq(id)).toBe(1);
    expect(await readLastLock(id)).toBeNull();
    expect(await readPublished(id)).toBeNull();
    const text = 'Barley skillet: 640 calories — "the whole pan"\n';
    await act([
      lock(1, id),
      { op: 'create', entity: 'Published', row: { id: 'p-1', lockId: 'lock-1', text, at: AT } },
      lock(2, id),
      lock(3, id),
    ]);
    expect(await nextLockSeq(id)).toBe(4);
    expect(await readLastLock(id)).toMatchObject({ seq: 3, snapshot: '{"seq":3}', published: [] });
    expect(await readPublished(id)).toMatchObject({ text, at: AT, lock: { seq: 1 } });
    expect((await readSeason()).rows.find((row) => row.id === id)?.copied).toBe(true);
  });
});

describe('the journal', () => {
  it('is read in pages, by row and by act', async () => {
    await imported();
    const all = await readChanges({ take: 500 });
    expect(all.length).toBe(await database().change.count());
    const first = await readChanges({ take: 7 });
    const rest = await readChanges({ take: 500, before: first.at(-1)?.seq ?? 0 });
    expect([...first, ...rest]).toEqual(all);
    const removed = await readChanges({ entityId: 's-3' });
    expect(removed.map((line) => [line.before?.rev, line.after?.rev])).toEqual([
      [1, 2],
      [undefined, 1],
    ]);
    const group = all.at(-1)?.groupId ?? '';
    expect((await readChanges({ groupId: group, take: 500 })).length).toBeGreaterThan(50);
  });
});

describe('readDrafts', () => {
  it('has what was typed and refused', async () => {
    const id = await imported();
    const patch = { hook: 'mine' };
    await act([{ op: 'update', entity: 'Episode', id, rev: 1, patch: { hook: 'theirs' } }]);
    const edits: Edit[] = [{ op: 'update', entity: 'Episode', id, rev: 1, patch }];
    expect((await write({ actor: 'me', label: 'x', at: AT, edits })).ok).toBe(false);
    expect(await readDrafts(id)).toMatchObject([{ entity: 'Episode', baseRev: 1, typed: patch }]);
  });
});

describe('kitchen, pantry and day', () => {
  it('the kitchen comes with the revisions of its parts', async () => {
    await imported();
    const stored = await readKitchen();
    expect(stored?.kitchen.ovens[0]?.changes).toHaveLength(2);
    expect(Object.keys(stored?.revs ?? {})).toHaveLength(1 + 2 + 2 + 1 + 2 + 2 + 1);
    expect(await readKitchen(stored?.id)).toEqual(stored);
    expect((await readKitchens()).rows).toEqual([stored]);
    expect(await readKitchen('nowhere')).toBeNull();
  });

  it('an episode filmed on two days shows the later, or the one asked for', async () => {
    const id = await imported();
    const kitchenId = (await readKitchen())?.id ?? '';
    const day: RowInput<'FilmingDay'> = {
      id: 'pickup-day',
      date: '2026-05-04',
      kitchenId,
      kind: 'asLived',
      startMin: 600,
      wrapByMin: null,
      mealGapMin: 0,
      ...UNSAID_DAY,
    };
    await act([
      { op: 'create', entity: 'FilmingDay', row: day },
      { op: 'create', entity: 'DayEpisode', row: { id: 'de', dayId: day.id, episodeId: id } },
    ]);
    const later = await readEpisodeFile(id, FILE.savedAt);
    expect(later?.day?.date).toBe('2026-05-04');
    const days = await database().filmingDay.findMany({ where: { date: '2026-05-02' } });
    const asked = await readEpisodeFile(id, FILE.savedAt, { dayId: days[0]?.id ?? '' });
    expect(asked?.day?.date).toBe('2026-05-02');
  });

  it("nothing is read of another creator's", async () => {
    const id = await imported();
    const creatorId = 'someone-else';
    expect(DEFAULT_CREATOR_ID).not.toBe(creatorId);
    expect(await readEpisodeFile(id, FILE.savedAt, { creatorId })).toBeNull();
    expect((await readFoodsInUse({}, creatorId)).rows).toEqual([]);
    expect(await readKitchen(undefined, creatorId)).toBeNull();
    expect(await readChanges({}, creatorId)).toEqual([]);
  });
});
