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
  readonly cpuSeconds: number;
  readonly peakMb: number;
  readonly rows: number;
}

const TABLES = ['Food', 'FoodVersion', 'FoodMeasure', 'AllergenFact', 'FoodToken'] as const;
/** As many rows as ours commits at once, or about. */
const ROWS_PER_COMMIT = 4000;

/** What has been timed so far: by the clock, and what the process itself has worked. */
const spent = { seconds: 0, cpuSeconds: 0 };

async function timed<T>(work: () => T | Promise<T>): Promise<T> {
  const begun = performance.now();
  const cpu = process.cpuUsage();
  const value = await work();
  const { user, system } = process.cpuUsage(cpu);
  spent.seconds += (performance.now() - begun) / 1000;
  spent.cpuSeconds += (user + system) / 1e6;
  return value;
}

async function ours(folder: string): Promise<number> {
  return timed(async () => {
    const at = new Date('2026-01-01T00:00:00Z');
    const outcome = await importFdc(folder, { at, tell: () => undefined });
    await closeDatabase();
    return outcome.tally.rows;
  });
}

async function bare(folder: string, filled: string, empty: string): Promise<number> {
  let rows = 0;
  for (const name of readdirSync(folder)) {
    await timed(() =>
      pipeline(
        createReadStream(join(folder, name)),
        parse({ bom: true, columns: true }),
        async (records: AsyncIterable<unknown>) => {
          for await (const record of records) if (record) rows += 1;
        },
      ),
    );
  }
  const from = new Database(filled, { readonly: true });
  const db = new Database(empty);
  db.pragma('journal_mode = WAL');
  db.pragma('synchronous = FULL');
  db.pragma('foreign_keys = ON');
  for (const table of TABLES) await insertAll(from, db, table);
  await timed(() => db.close());
  from.close();
  return rows;
}

/** Times inserting alone; what reading the rows to insert takes does not count. */
async function insertAll(
  from: Database.Database,
  db: Database.Database,
  table: string,
): Promise<void> {
  const select = from.prepare(`SELECT * FROM "${table}"`).raw();
  const places = select.columns().map(() => '?');
  const insert = db.prepare(`INSERT INTO "${table}" VALUES (${places.join(', ')})`);
  const insertSome = db.transaction((rows: readonly unknown[][]) => {
    for (const row of rows) insert.run(...row);
  });
  let some: unknown[][] = [];
  for (const row of select.iterate() as IterableIterator<unknown[]>) {
    some.push(row);
    if (some.length < ROWS_PER_COMMIT) continue;
    await timed(() => insertSome(some));
    some = [];
  }
  await timed(() => insertSome(some));
}

const [side, folder = '', filled = '', empty = ''] = process.argv.slice(2);
const rows = side === 'ours' ? await ours(folder) : await bare(folder, filled, empty);
const peakMb = process.resourceUsage().maxRSS / 1000;
console.log(JSON.stringify({ ...spent, rows, peakMb } satisfies SideResult));
