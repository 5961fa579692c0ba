import { describe, expect, test } from 'vitest';
import { asSpoken, tokenize } from '#lib/claims/words/tokens';

const words = (text: string) => tokenize(text).map(({ folded }) => folded);
const spoken = (text: string) =>
  asSpoken(tokenize(text))
    .map(({ folded }) => folded)
    .join(' ');

describe('tokens', () => {
  test.each([
    ['forty-six g', ['forty', 'six', 'g']],
    ['25-minute', ['25', 'minute']],
    ['45-50', ['45', '-', '50']],
    ['200g', ['200', 'g']],
    ['jalapeños, it’s', ['jalapenos', ',', 'its']],
    ['1½ cups', ['1½', 'cups']],
  ])('%s', (text, expected) => expect(words(text)).toEqual(expected));

  test('times of the clock, timecodes and dates hold no numbers', () => {
    const kinds = tokenize('0:00 00:04:12:08 14/03/2025 2024-05-01').map(({ kind }) => kind);
    expect(kinds).toEqual(['other', 'other', 'other', 'other']);
  });

  test('each stands where its offsets say', () => {
    const text = 'Énergie: 1 850 kJ\n½ tray – €4';
    for (const { start, end, text: token } of tokenize(text)) {
      expect(text.slice(start, end)).toBe(token);
    }
  });
});

describe('captions that roll', () => {
  test('repeat the line before while the next comes in', () => {
    expect(spoken('so this is\nso this is 530 calories\n530 calories and 46')).toBe(
      'so this is 530 calories and 46',
    );
  });

  test('one word alone is no repetition, unless it was the whole line', () => {
    expect(spoken('I like it\nit is 40 grams')).toBe('i like it it is 40 grams');
    expect(spoken('calories\ncalories 40')).toBe('calories 40');
  });
});
