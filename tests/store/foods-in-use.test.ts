import { describe, expect, it } from 'vitest';
import { database } from '#lib/store/client';
import type { Edit } from '#lib/store/command';
import { SHARED_CREATOR_ID } from '#lib/store/creators';
import { foodRows } from '#lib/store/food-rows';
import { importEpisodeFile } from '#lib/store/import-file';
import { readFoodsInUse } from '#lib/store/read-foods-in-use';
import { write } from '#lib/store/write';
import { AT, withFreshDatabase } from './database';
import { BARLEY, FILE } from './fixture';

withFreshDatabase();

async function act(edits: readonly Edit[], creatorId?: string): Promise<void> {
  const by = creatorId === undefined ? {} : { creatorId };
  const result = await write({ actor: 'me', label: 'Act', at: AT, edits, ...by });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
}

const food = (id: string, name: string): Edit[] => {
  const { Food, FoodVersion } = foodRows({ ...BARLEY, id, name }, AT);
  return [
    { op: 'create', entity: 'Food', row: Food },
    { op: 'create', entity: 'FoodVersion', row: { ...FoodVersion, id: `v-${id}`, foodId: id } },
  ];
};

const names = async (of: Parameters<typeof readFoodsInUse>[0] = {}) =>
  (await readFoodsInUse({ take: 200, ...of })).rows.map(({ name }) => name);

describe('foods in use', () => {
  it('are the own ones, and those of a table that a dish, a lot, a pack or an answer names', async () => {
    const brought = await importEpisodeFile(FILE, AT);
    if (!brought.ok) throw new Error(JSON.stringify(brought.problems));
    const own = await names();
    expect(own).toEqual([...own].sort((a, b) => (a.toLowerCase() < b.toLowerCase() ? -1 : 1)));
    expect(own).toContain('Quay cheese, grated');
    const tables = ['by-line', 'by-or', 'by-lot', 'by-pack', 'by-answer', 'by-nothing'];
    await act(
      tables.flatMap((id) => food(id, `Table food 100% ${id}`)),
      SHARED_CREATOR_ID,
    );
    expect(await names()).toEqual(own);
    const lines = await database().recipeLine.findMany({ take: 2, orderBy: { id: 'asc' } });
    const [first, second] = lines;
    if (!first || !second) throw new Error('no ingredients');
    await act([
      {
        op: 'update',
        entity: 'RecipeLine',
        id: first.id,
        rev: first.rev,
        patch: { foodId: 'by-line' },
      },
      {
        op: 'update',
        entity: 'RecipeLine',
        id: second.id,
        rev: second.rev,
        patch: { orFoodId: 'by-or' },
      },
      {
        op: 'create',
        entity: 'StockLot',
        row: { id: 'l', foodId: 'by-lot', place: '', openedOn: null, useBy: null },
      },
      {
        op: 'create',
        entity: 'Pack',
        row: {
          id: 'p',
          foodId: 'by-pack',
          name: 'Bag',
          netMg: 1000,
          netMl: null,
          drainedMg: null,
          gtin: null,
          stepMg: null,
        },
      },
      {
        op: 'create',
        entity: 'PantryFood',
        row: {
          id: 'a',
          foodId: 'by-answer',
          answer: 'none',
          answeredOn: '2026-05-02',
          remark: '',
          openedDays: null,
          openedSource: '',
        },
      },
    ]);
    const added = (await names()).filter((name) => name.startsWith('Table food'));
    expect(added).toEqual(
      ['by-answer', 'by-line', 'by-lot', 'by-or', 'by-pack'].map((id) => `Table food 100% ${id}`),
    );
    const rows = (await readFoodsInUse({ words: 'table', take: 200 })).rows;
    const of = (id: string) => rows.find((row) => row.id === id);
    expect(of('by-answer')?.said?.answer).toEqual({ is: 'none', on: '2026-05-02', remark: '' });
    expect(of('by-pack')?.packs).toMatchObject([{ name: 'Bag', netMg: 1000 }]);
    expect(of('by-lot')?.lots).toMatchObject([{ id: 'l', moves: [] }]);
  });

  it('are found by all words of their name, as they are written, whatever the marks', async () => {
    expect(await names({ words: 'FOOD table by-li' })).toEqual(['Table food 100% by-line']);
    expect(await names({ words: '100%' })).toHaveLength(5);
    expect(await names({ words: '100_' })).toEqual([]);
    expect(await names({ words: "'; DROP TABLE" })).toEqual([]);
    expect(await names({ words: '\\' })).toEqual([]);
  });

  it('come in pages, each food once; one that is part of another is left out', async () => {
    const all = (await readFoodsInUse({ take: 200 })).rows.map(({ id }) => id);
    for (const take of [1, 3]) {
      const seen: string[] = [];
      for (let after: string | undefined; ;) {
        const page = await readFoodsInUse({ take, after });
        seen.push(...page.rows.map(({ id }) => id));
        if (page.next === null) break;
        after = page.next;
      }
      expect(seen).toEqual(all);
    }
    await act([...food('twice', 'Quay cheese again')]);
    expect(await names({ words: 'again' })).toHaveLength(1);
    const cheese = await database().food.findFirstOrThrow({
      where: { name: 'Quay cheese, grated' },
    });
    const patch = { mergedIntoId: cheese.id };
    await act([{ op: 'update', entity: 'Food', id: 'twice', rev: 1, patch }]);
    expect(await names({ words: 'again' })).toEqual([]);
    expect((await readFoodsInUse({}, 'someone-else')).rows).toEqual([]);
  });
});
