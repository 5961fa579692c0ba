import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  gramsText,
  quantityText,
  readGrams,
  readQuantity,
  readRuntime,
} from '#lib/units/read-quantity';
import { printRuntime } from '#lib/units/print';

// Common practice of written recipes; there is no standard for amounts as text.
const AMOUNTS: [string, string, string][] = [
  ['2', '2/1', '2/1'],
  ['2.5', '5/2', '5/2'],
  ['2,5', '5/2', '5/2'],
  ['.5', '1/2', '1/2'],
  ['1/2', '1/2', '1/2'],
  ['1 1/2', '3/2', '3/2'],
  ['1½', '3/2', '3/2'],
  ['½', '1/2', '1/2'],
  ['1⁄3', '1/3', '1/3'],
  ['2-3', '2/1', '3/1'],
  ['2 – 3', '2/1', '3/1'],
  ['1/2 to 1', '1/2', '1/1'],
  ['1 ½–2', '3/2', '2/1'],
  ['⅖', '2/5', '2/5'],
  ['1⅙', '7/6', '7/6'],
  ['0,125', '1/8', '1/8'],
];

describe('an amount as text', () => {
  test.each(AMOUNTS)('%s is %s to %s', (text, low, high) => {
    const read = readQuantity(text);
    expect(`${read?.low.num}/${read?.low.den}`).toBe(low);
    expect(`${read?.high.num}/${read?.high.den}`).toBe(high);
  });

  test.each([
    '',
    'a few',
    '1/0',
    '3-2',
    '1-2-3',
    '-1',
    '1 2',
    '1.2.3',
    '9999999999',
    '2 cups',
    '1,500',
    '10,125',
    '½½',
  ])('%j is none', (text) => {
    expect(readQuantity(text)).toBeNull();
  });

  test('printed and read again is the same amount', () => {
    const ratio = fc.tuple(fc.integer({ min: 0, max: 5000 }), fc.integer({ min: 1, max: 64 }));
    fc.assert(
      fc.property(ratio, ratio, (a, b) => {
        const [low, high] = [a, b]
          .map(([num, den]) => ({ num, den }))
          .sort((x, y) => x.num / x.den - y.num / y.den);
        if (!low || !high) throw new Error('two ends');
        const again = readQuantity(quantityText({ low, high }));
        expect((again?.low.num ?? NaN) * low.den).toBe(low.num * (again?.low.den ?? NaN));
        expect((again?.high.num ?? NaN) * high.den).toBe(high.num * (again?.high.den ?? NaN));
      }),
    );
  });
});

describe('grams as text', () => {
  test.each<[string, number, number, number]>([
    ['20', 20_000, 20_000, 20_000],
    ['20 g', 20_000, 20_000, 20_000],
    ['20 ± 7', 13_000, 20_000, 27_000],
    ['20 +- 7 g', 13_000, 20_000, 27_000],
    ['5 ± 7', 0, 5_000, 12_000],
    ['13–27', 13_000, 20_000, 27_000],
    ['18 (13–27)', 13_000, 18_000, 27_000],
    ['0.5', 500, 500, 500],
  ])('%s', (text, lowMg, valueMg, highMg) => {
    expect(readGrams(text)).toEqual({ lowMg, valueMg, highMg });
  });

  test.each(['', 'some', '13–27 ± 2', '1 ± 1 ± 1', '20 ± 3–4', '2000000000', '5 (6–7)'])(
    '%j is none',
    (text) => {
      expect(readGrams(text)).toBeNull();
    },
  );

  test('printed and read again are the same grams', () => {
    const mg = fc.integer({ min: 0, max: 2_000_000 });
    fc.assert(
      fc.property(mg, mg, mg, (a, b, c) => {
        const [lowMg = 0, valueMg = 0, highMg = 0] = [a, b, c].sort((x, y) => x - y);
        const mass = { lowMg, valueMg, highMg };
        expect(readGrams(gramsText(mass))).toEqual(mass);
      }),
    );
  });
});

test('a running time printed and read again is the same', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 359_999 }), (seconds) => {
      expect(readRuntime(printRuntime(seconds))).toBe(seconds);
    }),
  );
  expect(readRuntime('45 s')).toBe(45);
  for (const text of ['', '3', '3:75', '3:5', 'soon']) expect(readRuntime(text)).toBeNull();
});
