import { describe, expect, test } from 'vitest';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';
import { rowsOf } from './edit-build';

/* An invented stew of 400 calories in deep bowls of 200 and small bowls of 100. The readings are the project’s own; no source. */

const STEW = aDish(
  'stew',
  aRecipe('r', [grams('beans', 'bean', 400)], {
    portions: [
      { id: 'deep', kind: 'count', name: 'a deep bowl', of: 2 },
      { id: 'small', kind: 'count', name: 'a small bowl', of: 4 },
    ],
  }),
  { title: 'Bean stew' },
);
const FILE = aFile([STEW], [aFood('bean', { energyKcal: '100.0', protein: '10.00' })], {
  resolutionMg: 1,
});
const verdicts = (words: string, kind: Parameters<typeof rowsOf>[2]) =>
  rowsOf(FILE, words, kind)
    .filter(({ statement }) => statement.kind === 'nutrient')
    .map(({ verdict }) => verdict);

describe('a number in whose sentence a portion is named', () => {
  test.each([
    ['Bean stew, a deep bowl: 200 kcal', 'card', ['agrees']],
    ['Bean stew, a deep bowl: 100 kcal', 'card', ['off']],
    // Behind the number.
    ['Bean stew: 200 kcal for a deep bowl', 'card', ['agrees']],
    ['Bean stew: 100 kcal for a deep bowl', 'card', ['off']],
    ['Bean stew: 100 kcal in a small bowl.', 'description', ['agrees']],
    // A line of captions ends within the sentence.
    ['a small bowl of it\nhas 100 calories', 'captions', ['agrees']],
    ['a small bowl of it\nhas 200 calories', 'captions', ['off']],
    // Each has its own.
    [
      'a deep bowl is 200 calories and a small bowl is 100 calories',
      'captions',
      ['agrees', 'agrees'],
    ],
    [
      '200 calories in a deep bowl and 100 calories in a small bowl',
      'captions',
      ['agrees', 'agrees'],
    ],
    ['100 calories in a deep bowl and 200 calories in a small bowl', 'captions', ['off', 'off']],
    ['A deep bowl: 200 kcal, 20 g protein', 'card', ['agrees', 'agrees']],
    // A line of a card is one of its own.
    ['Bean stew, a deep bowl\nBean stew: 100 kcal', 'card', ['unknown']],
    // Two names and one number.
    ['a deep bowl or a small bowl, 200 calories', 'captions', ['unknown']],
  ] as const)('%j in a %s: %j', (words, kind, all) => {
    expect(verdicts(words, kind)).toEqual(all);
  });
});
