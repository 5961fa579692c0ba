import { createReadStream, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import Database from 'better-sqlite3';
import { parse } from 'csv-parse';
import { importFdc } from '#db/import-fdc';
import { closeDatabase } from '#lib/store/client';

/**
 * One side of the comparison in a process of its own, so that its memory is its own:
 * `ours FOLDER` imports the tables into `SLATE_DATABASE`; `bare FOLDER FILLED EMPTY` parses the same tables and
 * inserts the rows that ours has made of them, with statements prepared once. Prints a line of JSON.
 */
export interface SideResult {
  readonly seconds: number;
  readonly peakMb: number;
  readonly rows: number;
}

const TABLES = ['Food', 'FoodVersion', 'FoodMeasure', 'AllergenFact', 'FoodToken'] as const;
/** As many rows as ours commits at once, or about. */
const ROWS_PER_COMMIT = 4000;

async function ours(folder: string): Promise<Omit<SideResult, 'peakMb'>> {
  const begun = performance.now();
  const outcome = await importFdc(folder, {
    at: new Date('2026-01-01T00:00:00Z'),
    tell: () => undefined,
  });
  await closeDatabase();
  return { seconds: (performance.now() - begun) / 1000, rows: outcome.tally.rows };
}

async function bare(
  folder: string,
  filled: string,
  empty: string,
): Promise<Omit<SideResult, 'peakMb'>> {
  const begun = performance.now();
  let rows = 0;
  for (const name of readdirSync(folder)) {
    await pipeline(
      createReadStream(join(folder, name)),
      parse({ bom: true, columns: true }),
      async (records: AsyncIterable<unknown>) => {
        for await (const record of records) if (record) rows += 1;
      },
    );
  }
  let seconds = (performance.now() - begun) / 1000;
  const from = new Database(filled, { readonly: true });
  const db = new Database(empty);
  db.pragma('journal_mode = WAL');
  db.pragma('synchronous = FULL');
  db.pragma('foreign_keys = ON');
  for (const table of TABLES) seconds += insertAll(from, db, table);
  const closing = performance.now();
  db.close();
  seconds += (performance.now() - closing) / 1000;
  from.close();
  return { seconds, rows };
}

/** Seconds that inserting alone takes; what reading the rows to insert takes does not count. */
function insertAll(from: Database.Database, db: Database.Database, table: string): number {
  const select = from.prepare(`SELECT * FROM "${table}"`).raw();
  const places = select.columns().map(() => '?');
  const insert = db.prepare(`INSERT INTO "${table}" VALUES (${places.join(', ')})`);
  const insertSome = db.transaction((rows: readonly unknown[][]) => {
    for (const row of rows) insert.run(...row);
  });
  let seconds = 0;
  let some: unknown[][] = [];
  const put = () => {
    const begun = performance.now();
    insertSome(some);
    seconds += (performance.now() - begun) / 1000;
    some = [];
  };
  for (const row of select.iterate() as IterableIterator<unknown[]>) {
    some.push(row);
    if (some.length === ROWS_PER_COMMIT) put();
  }
  put();
  return seconds;
}

const [side, folder = '', filled = '', empty = ''] = process.argv.slice(2);
const result = side === 'ours' ? await ours(folder) : await bare(folder, filled, empty);
const peakMb = process.resourceUsage().maxRSS / 1000;
console.log(JSON.stringify({ ...result, peakMb } satisfies SideResult));
