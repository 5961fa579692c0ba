import { randomUUID } from 'node:crypto';
import { existsSync, mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import {
  missingMigrations,
  notApplied,
  readMigrations,
  RECORDED_SQL,
  type Migration,
  type Recorded,
} from '#db/migration-rules';

/** Prisma's own bookkeeping, so that its command line reads what we wrote. */
const BOOKKEEPING = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
    "id"                    TEXT PRIMARY KEY NOT NULL,
    "checksum"              TEXT NOT NULL,
    "finished_at"           DATETIME,
    "migration_name"        TEXT NOT NULL,
    "logs"                  TEXT,
    "rolled_back_at"        DATETIME,
    "started_at"            DATETIME NOT NULL DEFAULT current_timestamp,
    "applied_steps_count"   INTEGER UNSIGNED NOT NULL DEFAULT 0
)`;

/**
 * Brings an SQLite file up to the migrations of a folder in Prisma's layout and returns the names of those
 * applied now. Each runs in a transaction of its own and is kept only if no foreign key is broken.
 * A migration applied earlier must still have the same text, and none may be unknown here; else it throws a
 * sentence that says what to do, and nothing is changed.
 */
export function applyMigrations(file: string, folder: string): readonly string[] {
  const migrations = readMigrations(folder);
  mkdirSync(dirname(file), { recursive: true });
  const db = open(file);
  try {
    db.pragma('busy_timeout = 10000');
    // A redefined table is dropped and renamed: keys are checked at the end instead.
    db.pragma('foreign_keys = OFF');
    db.exec(BOOKKEEPING);
    const recorded = db.prepare<[], Recorded>(RECORDED_SQL).all();
    return missingMigrations(recorded, migrations, file, folder)
      .filter((migration) => applyOne(db, migration))
      .map((migration) => migration.name);
  } finally {
    db.close();
  }
}

function open(file: string): Database.Database {
  const isNew = !existsSync(file);
  try {
    const db = new Database(file);
    db.prepare('SELECT count(*) FROM sqlite_master').get();
    return db;
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    throw new Error(
      isNew
        ? `The database ${file} could not be made (${reason}). Check that its folder may be written to, ` +
            `or set SLATE_DATABASE to a path in another folder.`
        : `${file} is not a database that can be opened (${reason}). Put a backup in its place, ` +
            `or move it away to begin with an empty one.`,
      { cause: error },
    );
  }
}

/** False where another process has applied it in the meantime. */
function applyOne(db: Database.Database, migration: Migration): boolean {
  db.exec('BEGIN IMMEDIATE');
  try {
    const done = db
      .prepare('SELECT 1 FROM "_prisma_migrations" WHERE migration_name = ?')
      .get(migration.name);
    if (done === undefined) {
      const startedAt = Date.now();
      db.exec(migration.sql);
      const broken = db.pragma('foreign_key_check') as readonly { table: string; parent: string }[];
      const first = broken[0];
      if (first) {
        throw new Error(
          `${broken.length} rows would point at nothing, the first in ${first.table} at ${first.parent}`,
        );
      }
      db.prepare(
        'INSERT INTO "_prisma_migrations" (id, checksum, migration_name, started_at, finished_at, applied_steps_count) VALUES (?, ?, ?, ?, ?, 1)',
      ).run(randomUUID(), migration.checksum, migration.name, startedAt, Date.now());
    }
    db.exec('COMMIT');
    return done === undefined;
  } catch (error) {
    if (db.inTransaction) db.exec('ROLLBACK');
    throw notApplied(migration, error);
  }
}
