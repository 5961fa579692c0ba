import 'server-only';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { FDC_SOURCE } from '#lib/foods/fdc-food';
import type { Food } from '#lib/foods/food';
import type { KnownWords } from '#lib/foods/match-food';
import {
  buildSearchIndex,
  namedNumbers,
  searchFoods,
  type SearchHit,
  type SearchIndex,
} from '#lib/foods/search-index';
import { searchSynonymsSchema, type SearchSynonym } from '#lib/foods/search-synonyms';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { databaseFile, projectRoot } from '#lib/store/database-file';
import { searchImported } from '#lib/store/imported-search';
import { ALIVE } from '#lib/store/load';
import { readFoodsById, readOwnFoodEntries, readReferenceFoods } from '#lib/store/read-foods';

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
  /** False leaves imported products out: what carries a brand is meant only by who looks for it. */
  readonly products?: boolean;
}

/**
 * The foods that best match what was typed so far, best first: the creator's own, those of the reference table
 * and imported ones. The index of the table is made once per process and database, at the first question (about
 * half a second); own foods are few and read each time, so that a new one is found at once; imported ones may be
 * millions and are looked up in the database.
 */
export async function findFoods(query: string, options: FindOptions): Promise<readonly Food[]> {
  const best = await findHits(query, options);
  return readFoodsById(
    best.map(({ entry }) => entry.id),
    options.creatorId ?? DEFAULT_CREATOR_ID,
  );
}

/** The same foods as the search knows them. `whole`: the last word is finished too. */
export async function findHits(
  query: string,
  options: FindOptions & { readonly whole?: boolean },
): Promise<readonly SearchHit[]> {
  const { take, creatorId = DEFAULT_CREATOR_ID, referenceOnly = false, products = true } = options;
  const { whole = false } = options;
  const own = referenceOnly ? [] : await readOwnFoodEntries(creatorId);
  const hits = [
    ...searchFoods(buildSearchIndex(own, readSynonyms()), query, { take, whole }),
    ...searchFoods(await referenceIndex(), query, { take, whole }),
    ...(await searchImported(query, { take, products, synonyms: readSynonyms() })),
  ];
  return hits.sort((a, b) => b.score - a.score).slice(0, take);
}

/** What the reference table and the synonyms know of words. */
export async function knownWords(): Promise<KnownWords> {
  const index = await referenceIndex();
  return {
    isKnown: (stem) => index.stems.has(stem),
    named: (key) => namedNumbers(index, key),
  };
}

async function referenceIndex(): Promise<SearchIndex> {
  const releases = await database().referenceRelease.findMany({
    where: { ...ALIVE, source: { not: FDC_SOURCE } },
    select: { id: true },
    orderBy: { id: 'asc' },
  });
  const key = [databaseFile(process.env), ...releases.map(({ id }) => id)].join(' ');
  if (held.slateReferenceIndex?.key !== key) {
    const index = readReferenceFoods().then((foods) => buildSearchIndex(foods, readSynonyms()));
    held.slateReferenceIndex = { key, index };
  }
  return held.slateReferenceIndex.index;
}

let synonyms: readonly SearchSynonym[] | null = null;

function readSynonyms(): readonly SearchSynonym[] {
  synonyms ??= searchSynonymsSchema.parse(
    JSON.parse(readFileSync(join(projectRoot(), 'seed', 'synonyms.json'), 'utf8')),
  ).synonyms;
  return synonyms;
}
