import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { importFdc } from '#db/import-fdc';
import { applyPostgresMigrations } from '#db/migrate-postgres';
import { migrationsFolder } from '#db/provider';
import { closeDatabase, database } from '#lib/store/client';
import { readReferenceFoods } from '#lib/store/read-foods';
import { findFoods } from '#lib/store/reference-search';
import { madeProduct } from '../support/made-fdc/made-food';
import { madeJson } from '../support/made-fdc/made-json';
import { AT } from './database';
import { startPostgres, type OwnPostgres } from './postgres-in-process';

const folder = mkdtempSync(join(tmpdir(), 'slate-import-pg-'));
let own: OwnPostgres;
beforeAll(async () => {
  own = await startPostgres();
  await applyPostgresMigrations(own.url, migrationsFolder('postgresql'));
  process.env.SLATE_DATABASE = own.url;
});
afterAll(async () => {
  await closeDatabase();
  await own.stop();
  rmSync(folder, { recursive: true, force: true });
});

// Few foods: PostgreSQL as WebAssembly gives up on the long statements that a server takes; on a server
// import-fdc.test.ts runs as a whole.
it('an import and the search among its foods are the same on PostgreSQL', async () => {
  const path = join(folder, 'made.json');
  writeFileSync(path, madeJson(40));
  const bring = (again: boolean) => importFdc(path, { at: AT, again, tell: () => undefined });
  expect(await bring(false)).toMatchObject({ kind: 'done', newFoods: 40, newReadings: 40 });
  expect(await bring(false)).toMatchObject({ kind: 'before' });
  expect(await bring(true)).toMatchObject({ newFoods: 0, newReadings: 0 });
  expect(await database().food.count()).toBe(40);
  expect(await readReferenceFoods()).toEqual([]);
  const made = madeProduct(1, 3);
  const named = `${made.description}, ${made.brandName || made.brandOwner}`;
  const words = named.toLowerCase().replace(',', '');
  for (const query of [made.gtin, words, words.slice(0, -1)]) {
    const found = await findFoods(query, { take: 6 });
    expect(found.map(({ name }) => name)).toContain(named);
  }
});
