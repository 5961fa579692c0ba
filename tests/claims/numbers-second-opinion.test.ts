import fc from 'fast-check';
import { toCardinal as american } from 'n2words/en-US';
import { describe, expect, it } from 'vitest';
import { wordsToNumbers } from 'words-to-numbers';
import { ENGLISH } from '#lib/claims/english/english';
import { numberAt } from '#lib/claims/numbers/numbers';
import { tokenize } from '#lib/claims/words/tokens';

/** The number that a text is as a whole; null where it is none, or not all of it. */
function ours(text: string): number | null {
  const tokens = tokenize(text);
  const span = numberAt(tokens, 0, {
    words: ENGLISH.numbers,
    spoken: true,
    thousands: () => true,
    divisible: () => true,
    countable: () => true,
    needsNumber: () => false,
  });
  return span?.to === tokens.length && span.low === span.high ? span.low : null;
}

const theirs = (text: string): unknown => wordsToNumbers(text);

// `words-to-numbers` reads numbers that are written out; `n2words` writes them. Neither knows how numbers are spoken in
// a kitchen, so beyond what is written out the differences are named here. Common practice of speech, no source.
describe('numbers in words, beside words-to-numbers', () => {
  it('that another library wrote out are read alike by both, up to twenty thousand and more', () => {
    fc.assert(
      fc.property(fc.nat({ max: 20_999 }), (number) => {
        const text = american(number);
        expect([text, theirs(text), ours(text)]).toEqual([text, number, number]);
      }),
      { numRuns: 1000 },
    );
  });

  it('from twenty-one thousand on they add the thousand to the tens, and we do not', () => {
    // 21 times 1000; their answer is 20 and 1 times 1000.
    expect(theirs('twenty-one thousand')).toBe(1020);
    fc.assert(
      fc.property(fc.integer({ min: 21_000, max: 999_999 }), (number) => {
        expect(ours(american(number))).toBe(number);
      }),
    );
  });

  it.each([
    'one hundred and five',
    'a thousand one hundred and eleven',
    'four thousand and thirty',
    'twenty-thousand five-hundred and sixty-nine',
    'ten point five',
    'forty nine point six',
    'fourteen hundred',
  ])('%s is read alike', (text) => {
    expect(ours(text)).toBe(theirs(text));
  });

  // What is left out or added up there is one number when somebody speaks of food.
  it.each([
    ['one twelve', 112, 'hundreds said without the word'],
    ['one oh five', 105, '"oh" for nought'],
    ['six forty', 640, 'hundreds said without the word'],
    ['twelve fifty', 1250, 'hundreds said without the word'],
    ['a dozen', 12, 'a word for a count'],
    ['seven and a half', 7.5, 'a half behind a number'],
    ['half a dozen', 6, 'a half of a count'],
  ])('%s is %d to us and something else to them: %s', (text, number) => {
    expect(ours(text)).toBe(number);
    expect(theirs(text)).not.toBe(number);
  });
});
