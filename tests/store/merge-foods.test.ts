import { describe, expect, it } from 'vitest';
import { fileWithMerged } from '#lib/episode/merge-in-file';
import type { EpisodeFile } from '#lib/episode/schema';
import { stableJson } from '#lib/episode/stable-json';
import { dishChanges } from '#lib/figures/dish-changes';
import { lockStanding } from '#lib/lock/lock-standing';
import { takeLock } from '#lib/lock/numbers-lock';
import type { Result } from '#lib/result';
import { database } from '#lib/store/client';
import type { Edit, Written } from '#lib/store/command';
import { DEFAULT_CREATOR_ID, SHARED_CREATOR_ID } from '#lib/store/creators';
import { foodRows } from '#lib/store/food-rows';
import { FOLLOWING_COLUMNS, rowsNaming } from '#lib/store/foods-named';
import { importEpisodeFile } from '#lib/store/import-file';
import { matchFoods, rememberMatch } from '#lib/store/match-foods';
import { mergeEdits, readMerge } from '#lib/store/merge-foods';
import { readEpisodeFile } from '#lib/store/read-episode';
import { countFoodUses, readEpisodesUsing, readFoodUses } from '#lib/store/read-food-uses';
import { readFoodsInUse } from '#lib/store/read-foods-in-use';
import { ROWS } from '#lib/store/rows';
import { undo } from '#lib/store/undo';
import { write } from '#lib/store/write';
import { demoFile } from '../ui/page-support';
import { AT, withFreshDatabase } from './database';
import { BARLEY } from './fixture';

withFreshDatabase();

const BY = { actor: 'me', at: AT };
const act = (label: string, edits: readonly Edit[]) => write({ ...BY, label, edits });

function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

/** Why something was refused, by its codes. */
const codes = (result: Result<unknown>) =>
  result.ok ? [] : result.problems.map(({ code }) => code);

async function fileOf(episodeId: string): Promise<EpisodeFile> {
  const file = await readEpisodeFile(episodeId, AT.toISOString());
  if (!file) throw new Error(`no episode ${episodeId}`);
  return file;
}

const merge = async (from: string, into: string): Promise<Written> =>
  value(await act('Merge', mergeEdits(value(await readMerge(from, into)))));

/** A food of a published table. */
async function publishedFood(): Promise<string> {
  const row = foodRows(BARLEY, AT);
  const edits: Edit[] = [
    { op: 'create', entity: 'Food', row: { ...row.Food, id: 'published' } },
    { op: 'create', entity: 'FoodVersion', row: { ...row.FoodVersion, foodId: 'published' } },
  ];
  value(await write({ ...BY, label: 'Table', edits, creatorId: SHARED_CREATOR_ID }));
  return 'published';
}

const ownFoods = async () => (await readFoodsInUse({ take: 200 })).rows.filter(({ own }) => own);

/** The demo with its own foods, and two of them that a dish uses. */
async function brought() {
  const { episodeId } = value(await importEpisodeFile(demoFile(), AT));
  const file = await fileOf(episodeId);
  const used = file.episode.segments.flatMap(
    ({ recipe }) => recipe?.lines.flatMap(({ foodId }) => foodId ?? []) ?? [],
  );
  const own = (await ownFoods()).filter(({ id }) => used.includes(id));
  const [first, second] = own;
  if (!first || !second) throw new Error('the demo uses no two own foods');
  return { episodeId, file, from: first.id, into: second.id };
}

describe('merging two foods', () => {
  it('moves all that names one to the other, and one undo brings every byte back', async () => {
    const { episodeId, from, into } = await brought();
    const edits: Edit[] = [
      rememberMatch('my own words', from, AT),
      {
        op: 'create',
        entity: 'AllergenFact',
        row: {
          id: 'fact-denied',
          foodId: from,
          position: 90,
          allergen: 'lupin',
          standing: 'denied',
          reason: '',
          at: AT,
        },
      },
      {
        op: 'create',
        entity: 'AllergenFact',
        row: {
          id: 'fact-may',
          foodId: from,
          position: 91,
          allergen: 'molluscs',
          standing: 'mayContain',
          reason: '',
          at: AT,
        },
      },
      {
        op: 'create',
        entity: 'StockLot',
        row: { id: 'lot-of-from', foodId: from, place: '', openedOn: null, useBy: null },
      },
    ];
    value(await act('Prepare', edits));
    const before = stableJson(await fileOf(episodeId));
    const named = (await rowsNaming(from, DEFAULT_CREATOR_ID)).length;
    expect(named).toBeGreaterThan(2);

    const { groupId } = await merge(from, into);
    expect(await rowsNaming(from, DEFAULT_CREATOR_ID)).toEqual([]);
    expect(await countFoodUses(from)).toBe(0);
    expect((await matchFoods(['my own words']))[0]?.food.id).toBe(into);
    const merged = await fileOf(episodeId);
    expect(merged.foods.map(({ id }) => id)).not.toContain(from);
    expect(merged.stock.filter(({ foodId }) => foodId === into).map(({ id }) => id)).toContain(
      'lot-of-from',
    );
    const facts = merged.foods.find(({ id }) => id === into)?.allergens ?? [];
    expect(facts.map(({ id }) => id)).toContain('fact-may');
    // A denial would hide what the other's label declares.
    expect(facts.map(({ id }) => id)).not.toContain('fact-denied');
    const own = (await ownFoods()).map(({ id }) => id);
    expect(own).toContain(into);
    expect(own).not.toContain(from);

    value(await undo(groupId, BY));
    expect(stableJson(await fileOf(episodeId))).toBe(before);
    expect(await rowsNaming(from, DEFAULT_CREATOR_ID)).toHaveLength(named);
    expect((await matchFoods(['my own words']))[0]?.food.id).toBe(from);
  });

  it('names the dishes that come out otherwise before it happens, with the numbers they then have', async () => {
    const { episodeId, file, from, into } = await brought();
    const found = value(await readMerge(from, into));
    const packs = [...found.from.packs, ...found.into.packs];
    const foreseen = fileWithMerged(file, found.from.food, found.into.food, packs);
    const changes = dishChanges(file, foreseen);
    expect(changes.length).toBeGreaterThan(0);
    expect(dishChanges(file, file)).toEqual([]);
    expect((await readEpisodesUsing([from, into])).map(({ id }) => id)).toContain(episodeId);

    const { groupId } = await merge(from, into);
    expect(dishChanges(foreseen, await fileOf(episodeId))).toEqual([]);
    value(await undo(groupId, BY));
  });

  it('leaves locked numbers as they were, and says that they do not hold any more', async () => {
    const { episodeId, file, from, into } = await brought();
    const { snapshot, sha256 } = takeLock(file);
    const row = {
      id: `lock-${episodeId}`,
      episodeId,
      seq: 1,
      snapshot,
      sha256,
      schemaVersion: 1,
      engineVersion: 'e',
      at: AT,
    };
    value(await act('Lock', [{ op: 'create', entity: 'NumbersLock', row }]));
    expect((await readEpisodesUsing([from])).find(({ id }) => id === episodeId)?.locked).toBe(true);
    const { groupId } = await merge(from, into);
    const kept = await database().numbersLock.findUnique({ where: { id: row.id } });
    expect(kept).toMatchObject({ snapshot, sha256, rev: 1 });
    expect(lockStanding(snapshot, await fileOf(episodeId))).toBe('broken');
    value(await undo(groupId, BY));
    expect(lockStanding(snapshot, await fileOf(episodeId))).toBe('locked');
  });

  it('is refused for what makes no sense', async () => {
    const { from, into } = await brought();
    const published = await publishedFood();
    const third = (await ownFoods()).find(({ id }) => id !== from && id !== into);
    const other = third?.id ?? '';
    expect(codes(await readMerge(from, from))).toEqual(['itself']);
    expect(codes(await readMerge(from, 'nowhere'))).toEqual(['gone']);
    expect(codes(await readMerge(published, from))).toEqual(['published']);
    expect((await readMerge(from, published)).ok).toBe(true);

    const { groupId } = await merge(from, into);
    expect(codes(await readMerge(into, from))).toEqual(['ring']);
    expect(codes(await readMerge(other, from))).toEqual(['merged']);
    expect(codes(await readMerge(from, other))).toEqual(['merged']);
    expect(codes(await readMerge(from, into))).toEqual(['merged']);
    // The other food goes on into a third: the first follows it there.
    const further = await merge(into, other);
    expect((await database().food.findUnique({ where: { id: from } }))?.mergedIntoId).toBe(other);
    expect(codes(await undo(groupId, BY))).toEqual(['conflict']);
    value(await undo(further.groupId, BY));
    value(await undo(groupId, BY));
    expect((await database().food.findUnique({ where: { id: from } }))?.mergedIntoId).toBeNull();
  });

  it('keeps one of two that would close a ring, whichever was asked first', async () => {
    const { from, into } = await brought();
    const [one, other] = [
      mergeEdits(value(await readMerge(from, into))),
      mergeEdits(value(await readMerge(into, from))),
    ];
    const first = value(await act('Merge', one.slice(0, 1)));
    const second = await act('Merge', other.slice(0, 1));
    expect(codes(second)).toEqual(['ring']);
    value(await undo(first.groupId, BY));
  });

  it('a line that could be either of two that are one is that one', async () => {
    const { episodeId, file, from, into } = await brought();
    const line = file.episode.segments
      .flatMap(({ recipe }) => recipe?.lines ?? [])
      .find(({ foodId }) => foodId === from);
    if (!line) throw new Error('no ingredient of it');
    const row = await database().recipeLine.findUniqueOrThrow({ where: { id: line.id } });
    const patch = { orFoodId: into };
    value(
      await act('Either', [
        { op: 'update', entity: 'RecipeLine', id: line.id, rev: row.rev, patch },
      ]),
    );
    const uses = (await readFoodUses(into, { take: 200 })).rows;
    expect(uses.find(({ id }) => id === line.id)?.how).toBe('either');
    const { groupId } = await merge(from, into);
    const after = await database().recipeLine.findUniqueOrThrow({ where: { id: line.id } });
    expect([after.foodId, after.orFoodId]).toEqual([into, null]);
    value(await undo(groupId, BY));
    const back = (await fileOf(episodeId)).episode.segments
      .flatMap(({ recipe }) => recipe?.lines ?? [])
      .find(({ id }) => id === line.id);
    expect([back?.foodId, back?.orFoodId]).toEqual([from, into]);
  });

  it('knows every column that names a food', () => {
    const naming = Object.entries(ROWS).flatMap(([entity, { shape }]) =>
      Object.keys(shape)
        .filter((column) => /^(orFoodId|foodId|witnessId|mergedIntoId)$/.test(column))
        .map((column) => `${entity}.${column}`),
    );
    // Readings of a label stay with it; its measures, cooked weights and allergens follow by a rule of their own.
    // What a device entered is never changed.
    const apart = [
      'Tick.foodId',
      'FoodVersion.foodId',
      'YieldObservation.foodId',
      'AllergenFact.foodId',
      'FoodToken.foodId',
    ];
    const following = FOLLOWING_COLUMNS.map(([entity, column]) => `${entity}.${column}`);
    expect([...following, ...apart].sort()).toEqual(naming.sort());
  });
});

describe('where a food is used', () => {
  it('has each ingredient with its dish and episode, in pages', async () => {
    const { episodeId, file, from } = await brought();
    const lines = file.episode.segments.flatMap(
      ({ id, recipe }) =>
        recipe?.lines.filter(({ foodId }) => foodId === from).map((line) => [id, line.id]) ?? [],
    );
    const all = (await readFoodUses(from, { take: 200 })).rows;
    const here = all.filter(({ place }) => place?.episodeId === episodeId);
    expect(here.map(({ id, place }) => [place?.segmentId, id]).sort()).toEqual(lines.sort());
    expect(await countFoodUses(from)).toBe(all.length);
    const paged: string[] = [];
    for (let after: string | undefined; ;) {
      const page = await readFoodUses(from, { take: 1, after });
      paged.push(...page.rows.map(({ id }) => id));
      if (page.next === null) break;
      after = page.next;
    }
    expect(paged).toEqual(all.map(({ id }) => id));
    expect(await readFoodUses(from, {}, 'someone-else')).toEqual({ rows: [], next: null });
  });
});
