import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { contentsOf, contentsText } from '#db/contents';
import { fillDatabase, type FillOptions } from '#db/fill';
import { PROJECT_ROOT } from '#db/provider';
import { episodeFileText } from '#lib/episode/file';
import { closeDatabase, database } from '#lib/store/client';
import { databaseFile, shownDatabase } from '#lib/store/database-file';
import { readSeason } from '#lib/store/read-season';
import { ENTITY_NAMES } from '#lib/store/rows';
import { write } from '#lib/store/write';
import { ABOUT_THE_FILE, AT, dropFreshDatabase, freshDatabase, ON_POSTGRES } from './database';
import { BARLEY, FILE, SALT } from './fixture';

let folder = '';
/** The path or URL of the database of a test. */
let own = '';
let said: string[] = [];
let loads = 0;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'slate-prepare-'));
  own = await freshDatabase(join(folder, 'test.db'));
  said = [];
  loads = 0;
});
afterEach(async () => {
  await dropFreshDatabase();
  rmSync(folder, { recursive: true, force: true });
});

function options(demo: string | null = episodeFileText(FILE)): FillOptions {
  const demoFile = join(folder, 'demo.episode.json');
  if (demo === null) rmSync(demoFile, { force: true });
  else writeFileSync(demoFile, demo);
  return {
    demoFile,
    at: AT,
    zone: 'Europe/Oslo',
    loadFoods: () => {
      loads += 1;
      return Promise.resolve([BARLEY, SALT]);
    },
    say: (line) => said.push(line),
  };
}

/** Every row of every table. */
async function dump(): Promise<Record<string, unknown[]>> {
  const tables = ['_prisma_migrations', 'Change', ...ENTITY_NAMES];
  const rows: Record<string, unknown[]> = {};
  for (const table of tables) {
    rows[table] = await database().$queryRawUnsafe(`SELECT * FROM "${table}" ORDER BY 1`);
  }
  await closeDatabase();
  return rows;
}

describe('fillDatabase', () => {
  it('puts in the creator, the foods, the demo and its kitchen, and says so', async () => {
    expect(await contentsOf(own)).toEqual({ filled: false, referenceFoods: 0, episodes: 0 });
    await fillDatabase(options());
    expect(await contentsOf(own)).toEqual({ filled: true, referenceFoods: 2, episodes: 1 });
    expect(said).toEqual(['Loading the reference foods …', expect.stringContaining('Two dishes')]);
    const creators = await database().creator.findMany();
    expect(creators.map(({ name }) => name)).toEqual(['Ada Quayside']);
    expect(await database().kitchen.count()).toBe(1);
  });

  it('changes nothing when it is run again', async () => {
    await fillDatabase(options());
    const before = await dump();
    await fillDatabase(options());
    expect(await dump()).toEqual(before);
    expect(loads).toBe(1);
  });

  it('does not bring back a demo that was removed', async () => {
    await fillDatabase(options());
    const [demo] = (await readSeason()).rows;
    const edits = [{ op: 'remove', entity: 'Episode', id: demo?.id ?? '', rev: 1 } as const];
    expect((await write({ actor: 'me', label: 'Remove', at: AT, edits })).ok).toBe(true);
    await fillDatabase(options());
    expect((await readSeason()).rows).toEqual([]);
    expect(await contentsOf(own)).toMatchObject({ filled: true, episodes: 0 });
  });

  it('makes a kitchen where there is no demo', async () => {
    await fillDatabase(options(null));
    const kitchens = await database().kitchen.findMany({ include: { ovens: true, scales: true } });
    expect(kitchens).toMatchObject([{ zone: 'Europe/Oslo', burners: 4 }]);
    expect(kitchens[0]?.ovens).toHaveLength(1);
    expect(kitchens[0]?.scales).toHaveLength(1);
  });

  it('goes on where a run was killed', async () => {
    const broken = { ...options(), loadFoods: () => Promise.reject(new Error('killed')) };
    await expect(fillDatabase(broken)).rejects.toThrow('killed');
    await fillDatabase(options());
    expect(await contentsOf(own)).toEqual({ filled: true, referenceFoods: 2, episodes: 1 });
  });

  it('tells each fault of a broken demo and what to do, and leaves no half of it', async () => {
    const broken = episodeFileText({ ...FILE, episode: { ...FILE.episode, title: '' } });
    await expect(fillDatabase(options(broken))).rejects.toThrow(
      /episode\.title: .*Restore .*demo\.episode\.json from version control/s,
    );
    expect((await contentsOf(own)).episodes).toBe(0);
  });
});

describe('contentsText', () => {
  it.each([
    [8789, 1, '8,789 reference foods, 1 episode'],
    [2, 0, '2 reference foods, 0 episodes'],
    [1234567, 12, '1,234,567 reference foods, 12 episodes'],
  ])('%i foods and %i episodes: %s', (referenceFoods, episodes, text) => {
    expect(contentsText({ referenceFoods, episodes })).toBe(text);
  });
});

describe('the program', () => {
  const run = (database: string) =>
    spawnSync(
      process.execPath,
      ['--conditions=react-server', '--import', 'tsx', 'prisma/prepare.ts'],
      { cwd: PROJECT_ROOT, encoding: 'utf8', env: { ...process.env, SLATE_DATABASE: database } },
    );

  it('leaves a ready database as it is and sums it up in its last line', async () => {
    await fillDatabase(options());
    await closeDatabase();
    const before = await dump();
    const done = run(own);
    expect(done.stdout.trim()).toBe('2 reference foods, 1 episode');
    expect(done.status).toBe(0);
    expect(await dump()).toEqual(before);
  });

  it('ends with a failure that names the file and says what to do', (test) => {
    test.skip(ON_POSTGRES, ABOUT_THE_FILE);
    const letter = join(folder, 'letter.db');
    writeFileSync(letter, 'This is a letter, and no database at all. '.repeat(40));
    const done = run(letter);
    expect(done.status).toBe(1);
    expect(done.stderr).toContain(`The database ${letter} could not be made ready.`);
    expect(done.stderr).toMatch(/Put a backup in its place/);
  });
});

describe('databaseFile', () => {
  it.each([
    [{}, join(PROJECT_ROOT, '.data', 'slate.db')],
    [{ SLATE_DATABASE: '' }, join(PROJECT_ROOT, '.data', 'slate.db')],
    [{ SLATE_DATABASE: '.data/other.db' }, join(PROJECT_ROOT, '.data', 'other.db')],
    [{ SLATE_DATABASE: '/srv/kitchen é.db' }, '/srv/kitchen é.db'],
    [{ SLATE_DATABASE: 'postgresql://ann@db/slate' }, 'postgresql://ann@db/slate'],
  ])('%o is %s', (env, path) => {
    expect(databaseFile(env)).toBe(path);
  });
});

describe('shownDatabase', () => {
  it.each([
    ['/srv/kitchen.db', '/srv/kitchen.db'],
    ['postgresql://ann:secret@db:5433/slate?sslmode=require', 'postgresql://ann@db:5433/slate'],
    ['postgres://ann:secret@db:port/slate', 'the PostgreSQL database'],
  ])('%s is shown as %s', (database, shown) => {
    expect(shownDatabase(database)).toBe(shown);
  });
});
