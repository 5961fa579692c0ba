import { createHash, randomUUID } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';

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

interface Migration {
  readonly name: string;
  readonly sql: string;
  readonly checksum: string;
}

interface Recorded {
  readonly migration_name: string;
  readonly checksum: string;
  readonly finished_at: string | null;
}

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
    const recorded = db
      .prepare<[], Recorded>(
        'SELECT migration_name, checksum, finished_at FROM "_prisma_migrations" WHERE rolled_back_at IS NULL',
      )
      .all();
    refuseStrangers(recorded, migrations, file, folder);
    const names = new Set(recorded.map((row) => row.migration_name));
    return migrations
      .filter((migration) => !names.has(migration.name) && applyOne(db, migration))
      .map((migration) => migration.name);
  } finally {
    db.close();
  }
}

function readMigrations(folder: string): Migration[] {
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort()
    .map((name) => {
      const sql = readFileSync(join(folder, name, 'migration.sql'), 'utf8');
      return { name, sql, checksum: createHash('sha256').update(sql).digest('hex') };
    });
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

function refuseStrangers(
  recorded: readonly Recorded[],
  migrations: readonly Migration[],
  file: string,
  folder: string,
): void {
  const byName = new Map(migrations.map((migration) => [migration.name, migration]));
  for (const row of recorded) {
    const known = byName.get(row.migration_name);
    if (!known) {
      throw new Error(
        `${file} was made by a newer version of this program: it has the migration ` +
          `${row.migration_name}, which is not in ${folder}. Update the program, or set SLATE_DATABASE ` +
          `to another file.`,
      );
    }
    if (row.checksum !== known.checksum) {
      throw new Error(
        `The migration ${row.migration_name} was changed after it was applied to ${file}. Restore ` +
          `${join(folder, row.migration_name, 'migration.sql')} from version control (line endings ` +
          `count) and put the change into a new migration: npm run migration -- NAME.`,
      );
    }
    if (row.finished_at === null) {
      throw new Error(
        `The migration ${row.migration_name} was begun on ${file} by another tool and not finished. ` +
          `Put a backup of the database in its place and start again.`,
      );
    }
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
    const reason = error instanceof Error ? error.message : String(error);
    throw new Error(
      `The migration ${migration.name} could not be applied (${reason}). The database is as it was ` +
        `before; free some space if the disk is full, close other programs that use it, and start again.`,
      { cause: error },
    );
  }
}
