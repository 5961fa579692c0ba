import { gtinToken, TOKEN_RANKS } from '#lib/foods/search-tokens';
import { beginningWith, type Vocabulary } from '#lib/foods/vocabulary';
import type { Word } from '#lib/foods/search-text';
import { database } from '#lib/store/client';
import { SHARED_CREATOR_ID } from '#lib/store/creators';
import { RawSql } from '#lib/store/raw-sql';

/** A food that has the words of a query. */
export interface Candidate {
  readonly foodId: string;
  readonly rank: number;
}

/** Words that an unfinished one may become. */
const FINISHED = 8;
/** Foods that are taken per way to finish a word, and in all; they are then ranked by their whole names. */
const TAKEN = 60;
const TAKEN_IN_ALL = 240;
/** Entries of the rarest word that are looked at, times ways to finish the others: bounds the time of a search. */
const LOOKED_AT = 24_000;

/** A typed word as the words of the index that it may be, and how many entries those have. */
interface Asked {
  readonly tokens: readonly string[];
  readonly entries: number;
}

/**
 * Foods of the inverted index that have all words of a query, the last of which may be unfinished. All words of a
 * food have one rank, so the entries of two words come in one order and are compared place by place, from the
 * rarest word on, best rank first. For words that are all frequent only the best ranked are looked at.
 */
export async function importedCandidates(
  typed: readonly Word[],
  vocabulary: Vocabulary,
  { products }: { readonly products: boolean },
): Promise<readonly Candidate[]> {
  const asked = typed.map((word, at) => askedFor(word, at === typed.length - 1, vocabulary));
  const found = asked.filter(({ tokens }) => tokens.length > 0);
  // One of two or three words may be wrong, as in the search of the tables.
  if (found.length === 0 || asked.length - found.length > allowed(asked.length)) return [];
  const [rarest, ...others] = [...found].sort((a, b) => a.entries - b.entries);
  if (!rarest) return [];
  const lists = await Promise.all(rarest.tokens.map((token) => withAll(token, others, products)));
  const byId = new Map(lists.flat().map((each) => [each.foodId, each]));
  return [...byId.values()].sort((a, b) => a.rank - b.rank).slice(0, TAKEN_IN_ALL);
}

function allowed(words: number): number {
  if (words < 2) return 0;
  return words < 4 ? 1 : 2;
}

function askedFor({ stem, written }: Word, isLast: boolean, vocabulary: Vocabulary): Asked {
  const whole = vocabulary.counts.has(stem) ? [stem] : [];
  const finished = isLast ? beginningWith(vocabulary, written, FINISHED) : [];
  const tokens = [...new Set([...whole, ...finished])];
  const entries = tokens.reduce((sum, token) => sum + (vocabulary.counts.get(token) ?? 0), 0);
  return { tokens, entries };
}

async function withAll(
  token: string,
  others: readonly Asked[],
  products: boolean,
): Promise<readonly Candidate[]> {
  const sql = new RawSql();
  const ways = others.reduce((sum, { tokens }) => sum + tokens.length, 0);
  const most = Math.ceil(LOOKED_AT / Math.max(1, ways));
  const ranks = products ? '' : ` AND "rank" < ${TOKEN_RANKS.product}`;
  const entries =
    `SELECT "rank", "foodId" FROM "FoodToken" WHERE "creatorId" = ${sql.value(SHARED_CREATOR_ID)} ` +
    `AND "token" = ${sql.value(token)}${ranks} ORDER BY "rank", "foodId" ` +
    `LIMIT ${others.length === 0 ? TAKEN : most}`;
  const each = others.map(
    ({ tokens }) =>
      `EXISTS (SELECT 1 FROM "FoodToken" o WHERE o."creatorId" = ${sql.value(SHARED_CREATOR_ID)} ` +
      `AND o."token" IN (${sql.values(tokens)}) AND o."rank" = e."rank" AND o."foodId" = e."foodId")`,
  );
  const where = each.length > 0 ? ` WHERE ${each.join(' AND ')}` : '';
  return sql.rows<Candidate>(
    database(),
    `SELECT e."foodId" AS "foodId", e."rank" AS "rank" FROM (${entries}) e${where} LIMIT ${TAKEN}`,
  );
}

/** The food of a barcode number in fourteen digits; none if it was not imported. */
export async function foodOfGtin(gtin14: string): Promise<string | null> {
  const row = await database().foodToken.findFirst({
    where: { creatorId: SHARED_CREATOR_ID, token: gtinToken(gtin14) },
    select: { foodId: true },
  });
  return row?.foodId ?? null;
}
