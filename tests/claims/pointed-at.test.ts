import { expect, test } from 'vitest';
import { readStatements } from '#lib/claims/read-statements';
import type { TextContext } from '#lib/claims/statement';

/** Of what the first number of a text is said, where nobody has said which dish is talked about. */
const scopeOf = (text: string, form: TextContext['form'] = 'captions') => {
  const [first] = readStatements(text, { form });
  return first && 'scope' in first ? first.scope : undefined;
};

// Turns of speech: common practice, no source.
test.each([
  ['I made this on a whim and it has 410 calories', 'dish'],
  ['there are 31 grams of protein in this bake of ours', 'dish'],
  ['you get 90 percent of your daily vitamin C from this', 'dish'],
  ['okay these come out at 520 calories', 'dish'],
  // What is pointed at afterwards, in words of its own, is not yet spoken of.
  ['Over 50 grams of protein, and it is done in a quarter of an hour', 'unknown'],
  ['31 grams of protein and then I had a coffee', 'unknown'],
])('a dish is meant where a word points at it: %s', (text, scope) => {
  expect(scopeOf(text)).toBe(scope);
});

test.each([
  ['Harbour noodle jar\n41P 52C 12F', 'dish'],
  ['41 g protein\n52 g carbs', 'unknown'],
  ['2 jars a week\n41 g protein', 'unknown'],
])('the first line of a card names the dish, if it is of words alone: %j', (text, scope) => {
  const [last] = readStatements(text, { form: 'card' }).slice(-1);
  expect(last && 'scope' in last ? last.scope : undefined).toBe(scope);
});
