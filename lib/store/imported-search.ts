import 'server-only';
import { FDC_SOURCE } from '#lib/foods/fdc-food';
import { readGtin } from '#lib/foods/gtin';
import { buildSearchIndex, queryWords, searchFoods, type SearchHit } from '#lib/foods/search-index';
import { prepareSynonyms, searchDocument } from '#lib/foods/search-document';
import type { SearchSynonym } from '#lib/foods/search-synonyms';
import { gtinToken, TOKEN_RANKS } from '#lib/foods/search-tokens';
import { sectionSchema } from '#lib/foods/food';
import { buildVocabulary, type Vocabulary } from '#lib/foods/vocabulary';
import { database } from '#lib/store/client';
import { SHARED_CREATOR_ID } from '#lib/store/creators';
import { databaseFile } from '#lib/store/database-file';
import { foodOfGtin, importedCandidates, type Candidate } from '#lib/store/imported-candidates';
import { ALIVE } from '#lib/store/load';
import { RawSql } from '#lib/store/raw-sql';

interface Held {
  readonly key: string;
  readonly vocabulary: Promise<Vocabulary>;
}
const held = globalThis as typeof globalThis & { slateVocabulary?: Held };

/** What imported foods stand behind the reference table by, so that equal matches come from there. */
const BEHIND_TABLE = 0.05;

/**
 * The imported foods that best match what was typed so far, best first: found by the inverted index in the
 * database, ranked as the reference table is. The number under a barcode gives its product. Words are not looked
 * for with typos here. `products: false` leaves foods with a brand out.
 */
export async function searchImported(
  query: string,
  options: {
    readonly take: number;
    readonly products: boolean;
    readonly synonyms: readonly SearchSynonym[];
  },
): Promise<readonly SearchHit[]> {
  const { take, products, synonyms } = options;
  const vocabulary = await importedVocabulary();
  if (vocabulary.words.length === 0) return [];
  const gtin = readGtin(query);
  if (gtin.kind === 'right' && products) {
    const foodId = await foodOfGtin(gtin.gtin14);
    const [entry] = foodId ? await entriesOf([{ foodId, rank: TOKEN_RANKS.product }]) : [];
    if (entry) return [{ entry, document: searchDocument(entry, prepareSynonyms([])), score: 1 }];
  }
  const candidates = await importedCandidates(queryWords(query), vocabulary, { products });
  const index = buildSearchIndex(await entriesOf(candidates), synonyms);
  return searchFoods(index, query, { take }).map((hit) => ({
    ...hit,
    score: hit.score - BEHIND_TABLE,
  }));
}

async function entriesOf(candidates: readonly Candidate[]) {
  const foods = await database().food.findMany({
    where: { id: { in: candidates.map(({ foodId }) => foodId) }, ...ALIVE },
    select: { id: true, name: true, section: true },
    orderBy: { id: 'asc' },
  });
  const rankOf = new Map(candidates.map(({ foodId, rank }) => [foodId, rank]));
  return foods.map(({ id, name, section }) => ({
    id,
    name,
    section: sectionSchema.parse(section),
    sourceNo: '',
    product: (rankOf.get(id) ?? 0) >= TOKEN_RANKS.product,
  }));
}

/** Counted once per process and imported release; what an import still brings in is found once it is done. */
async function importedVocabulary(): Promise<Vocabulary> {
  const releases = await database().referenceRelease.findMany({
    where: { ...ALIVE, source: FDC_SOURCE },
    select: { id: true },
    orderBy: { id: 'asc' },
  });
  const key = [databaseFile(process.env), ...releases.map(({ id }) => id)].join(' ');
  if (held.slateVocabulary?.key !== key) {
    const vocabulary =
      releases.length === 0 ? Promise.resolve(buildVocabulary(new Map())) : countWords();
    held.slateVocabulary = { key, vocabulary };
    vocabulary.catch(() => delete held.slateVocabulary);
  }
  return held.slateVocabulary.vocabulary;
}

/** First letters of words, in each of which few enough begin that counting them holds up nobody. */
const BEGINNINGS = [...'0123456789', ...'abcdefghijklmnopqrstuvwxyz'];

async function countWords(): Promise<Vocabulary> {
  const counts = new Map<string, number>();
  for (const [place, from] of BEGINNINGS.entries()) {
    const sql = new RawSql();
    const to = BEGINNINGS[place + 1] ?? 'zzzzzz';
    const rows = await sql.rows<{ token: string; n: number | bigint }>(
      database(),
      `SELECT "token", count(*) AS "n" FROM "FoodToken" WHERE "creatorId" = ${sql.value(SHARED_CREATOR_ID)} ` +
        `AND "token" >= ${sql.value(from)} AND "token" < ${sql.value(to)} ` +
        `AND "token" NOT LIKE ${sql.value(gtinToken('%'))} GROUP BY "token"`,
    );
    for (const { token, n } of rows) counts.set(token, Number(n));
  }
  return buildVocabulary(counts);
}
