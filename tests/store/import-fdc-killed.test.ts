import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PROJECT_ROOT } from '#db/provider';
import { closeDatabase } from '#lib/store/client';
import { writeMadeTables } from '../support/made-fdc/write-tables';
import { ABOUT_THE_FILE, freshDatabase, ON_POSTGRES } from './database';

const folder = mkdtempSync(join(tmpdir(), 'slate-killed-'));
const tables = join(folder, 'tables');
const FOODS = 6000;
beforeAll(() => writeMadeTables(tables, FOODS));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function started(database: string): ChildProcess {
  return spawn(
    process.execPath,
    ['--conditions=react-server', '--import', 'tsx', 'prisma/import-fdc-cli.ts', tables],
    { cwd: PROJECT_ROOT, env: { ...process.env, SLATE_DATABASE: database }, stdio: 'pipe' },
  );
}

async function outputOf(child: ChildProcess): Promise<{ code: number | null; out: string }> {
  let out = '';
  child.stdout?.on('data', (chunk: Buffer) => (out += chunk.toString()));
  child.stderr?.on('data', (chunk: Buffer) => (out += chunk.toString()));
  const [code] = (await once(child, 'close')) as [number | null];
  return { code, out };
}

/** All rows of foods as the database has them, as text. */
function rowsOf(db: Database.Database): string {
  return JSON.stringify(
    ['Food', 'FoodVersion', 'FoodToken'].map((table) =>
      db.prepare(`SELECT * FROM "${table}" ORDER BY "id"`).raw().all(),
    ),
  );
}

describe.skipIf(ON_POSTGRES)(`an import in a process of its own (${ABOUT_THE_FILE})`, () => {
  it('killed at any moment goes on to the same end; others read and write meanwhile', async () => {
    const whole = await freshDatabase(join(folder, 'whole.db'));
    await closeDatabase();
    expect(await outputOf(started(whole))).toMatchObject({ code: 0 });
    const reference = new Database(whole, { readonly: true });
    const wanted = rowsOf(reference);
    reference.close();

    const file = await freshDatabase(join(folder, 'killed.db'));
    await closeDatabase();
    const db = new Database(file, { timeout: 10_000 });
    const count = () =>
      db.prepare<[], { n: number }>('SELECT count(*) AS n FROM "Food"').get()?.n ?? 0;
    const creator = db.prepare(
      `INSERT INTO "Creator" ("id", "creatorId", "name") VALUES (?, 'me', '')`,
    );
    let written = 0;
    let longest = 0;
    for (const killAfter of [1, 1500, 4000]) {
      const child = started(file);
      const ended = outputOf(child);
      while (count() < killAfter && child.exitCode === null) {
        const begun = performance.now();
        creator.run(`meanwhile-${(written += 1)}`);
        longest = Math.max(longest, performance.now() - begun);
        await new Promise((resolve) => setTimeout(resolve, 20));
      }
      expect(count()).toBeLessThan(FOODS);
      child.kill('SIGKILL');
      await ended;
    }
    const last = await outputOf(started(file));
    expect(last).toMatchObject({ code: 0 });
    expect(last.out).toContain('6,000 foods read');
    expect(rowsOf(db)).toBe(wanted);
    expect(db.prepare<[], { n: number }>('SELECT count(*) AS n FROM "Creator"').get()?.n).toBe(
      written,
    );
    // The pages give up after 10 seconds (lib/store/adapter.ts); a batch takes a fraction of one.
    expect(longest).toBeLessThan(5000);
    expect((await outputOf(started(file))).out).toContain('was imported before');
    db.close();
  }, 180_000);
});
