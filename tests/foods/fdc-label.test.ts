import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromDailyValue, labelCell } from '#lib/foods/fdc-label';
import { readAmount } from '#lib/foods/fdc-amount';
import { declareUs, labelInterval } from '#lib/foods/label-rounding';
import type { Nutrient } from '#lib/foods/nutrients';
import { printedValue } from '#lib/units/printed';

const NUTRIENTS: readonly Nutrient[] = [
  'energyKcal',
  'fat',
  'saturated',
  'cholesterol',
  'sodium',
  'carbohydrate',
  'sugars',
  'protein',
];

/** As the downloads work it out: per 100, to two decimals. */
const published = (printed: number, serving: number) =>
  readAmount(String(Math.round((printed / serving) * 10_000) / 100)) ?? { mantissa: 0, scale: 0 };

describe('what a label printed, out of the amount per 100 g', () => {
  // An entry of the public documentation's JSON example: 28 g, 32.14 g fat, 7.1 g fibre, 2.57 mg iron, 568 mg
  // potassium … per 100 g; its label: 9 g, 2 g, 0.72 mg (worked out from those by hand).
  test.each([
    ['fat', '32.14', 28, 9, 0],
    ['fibre', '7.1', 28, 2, 0],
    ['iron', '2.57', 28, 72, 2],
    ['energyKcal', '500', 28, 140, 0],
    ['sodium', '0', 28, 0, 0],
    ['fat', '3.57', 28, 1, 0],
    ['fat', '5.36', 28, 15, 1],
  ] as const)('%s %s in 100 g at %d g', (nutrient, amount, serving, mantissa, scale) => {
    const read = readAmount(amount);
    expect(read && labelCell('us', nutrient, read, serving)).toEqual({
      kind: 'eq',
      mantissa,
      scale,
    });
  });

  test('every number that the rule prints comes back, for servings up to 100 g', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...NUTRIENTS),
        fc.integer({ min: 5, max: 100 }),
        fc.double({ min: 0, max: 60, noNaN: true }),
        (nutrient, serving, true100) => {
          for (const printed of declareUs(nutrient, (true100 * serving) / 100)) {
            if (printed.startsWith('<')) continue;
            const cell = labelCell('us', nutrient, published(Number(printed), serving), serving);
            expect(cell.kind === 'eq' && printedValue(cell)).toBe(Number(printed));
          }
        },
      ),
    );
  });

  test('the bounds hold the true amount, whatever the serving and however coarse the amount', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...NUTRIENTS),
        fc.integer({ min: 5, max: 500 }),
        fc.double({ min: 0, max: 90, noNaN: true }),
        fc.boolean(),
        (nutrient, serving, true100, coarse) => {
          const truth = (true100 * serving) / 100;
          for (const printed of declareUs(nutrient, truth)) {
            if (printed.startsWith('<')) continue;
            const per100 = (Number(printed) / serving) * 100;
            const amount = readAmount(coarse ? String(Math.round(per100)) : per100.toFixed(2));
            const cell = amount && labelCell('us', nutrient, amount, serving);
            const bounds = cell && labelInterval('us', nutrient, cell);
            expect(bounds?.low).toBeLessThanOrEqual(truth + 1e-9);
            expect(bounds?.high).toBeGreaterThanOrEqual(truth - 1e-9);
          }
        },
      ),
      { numRuns: 500 },
    );
  });

  test('a percentage of a daily value is only as sharp as its steps; 0 % says nothing', () => {
    expect(fromDailyValue({ kind: 'eq', mantissa: 20, scale: 0 })).toEqual({
      kind: 'eq',
      mantissa: 20,
      scale: 0,
      plusMinus: { mantissa: 10, scale: 0 },
    });
    expect(fromDailyValue({ kind: 'eq', mantissa: 0, scale: 0 })).toEqual({ kind: 'missing' });
  });
});

describe('an amount as published', () => {
  test.each([
    ['3.50', { mantissa: 350, scale: 2 }],
    ['0.0', { mantissa: 0, scale: 1 }],
    ['12', { mantissa: 12, scale: 0 }],
    ['.5', { mantissa: 5, scale: 1 }],
    ['0E-8', { mantissa: 0, scale: 6 }],
    ['1.2E-3', { mantissa: 12, scale: 4 }],
    ['2.62000000', { mantissa: 2_620_000, scale: 6 }],
    ['1e3', { mantissa: 1000, scale: 0 }],
    ['-0.5', { mantissa: -5, scale: 1 }],
    ['', null],
    ['.', null],
    ['1,5', null],
    ['NaN', null],
    ['1e400', null],
    ['99999999999999999999', null],
  ])('%j', (text, read) => {
    expect(readAmount(text)).toEqual(read);
  });
});
