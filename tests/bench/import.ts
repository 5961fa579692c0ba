import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { applyMigrations } from '#db/migrate';
import { migrationsFolder } from '#db/provider';
import { readSr28, SR28_RELEASE, SR28_SOURCE } from '#lib/foods/read-sr28';
import { closeDatabase, database } from '#lib/store/client';
import { writeReference } from '#lib/store/write-reference';
import { loadSr28, loadSr28Groups, readSr28Texts } from '#seed/load-sr28';
import { ms, quantile, timed } from './timing';

const ROUNDS = 3;

/**
 * Times the way of SR28 from the two files of npm into an empty, migrated database of its own: reading,
 * parsing, merging measures and yields, and writing through the store.
 */
export async function run(): Promise<void> {
  const samples: Record<string, number[]> = {};
  const step = async <T>(name: string, work: () => T | Promise<T>): Promise<T> => {
    const { ms: took, value } = await timed(work);
    (samples[name] ??= []).push(took);
    return value;
  };
  const folder = mkdtempSync(join(tmpdir(), 'slate-bench-'));
  let size = 0;
  let stored = 0;
  try {
    for (let round = 0; round < ROUNDS; round += 1) {
      const file = join(folder, `import-${round}.db`);
      applyMigrations(file, migrationsFolder('sqlite'));
      process.env.SLATE_DATABASE = file;
      const texts = await step('read the files (alone)', () => readSr28Texts());
      await step('parse (alone)', () => readSr28(texts));
      await step('all of the following', async () => {
        const foods = await step('read, parse, merge measures and yields', () => loadSr28());
        const groups = await step('groups', () => loadSr28Groups());
        const at = new Date('2026-01-01T00:00:00Z');
        const release = { source: SR28_SOURCE, release: SR28_RELEASE, at, groups };
        await step('write to the database', () => writeReference(foods, release));
      });
      stored = await database().food.count();
      await closeDatabase();
      size = statSync(file).size;
    }
  } finally {
    await closeDatabase();
    rmSync(folder, { recursive: true, force: true });
  }
  console.info(
    `${stored} foods in the database of ${(size / 1e6).toFixed(1)} MB, ${ROUNDS} rounds`,
  );
  const rows = Object.entries(samples).map(([name, taken]) => [
    name,
    { 'first ms': ms(taken[0] ?? NaN), 'median ms': ms(quantile(taken, 0.5)) },
  ]);
  console.table(Object.fromEntries(rows));
}
