import { join } from 'node:path';
import Database from 'better-sqlite3';
import { applyMigrations } from '#db/migrate';
import { migrationsFolder } from '#db/provider';
import { FDC_SOURCE } from '#lib/foods/fdc-food';
import { fdcPartId, fdcRecordId } from '#lib/foods/fdc-ids';
import { SR28_RELEASE, SR28_SOURCE } from '#lib/foods/read-sr28';
import { searchTokens } from '#lib/foods/search-tokens';
import { words } from '#lib/foods/search-text';
import { closeDatabase } from '#lib/store/client';
import { SHARED_CREATOR_ID } from '#lib/store/creators';
import { folded } from '#lib/store/fold';
import { findFoods } from '#lib/store/reference-search';
import { writeReference } from '#lib/store/write-reference';
import { loadSr28 } from '#seed/load-sr28';
import { oneOf, uniform, whole } from '../support/uniform';
import { ms, quantile, timed } from './timing';

const QUERIES = 400;
/** What a search may take in nineteen of twenty cases. */
const MOST_MS = 100;
const TAKE = 6;
const WORDS = 60_000;

/**
 * Times whole searches, as the pages ask for them, in a database with the reference table and so many made-up
 * products: words typed out, words that are still being typed, one to four of them, frequent and rare alike.
 */
export async function searchMillions(folder: string, foods: number): Promise<void> {
  const file = join(folder, 'search.db');
  applyMigrations(file, migrationsFolder('sqlite'));
  process.env.SLATE_DATABASE = file;
  const at = new Date('2026-01-01T00:00:00Z');
  await writeReference(loadSr28(), { source: SR28_SOURCE, release: SR28_RELEASE, at });
  await closeDatabase();
  const filled = await timed(() => fill(file, foods));
  console.info(`${foods} made-up foods filed in ${(filled.ms / 1000).toFixed(0)} s`);
  const first = await timed(() => findFoods('oat', { take: TAKE }));
  console.info(`the first search of a process takes ${ms(first.ms)} ms, which a start does ahead`);

  const draw = uniform(77);
  const taken: Record<'whole' | 'unfinished', number[]> = { whole: [], unfinished: [] };
  let found = 0;
  for (let at = 0; at < QUERIES; at += 1) {
    const name = madeName(whole(draw, 0, foods - 1));
    const asked = name.split(' ').slice(0, whole(draw, 1, 4));
    const unfinished = at % 2 === 1;
    const last = asked.at(-1) ?? '';
    const query = unfinished
      ? [...asked.slice(0, -1), last.slice(0, whole(draw, 2, Math.max(2, last.length - 1)))].join(
          ' ',
        )
      : asked.join(' ');
    const { ms: took, value } = await timed(() => findFoods(query, { take: TAKE }));
    taken[unfinished ? 'unfinished' : 'whole'].push(took);
    const stems = words(asked.slice(0, unfinished ? -1 : undefined).join(' ')).map(
      ({ stem }) => stem,
    );
    const fits = value.some((food) => {
      const has = new Set(words(food.name).map(({ stem }) => stem));
      return stems.every((stem) => has.has(stem));
    });
    if (fits) found += 1;
  }
  await closeDatabase();
  const row = (samples: readonly number[]) => ({
    'median ms': ms(quantile(samples, 0.5)),
    'p95 ms': ms(quantile(samples, 0.95)),
    'most ms': ms(quantile(samples, 1)),
  });
  const all = [...taken.whole, ...taken.unfinished];
  console.table({ whole: row(taken.whole), unfinished: row(taken.unfinished), all: row(all) });
  console.info(`${found} of ${QUERIES} queries show a food with all their finished words`);
  if (quantile(all, 0.95) > MOST_MS) process.exitCode = 1;
}

const ONSETS = 'b,br,c,cl,d,dr,f,fl,g,gr,h,j,k,l,m,n,p,pl,qu,r,s,sh,st,t,tr,v,w'.split(',');
const VOWELS = 'a,e,i,o,u,ea,oo,ai'.split(',');
const CODAS = ',n,r,l,t,ck,m,nd,sk'.split(',');

/** A made-up word of a place in the vocabulary; words of small places are frequent. */
function madeWord(place: number): string {
  const draw = uniform(place * 7919 + 13);
  const parts = 2 + (place % 2);
  let word = '';
  for (let at = 0; at < parts; at += 1) word += oneOf(draw, ONSETS) + oneOf(draw, VOWELS);
  return word + oneOf(draw, CODAS);
}

/** Three to eight words, as unevenly frequent as words are (Zipf's law: the n-th of them with weight 1/n). */
function madeName(place: number): string {
  const draw = uniform(place + 1);
  const count = whole(draw, 3, 8);
  return Array.from({ length: count }, () => madeWord(Math.floor(WORDS ** draw()))).join(' ');
}

/** Files foods with statements of their own: what is timed is the search, not the import. */
function fill(file: string, foods: number): void {
  const db = new Database(file);
  db.pragma('synchronous = OFF');
  db.pragma('cache_size = -400000');
  const indexes = db
    .prepare<[], { name: string; sql: string }>(
      `SELECT name, sql FROM sqlite_master WHERE type = 'index' AND sql IS NOT NULL AND tbl_name IN ('Food', 'FoodVersion', 'FoodToken')`,
    )
    .all();
  for (const { name } of indexes) db.exec(`DROP INDEX "${name}"`);
  const shared = SHARED_CREATOR_ID;
  const food = db.prepare(
    `INSERT INTO "Food" ("id", "creatorId", "kind", "name", "nameFolded", "section") VALUES (?, '${shared}', 'reference', ?, ?, 'dryGoods')`,
  );
  const version = db.prepare(
    `INSERT INTO "FoodVersion" ("id", "creatorId", "foodId", "seq", "basis", "values", "carbBasis", "state", "rule", "source", "release", "sourceNo", "kept")
     VALUES (?, '${shared}', ?, 1, 'per100g', '{"energyKcal":{"kind":"eq","mantissa":250,"scale":0}}', 'total', 'asIs', 'us', '${FDC_SOURCE}', 'Branded 2025-01-01', ?, '[]')`,
  );
  const token = db.prepare(
    `INSERT INTO "FoodToken" ("id", "creatorId", "token", "foodId", "rank") VALUES (?, '${shared}', ?, ?, ?)`,
  );
  db.exec('BEGIN');
  for (let place = 0; place < foods; place += 1) {
    const key = { by: 'record', fdcId: place + 1 } as const;
    const name = madeName(place);
    const id = fdcPartId('food', key, 0);
    food.run(id, name, folded(name));
    version.run(fdcRecordId('version', place + 1, 0), id, String(place + 1));
    const { tokens, rank } = searchTokens(name, 'product', null);
    tokens.forEach((word, at) => token.run(fdcPartId('token', key, at), word, id, rank));
    if (place % 20_000 === 0) db.exec('COMMIT; BEGIN');
  }
  db.exec('COMMIT');
  for (const { sql } of indexes) db.exec(sql);
  db.prepare(
    `INSERT INTO "ReferenceRelease" ("id", "creatorId", "source", "release", "sha256", "foodCount", "at") VALUES ('made', '${shared}', '${FDC_SOURCE}', 'made', 'made', ?, '2026-01-01T00:00:00.000+00:00')`,
  ).run(foods);
  db.close();
}
