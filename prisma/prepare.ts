import { join } from 'node:path';
import { contentsOf, contentsText } from '#db/contents';
import { applyMigrations } from '#db/migrate';
import { migrationsFolder, PROJECT_ROOT } from '#db/provider';
import { databaseFile } from '#lib/store/database-file';

/**
 * Makes the database that `SLATE_DATABASE` names ready, before each start: its folder and file, all
 * migrations, and what it must hold. A database that has all of it is left as it is.
 */
async function prepare(file: string): Promise<void> {
  for (const name of applyMigrations(file, migrationsFolder('sqlite'))) {
    console.log(`Applied the migration ${name}.`);
  }
  if (!contentsOf(file).filled) await fill();
  console.log(contentsText(contentsOf(file)));
}

/** Loaded only where there is something to do: most starts find everything in place. */
async function fill(): Promise<void> {
  const { fillDatabase } = await import('#db/fill');
  const { closeDatabase } = await import('#lib/store/client');
  try {
    await fillDatabase({
      demoFile: join(PROJECT_ROOT, 'seed', 'demo.episode.json'),
      at: new Date(),
      zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
      loadFoods: async () => (await import('#seed/load-sr28')).loadSr28(),
      say: (line) => console.log(line),
    });
  } finally {
    await closeDatabase();
  }
}

const file = databaseFile(process.env);
try {
  await prepare(file);
} catch (error) {
  console.error(`The database ${file} could not be made ready.`);
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
