import { cpSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { applyMigrations } from '#db/migrate';
import { migrationsFolder } from '#db/provider';
import { closeDatabase } from '#lib/store/client';
import { readEpisodeFile } from '#lib/store/read-episode';

const ALL = readdirSync(migrationsFolder('sqlite'), { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map((entry) => entry.name)
  .sort();

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'slate-earlier-'));
});
afterEach(async () => {
  await closeDatabase();
  rmSync(folder, { recursive: true, force: true });
});

/** A database as an earlier version of the program left it, with one episode of one ingredient. */
function earlierDatabase(migrations: readonly string[]): string {
  const old = join(folder, 'migrations');
  for (const name of migrations) {
    cpSync(join(migrationsFolder('sqlite'), name), join(old, name), { recursive: true });
  }
  const file = join(folder, 'earlier.db');
  applyMigrations(file, old);
  const db = new Database(file);
  db.pragma('foreign_keys = ON');
  db.exec(`
    INSERT INTO Creator (id, creatorId, name) VALUES ('me', 'me', 'Ines');
    INSERT INTO Kitchen (id, creatorId, name, zone, burners) VALUES ('k', 'me', 'Galley', 'Europe/Oslo', 4);
    INSERT INTO Food (id, creatorId, kind, name, nameFolded, section)
      VALUES ('f', 'me', 'label', 'Oat drink', 'oat drink', 'drinks');
    INSERT INTO Episode (id, creatorId, title, hook, region, rateNum, rateDen, disclosure, kitchenId)
      VALUES ('e', 'me', 'Tuesday', '', 'EU', 25, 1, '', 'k');
    INSERT INTO Recipe (id, creatorId, title, method) VALUES ('r', 'me', 'Porridge', '');
    INSERT INTO Segment (id, creatorId, episodeId, position, kind, title, recipeId, batchesNum, batchesDen,
        eatenNum, eatenDen, plannedS, spareTakes, spareScope, washUpS)
      VALUES ('s', 'me', 'e', 0, 'recipe', 'Porridge', 'r', 1, 1, 1, 1, 0, 0, 'whole', 0);
    INSERT INTO RecipeLine (id, creatorId, recipeId, position, text, plannedLowMg, plannedMg,
        plannedHighMg, foodId, state, asBought, leftKind, spoiltByTake, note)
      VALUES ('l', 'me', 'r', 0, '200 g oat drink', 200000, 200000, 200000, NULL, 'asIs', 0, 'none', 0, '');
    INSERT INTO Target (id, creatorId, episodeId, position, nutrient, relation, amount, segmentId)
      VALUES ('t', 'me', 'e', 0, 'protein', 'atLeast', 12.5, 's');
  `);
  db.close();
  return file;
}

// Each state that an earlier version of the program may have left behind, from the first migration on.
const EARLIER = ALL.slice(0, -1).map((last, at) => ({ last, names: ALL.slice(0, at + 1) }));

it.each(EARLIER)(
  'a database left at $last is brought up with its rows, and reads',
  async (left) => {
    const file = earlierDatabase(left.names);
    expect(applyMigrations(file, migrationsFolder('sqlite'))).toEqual(ALL.slice(left.names.length));
    process.env.SLATE_DATABASE = file;
    const read = await readEpisodeFile('e', '2026-05-02T08:00:00Z', { creatorId: 'me' });
    expect(read?.episode.segments[0]?.recipe?.lines[0]).toMatchObject({
      text: '200 g oat drink',
      planned: { valueMg: 200_000 },
      match: 'confirmed',
      orFoodId: null,
    });
    expect(read?.episode.targets).toEqual([
      {
        id: 't',
        nutrient: 'protein',
        relation: 'atLeast',
        amount: 12.5,
        segmentId: 's',
        portionId: null,
      },
    ]);
  },
);
