import fc from 'fast-check';
import { toCardinal as american } from 'n2words/en-US';
import { toCardinal as british } from 'n2words/en-GB';
import { describe, expect, test } from 'vitest';
import { ENGLISH } from '#lib/claims/english/english';
import { numberAt, type NumberSpan } from '#lib/claims/numbers/numbers';
import { tokenize } from '#lib/claims/words/tokens';

/** The number that begins a text, with the tokens it takes; a unit may follow everything. */
function read(text: string): NumberSpan | null {
  return numberAt(tokenize(text), 0, {
    words: ENGLISH.numbers,
    spoken: true,
    thousands: () => true,
    divisible: () => true,
    countable: () => true,
    needsNumber: () => false,
  });
}

const value = (text: string) => {
  const span = read(text);
  return span && span.to === tokenize(text).length ? [span.low, span.high] : null;
};

// Common practice of speech, no source.
describe('numbers in words, in every manner of speaking', () => {
  test.each([
    ['a hundred and twelve', 112],
    ['one-twelve', 112],
    ['one twelve', 112],
    ['one oh five', 105],
    ['six forty', 640],
    ['fourteen hundred', 1400],
    ['eleven hundred and sixty', 1160],
    ['twenty two hundred', 2200],
    ['twelve fifty', 1250],
    ['two thousand one hundred', 2100],
    ['a thousand', 1000],
    ['one thousand and five', 1005],
    ['a hundred sixty five', 165],
    ['forty nine point six', 49.6],
    ['one point two five', 1.25],
    ['point five', 0.5],
    ['seven and a half', 7.5],
    ['two and three quarters', 2.75],
    ['a dozen', 12],
    ['two dozen', 24],
    ['half a dozen', 6],
    ['a couple of', 2],
  ])('%s', (text, number) => expect(value(text)).toEqual([number, number]));
});

describe('numbers in digits', () => {
  test.each([
    ['1,850', 1850],
    ['1 850', 1850],
    ['1,35', 1.35],
    ['12.5', 12.5],
    ['½', 0.5],
    ['1½', 1.5],
    ['1 1/2', 1.5],
    ['3/4', 0.75],
    ['6 40', 640],
    ['1 12', 112],
    ['2 and a half', 2.5],
    ['2 hundred', 200],
  ])('%s', (text, number) => expect(value(text)).toEqual([number, number]));

  test.each(['1.234.567', '1,35,3'])('%s can be no number', (text) =>
    expect(read(text)).toBe(null),
  );

  test('thousands with a point may be decimals: that is noted', () => {
    expect(read('1.420')).toMatchObject({ low: 1.42, unsure: true });
  });
});

describe('ranges', () => {
  test.each([
    ['45-50', 45, 50],
    ['forty-six to forty-eight', 46, 48],
    ['between 20 and 22', 20, 22],
    ['three or four', 3, 4],
    ['four to five hundred', 400, 500],
    ['one seventy to one eighty', 170, 180],
    ['½ to 1', 0.5, 1],
  ])('%s', (text, low, high) => expect(value(text)).toEqual([low, high]));

  test('a number that falls is no range', () => {
    expect(read('400 to 325')).toMatchObject({ low: 400, high: 400 });
  });
});

test('two groups that may be two numbers keep both readings', () => {
  expect(read('eighteen eleven')?.parts?.map(({ value: part }) => part)).toEqual([18, 11]);
  expect(read('forty twelve')).toMatchObject({ low: 40, to: 1 });
});

// A second opinion: n2words 4.0.0 (MIT) writes each number, and it is read back.
describe('what a general library writes in words is read back', () => {
  test.each([
    ['British', british],
    ['American', american],
  ])('%s, every number below a hundred thousand', (_, words) => {
    const wrong: string[] = [];
    for (let number = 1; number < 100_000; number += number < 3000 ? 1 : 37) {
      const said = words(number);
      const back = value(said);
      if (back?.[0] !== number || back[1] !== number) wrong.push(`${said}: ${String(back)}`);
    }
    expect(wrong).toEqual([]);
  });

  test('with decimals', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 2000 }),
        fc.integer({ min: 1, max: 9 }),
        (whole, part) => {
          expect(value(british(Number(`${whole}.${part}`)))).toEqual([
            Number(`${whole}.${part}`),
            Number(`${whole}.${part}`),
          ]);
        },
      ),
    );
  });
});
