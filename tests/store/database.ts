import { copyFileSync, existsSync, mkdirSync, mkdtempSync, renameSync, rmSync } from 'node:fs';
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll } from 'vitest';
import { applyMigrations } from '#db/migrate';
import { migrationsFolder } from '#db/provider';
import { closeDatabase } from '#lib/store/client';

/**
 * Gives each test file a migrated, empty database of its own: a copy of one that is migrated once for all
 * workers and kept until a migration changes.
 */
export function withFreshDatabase(): void {
  let folder = '';
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'slate-test-'));
    await freshDatabase(join(folder, 'test.db'));
  });
  afterAll(async () => {
    await closeDatabase();
    rmSync(folder, { recursive: true, force: true });
  });
}

/** Points the store at a new copy of the migrated database. */
export async function freshDatabase(file: string): Promise<void> {
  await closeDatabase();
  copyFileSync(migratedTemplate(), file);
  process.env.SLATE_DATABASE = file;
}

function migratedTemplate(): string {
  const folder = migrationsFolder('sqlite');
  const hash = createHash('sha256');
  for (const name of readdirSync(folder).sort()) {
    const sql = join(folder, name, 'migration.sql');
    if (existsSync(sql)) hash.update(name).update(readFileSync(sql));
  }
  const shared = join(tmpdir(), 'slate-test-template');
  const template = join(shared, `${hash.digest('hex').slice(0, 16)}.db`);
  if (!existsSync(template)) {
    mkdirSync(shared, { recursive: true });
    const own = `${template}.${process.pid}`;
    applyMigrations(own, folder);
    // In place at once or not at all: workers race for it.
    renameSync(own, template);
  }
  return template;
}

/** Ids that read well in a failure and are the same in every run. */
export function testId(name: string): string {
  return `test-${name}`;
}

export const AT = new Date('2026-05-02T08:00:00Z');
