import { describe, expect, it } from 'vitest';
import { madeOf, madeWords } from '#lib/overview/made-of';
import { aDish, aLine, aRecipe } from '../support/build';

const provisional = { match: 'provisional' as const };
const soup = aDish(
  'soup',
  aRecipe('r1', [aLine('a leek', 'leek'), aLine('salt', null, provisional)]),
);
const salad = aDish('salad', aRecipe('r2', [aLine('1 lettuce', 'lettuce', provisional)]));
const talk = { ...soup, id: 'talk', kind: 'talk' as const, recipe: null };

describe('what an episode is made of', () => {
  it('counts dishes, ingredients and talk, and the foods that wait for a yes', () => {
    expect(madeOf({ segments: [talk, soup, salad] })).toEqual({
      ...{ dishes: 2, ingredients: 3, talk: 1 },
      // An ingredient without a food has none to confirm.
      ...{ toConfirm: 1, confirmIn: 'salad' },
    });
    expect(madeOf({ segments: [soup] })).toMatchObject({ toConfirm: 0, confirmIn: null });
  });

  it.each([
    [{ dishes: 3, ingredients: 24, talk: 2 }, '3 dishes, 24 ingredients and 2 stretches of talk'],
    [{ dishes: 1, ingredients: 1, talk: 1 }, 'one dish, one ingredient and one stretch of talk'],
    [{ dishes: 2, ingredients: 5, talk: 0 }, '2 dishes and 5 ingredients'],
    [{ dishes: 0, ingredients: 0, talk: 2 }, '2 stretches of talk'],
    [{ dishes: 0, ingredients: 0, talk: 0 }, null],
  ])('is told in words: %o', (made, words) => {
    expect(madeWords(made)).toBe(words);
  });
});
