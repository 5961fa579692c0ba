import { expect, test } from 'vitest';
import { readStatements } from '#lib/claims/read-statements';

const CONTEXT = {
  form: 'captions',
  dish: 'Harbour bake',
  dishes: ['Harbour bake'],
  ingredients: ['potato', 'leek', 'cheddar'],
} as const;

const named = (text: string) =>
  readStatements(text, CONTEXT).flatMap((one) => (one.kind === 'foodNamed' ? [one.food] : []));

// Turns of speech: common practice, no source.
test.each([
  "this bake doesn't have bacon in it",
  'if you have capers you could put those on',
  'my neighbour would put cream in but I never do',
  'hers had dumplings on top, bless her',
  'I will not pretend this is a salad',
  'the beef one has more fat in it',
  "the rabbit's left none for me",
  'it was six euros for the whole cake',
])('a food that does not go in is none that is named: %s', (text) => {
  expect(named(text)).toEqual([]);
});

test.each([
  ['and then I put bacon on top', ['bacon']],
  ['we had bread with it', ['bread']],
])('one that goes in or beside is: %s', (text, foods) => {
  expect(named(text)).toEqual(foods);
});

test('an hour that is meant is not taken back', () => {
  const read = readStatements(
    'then it rests for at least an hour, and I mean it. I use a 20 cm tin',
    {
      form: 'captions',
    },
  );
  expect(read.map(({ words, kind }) => [kind, words])).toEqual([['minutes', 'at least an hour']]);
});
