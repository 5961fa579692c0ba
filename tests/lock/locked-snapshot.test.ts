import { describe, expect, it } from 'vitest';
import { readSnapshot } from '#lib/lock/locked-snapshot';
import { takeLock } from '#lib/lock/numbers-lock';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';

const snapshotOf = (amount: number) =>
  takeLock(
    aFile(
      [aDish('d', aRecipe('r', [grams('l', 'oats', amount)]))],
      [aFood('oats', { energyKcal: '379' })],
    ),
  ).snapshot;

describe('a snapshot', () => {
  it('is read once where it is asked for again, and is its own text’s whatever was read between', () => {
    const [one, two] = [snapshotOf(40), snapshotOf(50)];
    const read = readSnapshot(one);
    expect(read?.figures.dishes[0]?.whole.energyKcal?.value).toBeCloseTo(151.6);
    expect(readSnapshot(two)?.figures.dishes[0]?.whole.energyKcal?.value).toBeCloseTo(189.5);
    expect(readSnapshot(`${one}`)).toBe(read);
    for (const amount of [1, 2, 3, 4, 5]) readSnapshot(snapshotOf(amount));
    expect(readSnapshot(one)).toEqual(read);
    expect(readSnapshot(one)).not.toBe(read);
  });

  it('that is none stays none', () => {
    expect(readSnapshot('no JSON')).toBeNull();
    expect(readSnapshot('no JSON')).toBeNull();
    expect(readSnapshot('{}')).toBeNull();
  });
});
