import { describe, expect, test } from 'vitest';
import { brief } from './brief';

// Invented sentences; turns of speech are common practice, no source.
describe('where the name of a food ends in captions that run on', () => {
  test.each([
    ['ten ounces of elbow macaroni goes in dry', ['amount 10 oz elbow macaroni']],
    ['80 grams of dried cavatelli goes in next', ['amount 80 g cavatelli']],
    [
      'three cups of nonfat greek yogurt two cups of oat milk',
      ['amount 3 cup greek yogurt', 'amount 2 cup oat milk'],
    ],
    ['three ounces of the reduced fat mature cheddar', ['amount 3 oz cheddar']],
    ['keep some for the tops six spring onions sliced', ['amount 6 piece spring onion']],
    // What is pointed back at is the food before, not what comes next.
    [
      "one tin of mackerel in brine drained that's 110 grams white beans go in too",
      ['amount 1 piece mackerel', 'amount 110 g mackerel'],
    ],
    ["one leek and that's 70 grams of butter", ['amount 1 piece leek', 'amount 70 g butter']],
  ])('%s', (text, said) => expect(brief(text)).toEqual(said));
});

describe('shares of lean and fat before a meat', () => {
  test.each([
    ['two pounds of 93 7 ground turkey', ['amount 2 lb ground turkey']],
    ['a pound of eighty twenty beef', ['amount 1 lb beef']],
    ['one pound of ninety six four ground beef', ['amount 1 lb ground beef']],
  ])('said: %s', (text, said) => expect(brief(text)).toEqual(said));

  test.each([
    [
      '- 3 lb 93/7 ground turkey\n- 2 onions',
      ['amount 3 lb ground turkey', 'amount 2 piece onion'],
    ],
    ['1 lb 85/15 beef\n2 onions', ['amount 1 lb beef', 'amount 2 piece onion']],
  ])('written: %s', (text, said) => expect(brief(text, { form: 'description' })).toEqual(said));
});
