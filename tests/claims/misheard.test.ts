import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mishearings } from '#lib/claims/misheard';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';
import { rowsOf } from './edit-build';

/** A dish of 100 g of one food. */
const dishOf = (values: Parameters<typeof aFood>[1]) =>
  aFile(
    [aDish('stew', aRecipe('r', [grams('all', 'food', 100)]), { title: 'Bean stew' })],
    [aFood('food', values)],
  );

// What captions mishear is from experience (common practice, no source).
describe('a number that captions may have misheard', () => {
  test.each([
    [50, '', 15, 'sound alike'],
    [15, '', 50, 'sound alike'],
    [640, '', 614, 'sound alike'],
    [12, '', 112, 'a hundred and'],
    [6, '', 600, 'hundred'],
    [412, '', 12, 'for'],
    [12, 'is for ', 412, 'four'],
    [4242, '', 42, 'repeat'],
    [664, '', 64, 'twice'],
    [64, '', 640, 'nought'],
    [640, '', 64, 'nought'],
    [146, '', 164, 'swapped'],
    [25, '', 2.5, 'point'],
    [2.5, '', 25, 'point'],
    [59, '', 55, 'nine'],
    [62, '', 612, 'lost'],
  ])('%d behind “%s” may be %d', (said, before, meant, why) => {
    const found = mishearings(said, before).find(({ value }) => value === meant);
    expect(found?.why).toContain(why);
  });

  test('is never itself, and each other is told once', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9999 }), (value) => {
        const values = mishearings(value, '').map((each) => each.value);
        expect(values).not.toContain(value);
        expect(new Set(values).size).toBe(values.length);
        expect(values.every((each) => each > 0)).toBe(true);
      }),
    );
  });
});

describe('a statement that is off', () => {
  test('names a hearing that would agree, and none that would not', () => {
    const file = dishOf({ protein: '15.0', energyKcal: '612', energyKj: '2561' });
    const heard = (words: string) =>
      rowsOf(file, `The whole pot has ${words}.`)[0]?.misheard.map((each) => each.heard);
    expect(heard('50 grams of protein')?.[0]).toBe('15 grams of protein');
    expect(heard('fifty grams of protein')?.[0]).toBe('15 grams of protein');
    expect(heard('2561 calories')).toContain('2561 kilojoules');
    expect(heard('33 grams of protein')).toEqual([]);
    // It agrees, and was written by hand: nothing was heard.
    expect(heard('15 grams of protein')).toEqual([]);
    expect(
      rowsOf(file, 'The whole pot has 50 grams of protein.', 'description')[0]?.misheard,
    ).toEqual([]);
  });
});
