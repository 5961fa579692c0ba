import { randomUUID } from 'node:crypto';
import {
  missingMigrations,
  notApplied,
  readMigrations,
  RECORDED_SQL,
  type Migration,
  type Recorded,
} from '#db/migration-rules';
import { onPostgres, type PostgresConnection } from '#db/on-postgres';
import { shownDatabase } from '#lib/store/database-file';

/** Prisma's own bookkeeping, so that its command line reads what we wrote. */
const BOOKKEEPING = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
    "id"                    VARCHAR(36) PRIMARY KEY NOT NULL,
    "checksum"              VARCHAR(64) NOT NULL,
    "finished_at"           TIMESTAMPTZ,
    "migration_name"        VARCHAR(255) NOT NULL,
    "logs"                  TEXT,
    "rolled_back_at"        TIMESTAMPTZ,
    "started_at"            TIMESTAMPTZ NOT NULL DEFAULT now(),
    "applied_steps_count"   INTEGER NOT NULL DEFAULT 0
)`;

/** The advisory lock that Prisma's command line takes too (Prisma documentation, "Advisory locking"). */
const LOCK = 72707369;

/** How long another run may hold the lock before this one gives up. */
const WAIT = '60s';

/**
 * Brings a PostgreSQL database up to the migrations of a folder by the same rules as `applyMigrations`. One
 * run at a time: another one waits and then finds nothing to do. The database itself must be there.
 */
export async function applyPostgresMigrations(
  url: string,
  folder: string,
): Promise<readonly string[]> {
  const migrations = readMigrations(folder);
  return onPostgres(url, async (connection) => {
    await takeLock(connection);
    await connection.query(BOOKKEEPING);
    const { rows } = await connection.query<Recorded>(RECORDED_SQL);
    const missing = missingMigrations(rows, migrations, shownDatabase(url), folder);
    for (const migration of missing) await applyOne(connection, migration);
    return missing.map(({ name }) => name);
  });
}

/** Held until the connection ends, also where it ends by a crash. */
async function takeLock(connection: PostgresConnection): Promise<void> {
  try {
    await connection.query(`SET lock_timeout = '${WAIT}'`);
    await connection.query('SELECT pg_advisory_lock($1)', [LOCK]);
    await connection.query('RESET lock_timeout');
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    throw new Error(
      `Another program has been changing the tables of this database for ${WAIT} (${reason}). ` +
        `Wait until it has ended and start again.`,
      { cause: error },
    );
  }
}

async function applyOne(connection: PostgresConnection, migration: Migration): Promise<void> {
  const startedAt = new Date();
  try {
    await connection.query('BEGIN');
    // Without values, many statements may stand in one text.
    await connection.query(migration.sql);
    await connection.query(
      'INSERT INTO "_prisma_migrations" (id, checksum, migration_name, started_at, finished_at, applied_steps_count) VALUES ($1, $2, $3, $4, $5, 1)',
      [randomUUID(), migration.checksum, migration.name, startedAt, new Date()],
    );
    await connection.query('COMMIT');
  } catch (error) {
    await connection.query('ROLLBACK').catch(() => undefined);
    throw notApplied(migration, error);
  }
}
