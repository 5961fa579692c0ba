import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { PrismaClient } from '#db/generated/sqlite/client';
import { queueingAdapter } from '#lib/store/adapter';
import { closeDatabase } from '#lib/store/client';
import { ABOUT_THE_FILE, freshDatabase, ON_POSTGRES } from './database';

let folder = '';
let file = '';
beforeEach(async (test) => {
  test.skip(ON_POSTGRES, ABOUT_THE_FILE);
  folder = mkdtempSync(join(tmpdir(), 'slate-adapter-'));
  file = join(folder, 'test.db');
  await freshDatabase(file);
  await closeDatabase();
});
afterEach(() => {
  if (folder !== '') rmSync(folder, { recursive: true, force: true });
});

const row = (id: string) => ({ id, creatorId: id, name: id });

/** Writes from outside while a transaction is open that then rolls back; tells whether the write is there. */
async function outsideWriteSurvives(client: PrismaClient): Promise<boolean> {
  let acknowledged = false;
  let outside: Promise<unknown> = Promise.resolve();
  const inside = client.$transaction(async (tx) => {
    await tx.creator.create({ data: row('inside') });
    outside = client.creator.create({ data: row('outside') }).then(() => {
      acknowledged = true;
    });
    // Time enough for the outside write to run, if anything lets it.
    await new Promise((resolve) => setTimeout(resolve, 100));
    throw new Error('rolled back');
  });
  await expect(inside).rejects.toThrow('rolled back');
  await outside;
  expect(acknowledged).toBe(true);
  expect(await client.creator.findUnique({ where: { id: 'inside' } })).toBeNull();
  const found = (await client.creator.findUnique({ where: { id: 'outside' } })) !== null;
  await client.$disconnect();
  return found;
}

describe('the queueing adapter', () => {
  it('keeps an outside write that was acknowledged during a transaction that rolls back', async () => {
    const client = new PrismaClient({ adapter: queueingAdapter(file) });
    expect(await outsideWriteSurvives(client)).toBe(true);
  });

  it('is needed: with the stock adapter the same write is acknowledged and lost', async () => {
    const client = new PrismaClient({ adapter: new PrismaBetterSqlite3({ url: file }) });
    expect(await outsideWriteSurvives(client)).toBe(false);
  });

  it('shows no rows of an open transaction to a read from outside', async () => {
    const client = new PrismaClient({ adapter: queueingAdapter(file) });
    let seen: Promise<number> = Promise.resolve(-1);
    await client
      .$transaction(async (tx) => {
        await tx.creator.create({ data: row('inside') });
        seen = client.creator.count();
        await new Promise((resolve) => setTimeout(resolve, 50));
        throw new Error('rolled back');
      })
      .catch(() => undefined);
    expect(await seen).toBe(0);
    await client.$disconnect();
  });

  it('lets the next in line go on after a commit that fails', async () => {
    const client = new PrismaClient({ adapter: queueingAdapter(file) });
    const broken = client.$transaction(async (tx) => {
      await tx.$executeRawUnsafe('PRAGMA defer_foreign_keys = ON');
      await tx.draft.create({
        data: {
          ...own('draft'),
          entity: 'x',
          entityId: 'x',
          baseRev: 1,
          payload: '',
          at: new Date(),
        },
      });
      await tx.pack.create({ data: { ...own('pack'), foodId: 'nowhere', name: 'pack' } });
    });
    await expect(broken).rejects.toThrow();
    await client.creator.create({ data: row('next') });
    expect(await client.creator.count()).toBe(1);
    expect(await client.draft.count()).toBe(0);
    await client.$disconnect();
  });

  it('answers in order of asking', async () => {
    const client = new PrismaClient({ adapter: queueingAdapter(file) });
    const done: number[] = [];
    await Promise.all(
      Array.from({ length: 20 }, (_, index) =>
        client
          .$transaction((tx) => tx.creator.create({ data: row(`c${index}`) }))
          .then(() => done.push(index)),
      ),
    );
    expect(done).toEqual([...done].sort((a, b) => a - b));
    expect(await client.creator.count()).toBe(20);
    await client.$disconnect();
  });

  it('opens with a write-ahead log, foreign keys and full synchronisation', async () => {
    const client = new PrismaClient({ adapter: queueingAdapter(file) });
    const pragma = async (name: string) => {
      const rows = await client.$queryRawUnsafe<Record<string, unknown>[]>(`PRAGMA ${name}`);
      return Object.values(rows[0] ?? {})[0];
    };
    // SQLite documentation, "PRAGMA synchronous": 2 is FULL.
    expect(await pragma('journal_mode')).toBe('wal');
    expect(Number(await pragma('synchronous'))).toBe(2);
    expect(Number(await pragma('foreign_keys'))).toBe(1);
    expect(Number(await pragma('busy_timeout'))).toBe(10_000);
    await client.$disconnect();
  });

  it('says what to do where there is no such file', async () => {
    const client = new PrismaClient({ adapter: queueingAdapter(join(folder, 'no', 'x.db')) });
    await expect(client.creator.count()).rejects.toThrow(/could not be opened .*npm start/s);
  });

  it('says what to do where a write-ahead log cannot be set', async () => {
    // While another connection is in the middle of reading, the journal mode cannot change.
    const other = new Database(file);
    other.pragma('journal_mode = DELETE');
    other.exec('BEGIN');
    other.prepare('SELECT count(*) FROM Creator').get();
    const client = new PrismaClient({ adapter: queueingAdapter(file, { busyMs: 50 }) });
    await expect(client.creator.count()).rejects.toThrow(/write-ahead log.*SLATE_DATABASE/s);
    other.exec('ROLLBACK');
    other.close();
    await client.$disconnect();
  });
});

const own = (id: string) => ({ id, creatorId: id });
