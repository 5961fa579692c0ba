import { randomUUID } from 'node:crypto';
import { applyPostgresMigrations } from '#db/migrate-postgres';
import { onPostgres, type PostgresConnection } from '#db/on-postgres';
import { migrationsFolder } from '#db/provider';

/** Databases for tests on a server whose user may make and drop them. */

/** Any number that nothing else uses: one worker makes the template while the others wait. */
const TEMPLATE_LOCK = 4_310_002;

/** Makes a database out of the migrated one, which is made first where it is not there; its URL. */
export function copyOfTemplate(server: string, migrationsHash: string): Promise<string> {
  const template = `slate_template_${migrationsHash}`;
  return onPostgres(server, async (connection) => {
    await connection.query('SELECT pg_advisory_lock($1)', [TEMPLATE_LOCK]);
    if (!(await isThere(connection, template))) {
      // Under a name of its own until it is whole.
      const unfinished = await makeEmpty(connection);
      await applyPostgresMigrations(urlOf(server, unfinished), migrationsFolder('postgresql'));
      await connection.query(`ALTER DATABASE "${unfinished}" RENAME TO "${template}"`);
    }
    const name = freshName();
    await connection.query(`CREATE DATABASE "${name}" TEMPLATE "${template}"`);
    return urlOf(server, name);
  });
}

/** Makes an empty database; its URL. */
export function emptyDatabase(server: string): Promise<string> {
  return onPostgres(server, async (connection) => urlOf(server, await makeEmpty(connection)));
}

export async function dropDatabase(server: string, url: string): Promise<void> {
  const name = new URL(url).pathname.slice(1);
  await onPostgres(server, (connection) =>
    connection.query(`DROP DATABASE IF EXISTS "${name}" WITH (FORCE)`),
  );
}

async function makeEmpty(connection: PostgresConnection): Promise<string> {
  const name = freshName();
  // By the order of code points, as an SQLite file compares text, whatever the server's own order.
  await connection.query(
    `CREATE DATABASE "${name}" TEMPLATE template0 ENCODING 'UTF8' LC_COLLATE 'C' LC_CTYPE 'C'`,
  );
  return name;
}

async function isThere(connection: PostgresConnection, name: string): Promise<boolean> {
  const found = await connection.query('SELECT 1 FROM pg_database WHERE datname = $1', [name]);
  return found.rows.length > 0;
}

const freshName = () => `slate_test_${randomUUID().replaceAll('-', '')}`;

function urlOf(server: string, name: string): string {
  const url = new URL(server);
  url.pathname = `/${name}`;
  return url.href;
}
