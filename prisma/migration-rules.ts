import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** The rules of the bookkeeping that hold on every database. */

export interface Migration {
  readonly name: string;
  readonly sql: string;
  readonly checksum: string;
}

/** A line of Prisma's bookkeeping that was not rolled back. */
export interface Recorded {
  readonly migration_name: string;
  readonly checksum: string;
  readonly finished_at: unknown;
}

export const RECORDED_SQL =
  'SELECT migration_name, checksum, finished_at FROM "_prisma_migrations" WHERE rolled_back_at IS NULL';

/** The migrations of a folder in Prisma's layout, in their order. */
export function readMigrations(folder: string): Migration[] {
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort()
    .map((name) => {
      const sql = readFileSync(join(folder, name, 'migration.sql'), 'utf8');
      return { name, sql, checksum: createHash('sha256').update(sql).digest('hex') };
    });
}

/**
 * The migrations still to be applied. What was applied must be known here, have the same text and be
 * finished; else it throws a sentence that says what to do. `shown` names the database to a person.
 */
export function missingMigrations(
  recorded: readonly Recorded[],
  migrations: readonly Migration[],
  shown: string,
  folder: string,
): Migration[] {
  const byName = new Map(migrations.map((migration) => [migration.name, migration]));
  for (const row of recorded) {
    const known = byName.get(row.migration_name);
    if (!known) {
      throw new Error(
        `${shown} was made by a newer version of this program: it has the migration ` +
          `${row.migration_name}, which is not in ${folder}. Update the program, or set SLATE_DATABASE ` +
          `to another database.`,
      );
    }
    if (row.checksum !== known.checksum) {
      throw new Error(
        `The migration ${row.migration_name} was changed after it was applied to ${shown}. Restore ` +
          `${join(folder, row.migration_name, 'migration.sql')} from version control (line endings ` +
          `count) and put the change into a new migration: npm run migration -- NAME.`,
      );
    }
    if (row.finished_at === null) {
      throw new Error(
        `The migration ${row.migration_name} was begun on ${shown} by another tool and not finished. ` +
          `Put a backup of the database in its place and start again.`,
      );
    }
  }
  const applied = new Set(recorded.map((row) => row.migration_name));
  return migrations.filter(({ name }) => !applied.has(name));
}

/** What is told where a migration failed and was taken back. */
export function notApplied(migration: Migration, error: unknown): Error {
  const reason = error instanceof Error ? error.message : String(error);
  return new Error(
    `The migration ${migration.name} could not be applied (${reason}). The database is as it was ` +
      `before; free some space if the disk is full, close other programs that use it, and start again.`,
    { cause: error },
  );
}
