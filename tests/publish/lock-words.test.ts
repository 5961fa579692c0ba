import { describe, expect, test } from 'vitest';
import { takeLock } from '#lib/lock/numbers-lock';
import { numbersToPublish } from '#lib/publish/from-lock';
import { lockWords, toldLock, type LockTold } from '#lib/publish/lock-words';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';

const bowl = (oats: number) =>
  aFile(
    [aDish('bowl', aRecipe('r', [grams('l', 'oats', oats)]), { title: 'Bowl' })],
    [aFood('oats', { energyKcal: '370', protein: '13' })],
  );
const base = bowl(80);
const { snapshot } = takeLock(base);
const told = (file: typeof base, kept: string | null) => toldLock(numbersToPublish(file, kept));

// How a lock must be told is our own; no source outside.
describe('how a lock stands is told', () => {
  test.each<[string, LockTold, string]>([
    [
      'nothing is locked',
      { standing: 'draft', ofLock: false, at: null, reason: null },
      'Not locked: a draft with the numbers of now.',
    ],
    [
      'it holds',
      { standing: 'locked', ofLock: true, at: 'Sat 12 Dec, 18:02', reason: null },
      'Numbers locked Sat 12 Dec, 18:02, nothing under them has changed.',
    ],
    [
      'it holds, and nobody knows since when',
      { standing: 'locked', ofLock: true, at: null, reason: null },
      'Numbers locked, nothing under them has changed.',
    ],
    [
      'it is broken',
      { standing: 'broken', ofLock: true, at: 'Sat 12 Dec, 18:02', reason: 'Loaf is gone' },
      'Lock of Sat 12 Dec, 18:02 broken: Loaf is gone. The numbers stay those of the lock.',
    ],
    [
      'it is broken, and the reason stands beside it',
      { standing: 'broken', ofLock: true, at: null, reason: null },
      'Lock broken. The numbers stay those of the lock.',
    ],
  ])('%s', (_case, lock, sentence) => {
    expect(lockWords(lock)).toBe(sentence);
  });

  test('of numbers that go out, in the kitchen’s time zone', () => {
    expect(told(base, null)).toMatchObject({ standing: 'draft', ofLock: false });
    expect(told(base, snapshot)).toMatchObject({ standing: 'locked', ofLock: true, reason: null });
    const broken = told(bowl(90), snapshot);
    expect(broken).toMatchObject({ standing: 'broken', ofLock: true });
    // 80 g and 90 g at 370 kcal per 100 g.
    expect(lockWords(broken)).toMatch(/^Lock of .+ broken: Bowl 296 → 333 kcal.*stay those of the/);
  });

  test.each([
    ['no JSON', '{'],
    ['another shape', '{"figures":{}}'],
  ])('a lock that cannot be read (%s) has no numbers that are told as locked', (_name, kept) => {
    const words = lockWords(told(base, kept));
    expect(words).toMatch(/^Lock broken: .*cannot be read/);
    expect(words).toContain('The numbers are those of now, not locked.');
    expect(words).not.toContain('those of the lock');
  });
});
