import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readCell } from '#lib/foods/read-cell';
import { parsePrinted, printedText, printedValue, unclearNumber } from '#lib/units/printed';
import { readGrams, readQuantity } from '#lib/units/read-quantity';
import {
  readDegrees,
  readMinutes,
  readMoney,
  readNumber,
  readPermille,
  readPrintedGrams,
  readWhole,
} from '#lib/units/read-typed';
import { readScaleGrams } from '#lib/units/scale-grams';

// A space, and neither point nor comma, divides thousands where both are decimal signs: BIPM, The International System
// of Units (SI), 9th edition, 5.4.4 [from memory]. Half of the readers of English write 2,000 all the same.
describe('a comma that may divide thousands is never taken for decimals', () => {
  const READERS: readonly (readonly [string, (text: string) => unknown])[] = [
    ['a number', readNumber],
    ['a number with a sign', (text) => readNumber(text, true)],
    ['a whole number', readWhole],
    ['grams', readGrams],
    ['an amount', readQuantity],
    ['grams off a scale', readScaleGrams],
    ['grams as printed', readPrintedGrams],
    ['a price', readMoney],
    ['percent', readPermille],
    ['minutes', readMinutes],
    ['degrees', (text) => readDegrees(text, 'F')],
    ['a value of a label', (text) => readCell(text, 'sodium')],
    ['less than a value', (text) => readCell(`<${text}`, 'sodium')],
  ];

  test.each(READERS)('%s', (_, read) => {
    for (const text of ['1,450', '3,000', '62,125', '480,999']) expect(read(text)).toBeNull();
  });

  test('by no number of whole thousands', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1000, max: 999_999 }), (amount) => {
        const text = amount.toLocaleString('en-US');
        expect(parsePrinted(text)).toBeNull();
        expect(unclearNumber(text)).toContain(String(amount));
      }),
    );
  });

  test.each([
    ['0,125', 0.125],
    ['1,45', 1.45],
    ['1,4', 1.4],
    ['12,3456', 12.3456],
    ['1450', 1450],
    ['1.455', 1.455],
  ])('%s is plain', (text, value) => {
    expect(readNumber(text)).toBe(value);
    expect(unclearNumber(text)).toBeNull();
  });
});

test('a point before three digits of which the last is 0 divides thousands as likely', () => {
  expect(readNumber('3.000')).toBeNull();
  expect(readGrams('1.250 g')).toBeNull();
  expect(unclearNumber('3.000')).toBe('“3.000” may be 3000 or 3. Write the one that you mean.');
  expect(readPrintedGrams('28.500')).toEqual({ mg: 28_500, decimals: 3 });
});

test('what is said names both readings', () => {
  expect(unclearNumber('at most 1,450 kcal')).toBe(
    '“1,450” may be 1450 or 1.45. Write the one that you mean.',
  );
  expect(unclearNumber('many')).toBeNull();
});

test('what is printed of a number reads back the same', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1e9 }), fc.integer({ min: 0, max: 6 }), (n, scale) => {
      const printed = { mantissa: n, scale };
      expect(parsePrinted(printedText(printed))).toEqual(printed);
      expect(readNumber(String(printedValue(printed)))).toBe(printedValue(printed));
    }),
  );
});
