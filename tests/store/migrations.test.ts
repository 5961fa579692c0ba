import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { missingSql } from '#db/author';
import { schemaDiff } from '#db/engine';
import { applyMigrations } from '#db/migrate';
import { migrationsFolder, PROVIDERS, schemaText } from '#db/provider';

let folder = '';
let file = '';
let migrations = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'slate-migrations-'));
  file = join(folder, 'deep', 'é space', 'test.db');
  migrations = join(folder, 'migrations');
  cpSync(migrationsFolder('sqlite'), migrations, { recursive: true });
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function addMigration(name: string, sql: string): void {
  cpSync(join(migrations, firstName()), join(migrations, name), { recursive: true });
  writeFileSync(join(migrations, name, 'migration.sql'), sql);
}
function firstName(): string {
  const db = new Database(':memory:');
  db.close();
  const [name] = applyMigrations(join(folder, 'names.db'), migrationsFolder('sqlite'));
  rmSync(join(folder, 'names.db'), { force: true });
  if (!name) throw new Error('There is no migration');
  return name;
}
function query<T>(sql: string): T[] {
  const db = new Database(file);
  try {
    return db.prepare<[], T>(sql).all();
  } finally {
    db.close();
  }
}

describe('migrations', () => {
  it.each(PROVIDERS)('from nothing lead to the models, on %s', async (provider) => {
    expect(await missingSql(provider)).toBe('');
  });

  it('are found lacking where a model has a column more', async () => {
    applyMigrations(file, migrations);
    const text = schemaText('sqlite').replace('model Shop {', 'model Shop {\n  note String?');
    const sql = await schemaDiff('sqlite', { kind: 'file', path: file }, { kind: 'schema', text });
    expect(sql).toContain('ADD COLUMN "note"');
  });

  it('of PostgreSQL make the same tables and columns as those of SQLite', () => {
    const tables = (provider: 'sqlite' | 'postgresql') => {
      const name = firstName();
      const sql = readFileSync(join(migrationsFolder(provider), name, 'migration.sql'), 'utf8');
      return [...sql.matchAll(/CREATE TABLE "(\w+)" \(([\s\S]*?)\n\);/g)].map(([, table, body]) => [
        table,
        [...(body ?? '').matchAll(/^ {4}"(\w+)"/gm)].map(([, column]) => column),
      ]);
    };
    expect(tables('sqlite').length).toBeGreaterThan(40);
    expect(tables('postgresql')).toEqual(tables('sqlite'));
  });

  it('are applied once and kept in the bookkeeping of Prisma', () => {
    const all = applyMigrations(file, migrations);
    expect(all.length).toBeGreaterThan(0);
    expect(applyMigrations(file, migrations)).toHaveLength(0);
    const rows = query<{ checksum: string; applied_steps_count: number; finished_at: number }>(
      'SELECT * FROM _prisma_migrations',
    );
    expect(rows).toHaveLength(all.length);
    expect(rows[0]?.applied_steps_count).toBe(1);
    expect(rows[0]?.checksum).toMatch(/^[0-9a-f]{64}$/);
    expect(rows[0]?.finished_at).not.toBeNull();
  });

  it('bring a database of the previous migration up and keep its rows', () => {
    applyMigrations(file, migrations);
    const db = new Database(file);
    db.prepare(`INSERT INTO Shop (id, creatorId, name, nameFolded) VALUES ('s','c','S','s')`).run();
    db.close();
    addMigration('99990101000000_more', 'ALTER TABLE "Shop" ADD COLUMN "note" TEXT;');
    expect(applyMigrations(file, migrations)).toEqual(['99990101000000_more']);
    expect(query<{ note: null }>('SELECT name, note FROM Shop')).toEqual([
      { name: 'S', note: null },
    ]);
  });

  it('that fail half-way leave the database as it was', () => {
    const all = applyMigrations(file, migrations);
    addMigration('99990101000000_bad', 'CREATE TABLE "Half" (id TEXT); SELECT nonsense FROM Shop;');
    expect(() => applyMigrations(file, migrations)).toThrow(/as it was before/);
    expect(query(`SELECT name FROM sqlite_master WHERE name = 'Half'`)).toEqual([]);
    expect(query('SELECT * FROM _prisma_migrations')).toHaveLength(all.length);
  });

  it('that would leave a row pointing at nothing are taken back', () => {
    applyMigrations(file, migrations);
    addMigration(
      '99990101000000_orphan',
      `INSERT INTO Pack (id, creatorId, foodId, name) VALUES ('p','c','nowhere','pack');`,
    );
    expect(() => applyMigrations(file, migrations)).toThrow(/point at nothing, the first in Pack/);
    expect(query('SELECT * FROM Pack')).toEqual([]);
  });

  it('that were changed after they were applied are refused, with what to do', () => {
    applyMigrations(file, migrations);
    const sql = join(migrations, firstName(), 'migration.sql');
    writeFileSync(sql, `${readFileSync(sql, 'utf8')}\n-- a later thought`);
    expect(() => applyMigrations(file, migrations)).toThrow(/Restore .*npm run migration/s);
  });

  it('of a newer program are refused, with what to do', () => {
    addMigration('99990101000000_newer', 'CREATE TABLE "Newer" (id TEXT);');
    applyMigrations(file, migrations);
    rmSync(join(migrations, '99990101000000_newer'), { recursive: true });
    expect(() => applyMigrations(file, migrations)).toThrow(/newer version .*Update the program/s);
  });

  it('are not applied to what is no database', () => {
    file = join(folder, 'letter.db');
    writeFileSync(file, 'Dear database, this is a letter and nothing else at all.'.repeat(50));
    expect(() => applyMigrations(file, migrations)).toThrow(/not a database .*backup/s);
  });
});
