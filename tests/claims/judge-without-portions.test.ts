import { describe, expect, it } from 'vitest';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';
import { rowsOf } from './edit-build';

/* An invented dish of 240 calories without portions. What is meant by words is the project’s own definition; no source. */

const FOODS = [aFood('oats', { energyKcal: '100.0', protein: '10.0' }, { name: 'Oats' })];
const file = (title: string, more: Parameters<typeof aFile>[2] = {}) =>
  aFile(
    [aDish('pot', aRecipe('pot-r', [grams('l', 'oats', 240, { text: '240 g oats' })]), { title })],
    FOODS,
    {
      resolutionMg: 1,
      ...more,
    },
  );
const DAY = { episode: { anythingElse: { kind: 'nothing' as const } } };
const row = (words: string, of = file('Skyr pot')) => rowsOf(of, words)[0];

describe('a portion of a dish that has none', () => {
  it.each([
    // Neither all of it nor one of a few.
    ['A portion is 210 calories.', 'off'],
    ['A portion is 300 calories.', 'off'],
    ['A portion is at least 260 calories.', 'off'],
    // All of it, or a half or a third: nobody has said how many it makes.
    ['A portion is 240 calories.', 'unknown'],
    ['A portion is 120 calories.', 'unknown'],
    // However many there are.
    ['A portion is under 250 calories.', 'agrees'],
  ])('%s: %s', (words, verdict) => {
    expect([words, row(words)?.verdict]).toEqual([words, verdict]);
  });

  it('is all of it where that is eaten on a day that is told whole, or it is for one', () => {
    for (const of of [file('Skyr pot', DAY), file('Skyr pot (serves 1)')]) {
      expect(row('A portion is 240 calories.', of)?.verdict).toBe('agrees');
      const off = row('A portion is 120 calories.', of);
      expect([off?.verdict, off?.sayInstead]).toEqual(['off', '240 calories']);
    }
  });

  it('is one of so many as its title says', () => {
    const of = file('Skyr pots, serves two');
    expect(row('A portion is 120 calories.', of)?.verdict).toBe('agrees');
    expect(row('A portion is 240 calories.', of)?.verdict).toBe('off');
  });
});

describe('how many portions a dish without any makes', () => {
  it('is off where its title says another number, and the same proves nothing', () => {
    const said = row('This makes two portions.', file('Skyr pot (serves 1)'));
    expect(said).toMatchObject({ verdict: 'off', sayInstead: '1 portion' });
    expect(row('This makes one portion.', file('Skyr pot (serves 1)'))?.verdict).not.toBe('agrees');
    expect(row('This makes two portions.')?.verdict).toBe('unknown');
    expect(row('This makes two portions.', file('Skyr pot, serves 2 to 3'))?.verdict).toBe(
      'unknown',
    );
  });
});
