import 'server-only';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { foodSchema, sectionSchema, type Food } from '#lib/foods/food';
import {
  buildSearchIndex,
  searchFoods,
  type SearchHit,
  type SearchIndex,
} from '#lib/foods/search-index';
import { searchSynonymsSchema, type SearchSynonym } from '#lib/foods/search-synonyms';
import { database, inTransaction } from '#lib/store/client';
import { DEFAULT_CREATOR_ID, SHARED_CREATOR_ID } from '#lib/store/creators';
import { databaseFile, projectRoot } from '#lib/store/database-file';
import { foodFrom } from '#lib/store/from-rows';
import { ALIVE, loadFoods } from '#lib/store/load';

/** The index of the published tables, and which database and releases it was made from. */
interface Held {
  readonly key: string;
  readonly index: Promise<SearchIndex>;
}

const held = globalThis as typeof globalThis & { slateReferenceIndex?: Held };

export interface FindOptions {
  readonly take: number;
  readonly creatorId?: string;
  /** Leaves the creator's own foods out. */
  readonly referenceOnly?: boolean;
}

/**
 * The foods that best match what was typed so far, best first: the creator's own and those of the published
 * tables. The index of the tables is made once per process and database, at the first question (about half
 * a second); own foods are few and read each time, so that a new one is found at once.
 */
export async function findFoods(query: string, options: FindOptions): Promise<Food[]> {
  const { take, creatorId = DEFAULT_CREATOR_ID, referenceOnly = false } = options;
  const hits = [
    ...searchFoods(await referenceIndex(), query, { take }),
    ...(referenceOnly ? [] : searchFoods(await ownIndex(creatorId), query, { take })),
  ];
  const best = hits.sort((a, b) => b.score - a.score).slice(0, take);
  return inOrder(best, creatorId);
}

async function inOrder(hits: readonly SearchHit[], creatorId: string): Promise<Food[]> {
  const ids = hits.map(({ entry }) => entry.id);
  const foods = await inTransaction((tx) => loadFoods(tx, ids, creatorId));
  const byId = new Map(foods.map((food) => [food.id, food]));
  return ids.flatMap((id) => {
    const food = byId.get(id);
    return food ? [foodSchema.parse(foodFrom(food))] : [];
  });
}

async function referenceIndex(): Promise<SearchIndex> {
  const releases = await database().referenceRelease.findMany({
    where: ALIVE,
    select: { id: true },
    orderBy: { id: 'asc' },
  });
  const key = [databaseFile(process.env), ...releases.map(({ id }) => id)].join(' ');
  if (held.slateReferenceIndex?.key !== key) {
    held.slateReferenceIndex = { key, index: buildReferenceIndex() };
  }
  return held.slateReferenceIndex.index;
}

async function buildReferenceIndex(): Promise<SearchIndex> {
  const versions = await database().foodVersion.findMany({
    where: { ...ALIVE, creatorId: SHARED_CREATOR_ID, food: { ...ALIVE, mergedIntoId: null } },
    select: { foodId: true, sourceNo: true, food: { select: { name: true, section: true } } },
    orderBy: [{ sourceNo: 'asc' }, { foodId: 'asc' }, { seq: 'desc' }],
  });
  const seen = new Set<string>();
  const entries = versions.flatMap(({ foodId, sourceNo, food }) => {
    if (seen.has(foodId)) return [];
    seen.add(foodId);
    return [{ id: foodId, name: food.name, sourceNo, section: sectionSchema.parse(food.section) }];
  });
  return buildSearchIndex(entries, readSynonyms());
}

async function ownIndex(creatorId: string): Promise<SearchIndex> {
  const foods = await database().food.findMany({
    where: { ...ALIVE, creatorId, mergedIntoId: null },
    select: { id: true, name: true, section: true },
    orderBy: [{ nameFolded: 'asc' }, { id: 'asc' }],
    take: MOST_OWN,
  });
  const entries = foods.map(({ id, name, section }) => {
    return { id, name, section: sectionSchema.parse(section), sourceNo: '', own: true };
  });
  return buildSearchIndex(entries, readSynonyms());
}

/** So many own foods are searched; a person has tens, a studio some thousands. */
const MOST_OWN = 5000;

let synonyms: readonly SearchSynonym[] | null = null;

function readSynonyms(): readonly SearchSynonym[] {
  synonyms ??= searchSynonymsSchema.parse(
    JSON.parse(readFileSync(join(projectRoot(), 'seed', 'synonyms.json'), 'utf8')),
  ).synonyms;
  return synonyms;
}
