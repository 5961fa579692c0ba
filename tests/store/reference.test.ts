import { describe, expect, it } from 'vitest';
import { database } from '#lib/store/client';
import type { Edit } from '#lib/store/command';
import { SHARED_CREATOR_ID } from '#lib/store/creators';
import { foodRows } from '#lib/store/food-rows';
import {
  readFood,
  readFoodsById,
  readFoodVersions,
  readOwnFoodEntries,
  readReferenceFoods,
  readStoredFood,
} from '#lib/store/read-foods';
import { readFoodsInUse } from '#lib/store/read-foods-in-use';
import { write } from '#lib/store/write';
import { isReleaseLoaded, writeReference } from '#lib/store/write-reference';
import { AT, ON_POSTGRES, withFreshDatabase } from './database';
import { BARLEY, SALT } from './fixture';

withFreshDatabase();

const RELEASE = { source: 'Harbour table', release: 'H1', at: AT };
const KEEN: typeof BARLEY = {
  ...BARLEY,
  id: 'f-quote',
  name: `O'Kelp "dulse" \\ Crème, 100 %`,
  version: { ...BARLEY.version, id: 'v-quote', sourceNo: '00000' },
  measures: [],
  yields: [],
  allergens: [],
};

describe('writeReference', () => {
  it('loads foods that read back as they were, once', async () => {
    expect(await isReleaseLoaded('Harbour table', 'H1')).toBe(false);
    expect(await writeReference([BARLEY, SALT, KEEN], RELEASE)).toEqual({ ok: true, value: 3 });
    expect(await isReleaseLoaded('Harbour table', 'H1')).toBe(true);
    for (const food of [BARLEY, SALT, KEEN]) expect(await readFood(food.id)).toEqual(food);
    expect(await writeReference([BARLEY], RELEASE)).toEqual({ ok: true, value: 0 });
    expect(await database().food.count()).toBe(3);
  });

  it('leaves one line in the journal', async () => {
    const lines = await database().change.findMany();
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatchObject({
      entity: 'ReferenceRelease',
      creatorId: SHARED_CREATOR_ID,
      label: 'Load Harbour table, H1',
    });
  });

  it('stores each column as the client does', async () => {
    const copy = { ...KEEN, id: 'copy', version: { ...KEEN.version, id: 'v-copy' } };
    const rows = foodRows(
      {
        ...copy,
        measures: BARLEY.measures.map((part) => ({ ...part, id: 'm-copy' })),
        yields: BARLEY.yields.map((part) => ({ ...part, id: 'y-copy' })),
        allergens: BARLEY.allergens.map((part) => ({ ...part, id: 'a-copy' })),
      },
      AT,
    );
    const edits = [
      { op: 'create', entity: 'Food', row: rows.Food },
      { op: 'create', entity: 'FoodVersion', row: rows.FoodVersion },
      ...rows.FoodMeasure.map((row) => ({ op: 'create', entity: 'FoodMeasure', row })),
      ...rows.YieldObservation.map((row) => ({ op: 'create', entity: 'YieldObservation', row })),
      ...rows.AllergenFact.map((row) => ({ op: 'create', entity: 'AllergenFact', row })),
    ] as Edit[];
    expect((await write({ actor: 'me', label: 'x', at: AT, edits })).ok).toBe(true);
    const pairs = [
      ['Food', 'f-quote', 'copy'],
      ['FoodVersion', 'v-quote', 'v-copy'],
      ['FoodMeasure', 'm-cup', 'm-copy'],
      ['YieldObservation', 'y-1', 'y-copy'],
      ['AllergenFact', 'a-1', 'a-copy'],
    ] as const;
    for (const [table, bulk, single] of pairs) {
      const [first] = await database().$queryRawUnsafe<Record<string, unknown>[]>(
        `SELECT * FROM "${table}" LIMIT 1`,
      );
      const columns = Object.keys(first ?? {}).filter((name) => !/^id$|Id$/.test(name));
      const [a, b] = await Promise.all(
        [bulk, single].map((id) =>
          database().$queryRawUnsafe<{ cell: string }[]>(
            columns
              .map(
                (name) => `SELECT ${typeAndText(name)} AS cell FROM "${table}" WHERE id = '${id}'`,
              )
              .join(' UNION ALL '),
          ),
        ),
      );
      expect(a?.length, table).toBe(columns.length);
      // Keys of JSON have no order: the row check writes them in its own.
      const cells = (rows: typeof a) => rows?.map(({ cell }) => readCell(cell));
      expect(cells(a), table).toEqual(cells(b));
    }
  });

  it('keeps all foods or none', async () => {
    const twice = [
      { ...SALT, id: 'n-1', version: { ...SALT.version, id: 'nv-1' } },
      { ...SALT, id: 'n-2', version: { ...SALT.version, id: 'nv-1' } },
    ];
    await expect(writeReference(twice, { ...RELEASE, release: 'H2' })).rejects.toThrow();
    expect(await isReleaseLoaded('Harbour table', 'H2')).toBe(false);
    expect(await readFood('n-1')).toBeNull();
  });

  it('makes foods that no creator can change', async () => {
    const patch = { name: 'mine' };
    const edits: Edit[] = [{ op: 'update', entity: 'Food', id: SALT.id, rev: 1, patch }];
    const refused = await write({ actor: 'me', label: 'x', at: AT, edits });
    expect(refused.ok ? '' : refused.problems[0]?.code).toBe('not-yours');
  });
});

/** What the database holds in a column, before any client reads it. */
function typeAndText(column: string): string {
  return ON_POSTGRES
    ? `pg_typeof("${column}") || ' ' || coalesce("${column}"::text, '')`
    : `typeof("${column}") || ' ' || coalesce("${column}", '')`;
}

function readCell(cell: string): unknown {
  const json = /^(?:text|jsonb) ([[{].*)$/s.exec(cell)?.[1];
  return json === undefined ? cell : JSON.parse(json);
}

describe('reads of foods', () => {
  it('list the table in order of number, and own foods by name in pages', async () => {
    expect((await readReferenceFoods()).map((food) => food.sourceNo)).toEqual([
      '00000',
      '00001',
      '00002',
    ]);
    const names = ['zander', 'Ärtsoppa', 'apple', 'Zander', 'bread'];
    const edits = names.flatMap((name, at) => {
      const version = { ...SALT.version, id: `ov-${at}`, sourceNo: '' };
      const food = { ...SALT, kind: 'label' as const, id: `o-${at}`, name, version };
      const rows = foodRows(food, AT);
      return [
        { op: 'create', entity: 'Food', row: rows.Food },
        { op: 'create', entity: 'FoodVersion', row: rows.FoodVersion },
      ] as const;
    });
    expect((await write({ actor: 'me', label: 'x', at: AT, edits })).ok).toBe(true);
    const seen: string[] = [];
    for (let after: string | null | undefined; after !== null;) {
      const page = await readFoodsInUse({ take: 2, ...(after === undefined ? {} : { after }) });
      expect(page.rows.length).toBeLessThanOrEqual(2);
      seen.push(...page.rows.filter(({ own }) => own).map(({ name }) => name));
      after = page.next;
    }
    // The food that an earlier test added has a name of its own among them.
    expect(seen.filter((name) => names.includes(name))).toEqual([
      'apple',
      'Ärtsoppa',
      'bread',
      'zander',
      'Zander',
    ]);
    const named = await readFoodsInUse({ words: 'ZÄ' });
    expect(named.rows.map(({ name }) => name)).toEqual(['zander', 'Zander']);
    expect((await readOwnFoodEntries()).length).toBe(seen.length);
  });

  it('take the version read last as the one in use, and keep the older', async () => {
    const version = { ...SALT.version, id: 'ov-new', seq: 2, sourceNo: 'again' };
    const row = foodRows({ ...SALT, id: 'o-2', version }, AT).FoodVersion;
    const edits: Edit[] = [{ op: 'create', entity: 'FoodVersion', row }];
    expect((await write({ actor: 'me', label: 'Read again', at: AT, edits })).ok).toBe(true);
    expect((await readFood('o-2'))?.version.id).toBe('ov-new');
    expect((await readFoodVersions('o-2')).map(({ seq }) => seq)).toEqual([2, 1]);
  });

  it('come with revisions, and tell own foods from those of a table', async () => {
    const stored = await readStoredFood(BARLEY.id);
    expect(stored?.own).toBe(false);
    expect(Object.keys(stored?.revs ?? {})).toEqual(
      expect.arrayContaining(['f-barley', 'v-barley', 'm-cup', 'y-1', 'a-1']),
    );
    expect((await readStoredFood('o-2'))?.own).toBe(true);
    expect(await readStoredFood('nowhere')).toBeNull();
  });

  it('by id keep the order asked for', async () => {
    const foods = await readFoodsById([SALT.id, 'nowhere', BARLEY.id]);
    expect(foods.map((food) => food.id)).toEqual([SALT.id, BARLEY.id]);
  });
});
