import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { photosFolder } from '#lib/store/photos';
import type * as Project from '../../prisma/setup/project.cjs';

const load = createRequire(import.meta.url);
const { photosPath } = load('../../prisma/setup/project.cjs') as typeof Project;
const program = fileURLToPath(new URL('../../prisma/setup/backup.cjs', import.meta.url));

let folder = '';
beforeEach(() => (folder = mkdtempSync(join(tmpdir(), 'slate-backup-'))));
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const hashOf = (text: string) => createHash('sha256').update(text).digest('hex');
const photoFile = (place: string, text: string) =>
  join(place, hashOf(text).slice(0, 2), hashOf(text));

/** A database that names photos, with their files beside it. */
function kept(
  texts: readonly string[],
  named: readonly string[] = texts,
  displays: readonly string[] = [],
): string {
  const database = join(folder, 'slate.db');
  const db = new Database(database);
  db.exec('CREATE TABLE Attachment (id TEXT, sha256 TEXT, name TEXT, deletedAt TEXT)');
  const insert = db.prepare('INSERT INTO Attachment VALUES (?, ?, ?, ?)');
  for (const [at, text] of named.entries()) {
    insert.run(`${at}`, hashOf(text), `${text}.jpg`, at === 0 ? '2026-11-28' : null);
  }
  db.exec('CREATE TABLE DayEvent (id TEXT, kind TEXT, at TEXT, payload TEXT)');
  const event = db.prepare('INSERT INTO DayEvent VALUES (?, ?, ?, ?)');
  event.run('e1', 'note', '2026-11-28T10:00:00Z', JSON.stringify({ sha256: hashOf('note') }));
  for (const text of displays) {
    event.run(text, 'display', '2026-11-28T10:00:00Z', JSON.stringify({ sha256: hashOf(text) }));
  }
  // One photo of two readings.
  insert.run('again', hashOf(named[0] ?? ''), 'again.jpg', null);
  db.close();
  for (const text of texts) {
    mkdirSync(join(folder, 'photos', hashOf(text).slice(0, 2)), { recursive: true });
    writeFileSync(photoFile(join(folder, 'photos'), text), text);
  }
  return database;
}

const backUp = (database: string, ...args: readonly string[]) =>
  spawnSync(process.execPath, [program, ...args], {
    encoding: 'utf8',
    env: { ...process.env, SLATE_DATABASE: database, SLATE_PHOTOS: '' },
  });

describe('a backup', () => {
  test('takes along the photos of displays that entries of a day name', () => {
    const database = kept(['label', 'scale'], ['label'], ['scale', 'lost']);
    const to = join(folder, 'away.db');
    const { stdout, stderr } = backUp(database, to);
    expect(stdout).toContain('Its photos, 2 in all');
    expect(stderr).toContain('a scale’s display, 2026-11-28T10:00');
    expect(readFileSync(photoFile(join(folder, 'away-photos'), 'scale'), 'utf8')).toBe('scale');
  });

  test('takes the photos along that the database names, taken out ones too, and no others', () => {
    const database = kept(['one', 'two']);
    writeFileSync(join(folder, 'photos', 'stray'), 'nobody names it');
    const to = join(folder, 'away.db');
    const { status, stdout } = backUp(database, to);
    expect([status, stdout]).toEqual([
      0,
      `Backed up to ${to}\nIts photos, 2 in all, to ${join(folder, 'away-photos')}\n`,
    ]);
    for (const text of ['one', 'two']) {
      expect(readFileSync(photoFile(join(folder, 'away-photos'), text), 'utf8')).toBe(text);
    }
    expect(readdirSync(join(folder, 'away-photos')).sort()).toEqual(
      ['one', 'two'].map((text) => hashOf(text).slice(0, 2)).sort(),
    );
    const copy = new Database(to, { readonly: true });
    expect(copy.prepare('SELECT COUNT(*) AS count FROM Attachment').get()).toEqual({ count: 3 });
    copy.close();
  });

  test('names what is missing or damaged, and copies the rest', () => {
    const database = kept(['one', 'two'], ['one', 'two', 'gone']);
    writeFileSync(photoFile(join(folder, 'photos'), 'two'), 'damaged');
    const { status, stdout, stderr } = backUp(database, join(folder, 'away.db'));
    expect(status).toBe(0);
    expect(stdout).toContain('Its photos, 1 in all');
    const lacking = stderr.split(': ').at(-1)?.trim().split(', ').sort();
    expect(lacking).toEqual(['gone.jpg', 'two.jpg']);
  });

  test('without a photo makes no folder, by default has the time in its name', () => {
    const database = kept([], ['gone']);
    expect(backUp(database).status).toBe(0);
    const made = readdirSync(folder).filter((name) => name.startsWith('backup-'));
    expect(made).toEqual([expect.stringMatching(/^backup-\d{4}-.*\.db$/)]);
  });

  test('writes over nothing that is there', () => {
    const database = kept(['one']);
    const to = join(folder, 'away.db');
    mkdirSync(join(folder, 'away-photos'));
    const { status, stderr } = backUp(database, to);
    expect([status, existsSync(to)]).toEqual([1, false]);
    expect(stderr).toContain('away-photos exists already');
  });

  test('of a server is left to the server, and says where the photos are', () => {
    const { status, stderr } = backUp('postgresql://ann:secret@db/slate');
    expect(status).toBe(1);
    expect(stderr).toContain('pg_dump');
    expect(stderr).toContain(join('.data', 'photos'));
    expect(stderr).not.toContain('secret');
  });
});

test.each([
  {},
  { SLATE_DATABASE: 'other/kitchen.db' },
  { SLATE_DATABASE: '/srv/kitchen.db' },
  { SLATE_DATABASE: 'postgresql://ann@db/slate' },
  { SLATE_DATABASE: '/srv/kitchen.db', SLATE_PHOTOS: 'p' },
  { SLATE_PHOTOS: '/mnt/p' },
])('the photos of %o stand where the store puts them', (env) => {
  expect(photosPath({ NODE_ENV: 'test', ...env })).toBe(photosFolder(env));
});
