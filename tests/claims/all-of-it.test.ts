import { expect, test } from 'vitest';
import { readStatements } from '#lib/claims/read-statements';

const CONTEXT = { form: 'captions', dish: 'Bean stew', dishes: ['Bean stew'] } as const;

/** Of what the last number of a text is said. */
function said(text: string) {
  const last = readStatements(text, CONTEXT).at(-1);
  return last && 'scope' in last ? [last.scope, ...('food' in last ? [last.food] : [])] : null;
}

// Turns of speech: common practice, no source.
test.each([
  ['the whole tub is 330 calories', 'whole'],
  ["the whole pie's eighteen hundred calories", 'whole'],
  ['the entire batch of this sorbet works out at 480 calories', 'whole'],
  ['the whole pan of brownies is 2000 calories', 'whole'],
  ['the whole of it is 900 calories', 'whole'],
  ['and half the tub is 165 calories', 'half'],
])('all or half of what was made is no ingredient: %s', (text, scope) => {
  expect(said(text)).toEqual([scope]);
});

test.each([
  ['a whole jar of pesto is 600 calories', 'pesto'],
  ['the whole tin of tomatoes is 80 calories', 'tomato'],
  ['the whole milk is 120 calories', 'whole milk'],
])('all of a food is: %s', (text, food) => {
  expect(said(text)).toEqual(['ingredient', food]);
});
