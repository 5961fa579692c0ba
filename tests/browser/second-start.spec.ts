import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { copyFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { expect, test } from './fixtures';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Each table of a database with the number of its rows and a hash over all of them. */
function contents(file: string): Record<string, string> {
  const db = new Database(file, { readonly: true });
  try {
    const tables = db
      .prepare<[], { name: string }>("SELECT name FROM sqlite_schema WHERE type = 'table'")
      .all();
    const told = tables.map(({ name }) => {
      const rows = db.prepare(`SELECT * FROM "${name}" ORDER BY rowid`).raw().all();
      const hash = createHash('sha256').update(JSON.stringify(rows)).digest('hex');
      return [name, `${rows.length} rows, ${hash}`] as const;
    });
    return Object.fromEntries(told);
  } finally {
    db.close();
  }
}

function prepare(file: string): void {
  const args = ['--conditions=react-server', '--import', 'tsx', 'prisma/prepare.ts'];
  const env = { ...process.env, SLATE_DATABASE: file };
  const ended = spawnSync(process.execPath, args, { cwd: root, env, encoding: 'utf8' });
  expect(ended.status, ended.stderr).toBe(0);
}

test('preparing a database again changes no row, neither of the demo nor of a person', () => {
  const template = process.env.SLATE_TEST_DATABASE ?? '';
  const file = test.info().outputPath('again.db');
  copyFileSync(template, file);
  const db = new Database(file);
  db.prepare(`UPDATE "Episode" SET "title" = 'Renamed by hand'`).run();
  db.close();
  const before = contents(file);
  // SR28 alone has 8,789 foods.
  expect(Number.parseInt(before.Food ?? '0', 10)).toBeGreaterThanOrEqual(8789);
  prepare(file);
  expect(contents(file)).toEqual(before);
});
