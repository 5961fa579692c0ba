import { join } from 'node:path';
import { contentsOf, contentsText } from '#db/contents';
import { applyMigrations } from '#db/migrate';
import { migrationsFolder, PROJECT_ROOT, providerOf } from '#db/provider';
import { databaseFile, shownDatabase } from '#lib/store/database-file';

/**
 * Makes the database that `SLATE_DATABASE` names ready, before each start: a file and its folder (a database
 * on a server must be there), all migrations, and what it must hold. A database that has all of it is left
 * as it is.
 */
async function prepare(database: string): Promise<void> {
  for (const name of await applied(database)) console.log(`Applied the migration ${name}.`);
  if (!(await contentsOf(database)).filled) await fill();
  console.log(contentsText(await contentsOf(database)));
}

async function applied(database: string): Promise<readonly string[]> {
  const provider = providerOf(database);
  const folder = migrationsFolder(provider);
  if (provider === 'sqlite') return applyMigrations(database, folder);
  const { applyPostgresMigrations } = await import('#db/migrate-postgres');
  return applyPostgresMigrations(database, folder);
}

/** Loaded only where there is something to do: most starts find everything in place. */
async function fill(): Promise<void> {
  const { fillDatabase } = await import('#db/fill');
  const { closeDatabase } = await import('#lib/store/client');
  try {
    await fillDatabase({
      demoFile: join(PROJECT_ROOT, 'seed', 'demo.episode.json'),
      foodsFile: join(PROJECT_ROOT, 'seed', 'demo.foods.json'),
      at: new Date(),
      zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
      loadFoods: async () => (await import('#seed/load-sr28')).loadSr28(),
      say: (line) => console.log(line),
    });
  } finally {
    await closeDatabase();
  }
}

const database = databaseFile(process.env);
try {
  await prepare(database);
} catch (error) {
  console.error(`The database ${shownDatabase(database)} could not be made ready.`);
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
