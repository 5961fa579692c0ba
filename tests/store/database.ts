import { copyFileSync, existsSync, mkdirSync, mkdtempSync, renameSync, rmSync } from 'node:fs';
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll } from 'vitest';
import { applyMigrations } from '#db/migrate';
import { migrationsFolder, type Provider } from '#db/provider';
import { closeDatabase } from '#lib/store/client';
import { copyOfTemplate, dropDatabase } from './postgres-server';

/** The server that `SLATE_TEST_DATABASE_URL` names; without it every test has an SQLite file. */
const SERVER = process.env.SLATE_TEST_DATABASE_URL ?? '';
export const ON_POSTGRES = SERVER !== '';

/** Why a test does not run on PostgreSQL. */
export const ABOUT_THE_FILE = 'about the SQLite file, which is not there on PostgreSQL';

/** The database on the server that this test file has now. */
let ownUrl: string | null = null;

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
    await dropFreshDatabase();
    rmSync(folder, { recursive: true, force: true });
  });
}

/**
 * Points the store at a new copy of the migrated database: this file, or one on the server. Returns its path
 * or URL.
 */
export async function freshDatabase(file: string): Promise<string> {
  await dropFreshDatabase();
  if (ON_POSTGRES) {
    ownUrl = await copyOfTemplate(SERVER, migrationsHash('postgresql'));
    return (process.env.SLATE_DATABASE = ownUrl);
  }
  copyFileSync(migratedTemplate(), file);
  return (process.env.SLATE_DATABASE = file);
}

/** Closes the database of `freshDatabase`, and drops it where it stands on the server. */
export async function dropFreshDatabase(): Promise<void> {
  await closeDatabase();
  if (ownUrl !== null) await dropDatabase(SERVER, ownUrl);
  ownUrl = null;
}

function migrationsHash(provider: Provider): string {
  const folder = migrationsFolder(provider);
  const hash = createHash('sha256');
  for (const name of readdirSync(folder).sort()) {
    const sql = join(folder, name, 'migration.sql');
    if (existsSync(sql)) hash.update(name).update(readFileSync(sql));
  }
  return hash.digest('hex').slice(0, 16);
}

function migratedTemplate(): string {
  const shared = join(tmpdir(), 'slate-test-template');
  const template = join(shared, `${migrationsHash('sqlite')}.db`);
  if (!existsSync(template)) {
    mkdirSync(shared, { recursive: true });
    const own = `${template}.${process.pid}`;
    applyMigrations(own, migrationsFolder('sqlite'));
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
