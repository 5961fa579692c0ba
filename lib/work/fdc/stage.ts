import { mkdirSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import type { Tally } from '#lib/work/fdc/faults';

/**
 * The tables of a download side by side in a file of their own while it is imported: the published ones are in no
 * common order and too large for memory. What of them is there, and up to which food they were imported, stands
 * in it too, so that an import that was killed goes on. It is thrown away at the end.
 */
export interface Stage {
  readonly db: Database.Database;
  readonly path: string;
}

const SCHEMA = `
  CREATE TABLE IF NOT EXISTS meta (key TEXT PRIMARY KEY, value TEXT NOT NULL) WITHOUT ROWID;
  CREATE TABLE IF NOT EXISTS food (fdc_id INTEGER PRIMARY KEY, type TEXT, description TEXT, category TEXT, published TEXT);
  CREATE TABLE IF NOT EXISTS branded (fdc_id INTEGER PRIMARY KEY, cells TEXT);
  CREATE TABLE IF NOT EXISTS nutrient (fdc_id INTEGER, cells TEXT);
  CREATE TABLE IF NOT EXISTS portion (fdc_id INTEGER, cells TEXT);
  CREATE TABLE IF NOT EXISTS factor_of (id INTEGER PRIMARY KEY, fdc_id INTEGER);
  CREATE TABLE IF NOT EXISTS factor (id INTEGER, kind TEXT, cells TEXT);
`;

/**
 * Opens the side tables of an import, or begins them. It survives the death of the process, and is made anew
 * where the computer's power failed: SQLite then finds it damaged, or it lacks what it should have.
 */
export function openStage(path: string): Stage {
  mkdirSync(dirname(path), { recursive: true });
  try {
    return begun(path);
  } catch {
    dropFiles(path);
    return begun(path);
  }
}

function begun(path: string): Stage {
  const db = new Database(path);
  try {
    db.pragma('journal_mode = WAL');
    db.pragma('synchronous = OFF');
    db.pragma('cache_size = -32000');
    db.exec(SCHEMA);
    return { db, path };
  } catch (error) {
    db.close();
    throw error;
  }
}

export function closeStage({ db }: Stage): void {
  if (db.open) db.close();
}

export function dropStage(stage: Stage): void {
  closeStage(stage);
  dropFiles(stage.path);
}

function dropFiles(path: string): void {
  for (const end of ['', '-wal', '-shm', '-journal']) rmSync(path + end, { force: true });
}

/** What an import keeps of itself: the tables that are complete, its counts, and the last food that is in the store. */
export interface StageMeta {
  readonly tables: readonly string[];
  readonly tally: Tally | null;
  readonly lastFood: number;
}

export function readMeta({ db }: Stage): StageMeta {
  const value = (key: string) =>
    db.prepare<[string], { value: string }>('SELECT value FROM meta WHERE key = ?').get(key)?.value;
  return {
    tables: JSON.parse(value('tables') ?? '[]') as string[],
    tally: JSON.parse(value('tally') ?? 'null') as Tally | null,
    lastFood: Number(value('lastFood') ?? 0),
  };
}

export function keepMeta({ db }: Stage, meta: Partial<StageMeta>): void {
  const put = db.prepare(
    'INSERT INTO meta (key, value) VALUES (?, ?) ON CONFLICT (key) DO UPDATE SET value = excluded.value',
  );
  for (const [key, value] of Object.entries(meta)) put.run(key, JSON.stringify(value));
}
