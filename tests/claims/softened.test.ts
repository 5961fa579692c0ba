import { expect, test } from 'vitest';
import { readStatements } from '#lib/claims/read-statements';

/** Each number of a text that is spoken of one dish, with how it is softened. */
const hedges = (text: string) =>
  readStatements(text, { form: 'captions', dish: 'Harbour pilaf' }).flatMap((one) =>
    'hedge' in one ? [`${one.low} ${one.hedge}`] : [],
  );

// Turns of speech: common practice, no source.
test.each([
  ['Calories? Four seventy, give or take.', ['470 about']],
  ['it is 400 calories, more or less, and 31 protein', ['400 about', '31 none']],
  ['four hundred calories give or take thirty one grams of protein', ['400 about', '31 none']],
  ['four hundred calories roughly thirty one grams of protein', ['400 none', '31 about']],
  ['give or take 400 calories', ['400 about']],
  ['this makes about 20 meatballs', ['20 about']],
  ['thirty four grams of fat a plate, give or take, and more', ['34 about']],
  ['420 calories a bowl roughly thirty protein', ['420 none', '30 about']],
  ['I used a cup\nroughly two cups of flour and one egg', ['2 about', '1 none']],
])('a hedge is of the number that it stands with: %s', (text, want) => {
  expect(hedges(text)).toEqual(want);
});

test.each([
  ['All macros are estimates, I have no lab. It is 560 calories, 48 protein.', ['560', '48']],
  ['these numbers are rough 400 calories 30 protein', ['400', '30']],
])('what is said of all softens all: %s', (text, want) => {
  expect(hedges(text)).toEqual(want.map((number) => `${number} about`));
});

test.each([
  ['macros are roughly 400 calories and 30 protein', ['400 about', '30 none']],
  ['everything is roughly chopped, then 400 calories', ['400 none']],
])('what is said of one, or of something else, does not: %s', (text, want) => {
  expect(hedges(text)).toEqual(want);
});
