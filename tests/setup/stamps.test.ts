import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type * as Stamps from '../../prisma/setup/stamps.cjs';

const { listFiles, stampOf, unlessStamped } = createRequire(import.meta.url)(
  '../../prisma/setup/stamps.cjs',
) as typeof Stamps;

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'stamps é '));
  mkdirSync(join(folder, 'lib', 'deep'), { recursive: true });
  writeFileSync(join(folder, 'lib', 'deep', 'b.ts'), 'b');
  writeFileSync(join(folder, 'lib', 'a.ts'), 'a');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const stamp = (): string => stampOf(folder, listFiles(folder, ['lib']), ['word']);

describe('a stamp', () => {
  test('is the same for the same files, and lists them sorted', () => {
    expect(listFiles(folder, ['lib', 'absent'])).toEqual(['lib/a.ts', 'lib/deep/b.ts']);
    expect(stamp()).toBe(stamp());
  });

  test('changes with a content, a name, a new file and a word', () => {
    const before = stamp();
    const seen = new Set([before, stampOf(folder, listFiles(folder, ['lib']), ['other'])]);
    writeFileSync(join(folder, 'lib', 'a.ts'), 'A');
    seen.add(stamp());
    writeFileSync(join(folder, 'lib', 'c.ts'), '');
    seen.add(stamp());
    rmSync(join(folder, 'lib', 'c.ts'));
    writeFileSync(join(folder, 'lib', 'd.ts'), '');
    seen.add(stamp());
    expect(seen.size).toBe(5);
    rmSync(join(folder, 'lib', 'd.ts'));
    writeFileSync(join(folder, 'lib', 'a.ts'), 'a');
    expect(stamp()).toBe(before);
  });

  test('does not move bytes from one file to the next unseen', () => {
    const before = stamp();
    writeFileSync(join(folder, 'lib', 'a.ts'), 'ab');
    writeFileSync(join(folder, 'lib', 'deep', 'b.ts'), '');
    expect(stamp()).not.toBe(before);
  });

  test('leaves out the folders to skip', () => {
    expect(listFiles(folder, ['lib'], ['lib/deep'])).toEqual(['lib/a.ts']);
  });
});

describe('a stamped step', () => {
  const file = (): string => join(folder, 'cache', 'step');

  test('is done once, and again when its inputs change', async () => {
    const work = vi.fn(() => Promise.resolve());
    expect(await unlessStamped(file(), '1', work)).toBe('done');
    expect(await unlessStamped(file(), '1', work)).toBe('unchanged');
    expect(await unlessStamped(file(), '2', work)).toBe('done');
    expect(work).toHaveBeenCalledTimes(2);
    expect(readFileSync(file(), 'utf8')).toBe('2\n');
  });

  test('that breaks off leaves no stamp, not even the old one, and is repeated', async () => {
    await unlessStamped(file(), '1', () => Promise.resolve());
    await expect(
      unlessStamped(file(), '2', () => Promise.reject(new Error('cut'))),
    ).rejects.toThrow();
    expect(existsSync(file())).toBe(false);
    const work = vi.fn(() => Promise.resolve());
    expect(await unlessStamped(file(), '1', work)).toBe('done');
    expect(work).toHaveBeenCalledOnce();
  });
});
