import { describe, expect, it } from 'vitest';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import { waitingLines } from '#lib/overview/waiting-lines';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, grams } from '../support/build';

const oats = aFood('oats', { energyKcal: '379' });
const ONE = { num: 1, den: 1 };

it('lists what waits for the person in its order, with what it waits for', () => {
  const lines = [
    grams('ready', 'oats', 50),
    grams('a match to confirm', 'oats', 50, { match: 'provisional' }),
    aLine('no food', null, { match: 'provisional' }),
    aLine('no grams', 'oats'),
    aLine('neither, and its food comes first', 'oats', { match: 'provisional' }),
  ];
  const dish = aDish('d', aRecipe('r', lines));
  const [figures] = episodeFigures(aFile([dish], [oats])).dishes;
  const waiting = waitingLines(lines, figures?.lines ?? []);
  expect(waiting.map(({ line, waits }) => [line.id, waits])).toEqual([
    ['a match to confirm', 'confirm'],
    ['no food', 'noFood'],
    ['no grams', 'noGrams'],
    ['neither, and its food comes first', 'confirm'],
  ]);
});

it('says which of them the headline numbers are known without', () => {
  const plain = { energyKcal: '0', protein: '0', fat: '0', carbohydrate: '0', sodium: '38758' };
  const salt = aFood('salt', plain);
  const lines = [aLine('salt to taste', 'salt'), aLine('a handful of oats', 'oats')];
  const dish = aDish('d', aRecipe('r', lines));
  const [figures] = episodeFigures(aFile([dish], [oats, salt])).dishes;
  const waiting = waitingLines(lines, figures?.lines ?? []);
  expect(waiting.map(({ counts }) => counts)).toEqual([false, true]);
});

describe('an ingredient that is a dish', () => {
  const made = (id: string, recipeId: string, more: Partial<RecipeLine> = {}): RecipeLine =>
    aLine(id, null, {
      madeFrom: { recipeId, rev: 1 },
      planned: { lowMg: 1000, valueMg: 1000, highMg: 1000 },
      ...more,
    });
  const finished = { weighings: [aReading('w', 'finished', 100)] };
  const batch = { planned: null, unit: 'batch', quantity: { low: ONE, high: ONE } } as const;

  it.each<[RecipeLine, Recipe, string | null]>([
    [made('a', 'in'), aRecipe('in', [grams('x', 'oats', 50)], finished), null],
    [made('a', 'in'), aRecipe('in', [grams('x', 'oats', 50)]), 'noDivisor'],
    [made('a', 'in', batch), aRecipe('in', [grams('x', 'oats', 50)]), null],
    [made('a', 'in', { planned: null }), aRecipe('in', [grams('x', 'oats', 50)]), 'noGrams'],
    [made('a', 'other'), aRecipe('in', []), 'noFood'],
    [made('a', 'in', batch), aRecipe('in', [aLine('x', null)]), 'within'],
    [made('a', 'in', batch), aRecipe('in', []), 'within'],
    [
      made('a', 'in', batch),
      aRecipe('in', [grams('x', 'oats', 50, { match: 'provisional' })]),
      'within',
    ],
    // Its source does not state the fat: nothing that anybody can do, and the number says 'at least'.
    [made('a', 'in', batch), aRecipe('in', [grams('x', 'bran', 50)]), null],
    [made('a', 'in', batch), aRecipe('in', [made('x', 'r', batch)]), 'within'],
    [made('a', 'r', batch), aRecipe('in', []), 'cycle'],
  ])('waits for what its dish lacks: %#', (line, recipe, waits) => {
    const bran = aFood('bran', { energyKcal: '216' });
    const full = aFood('oats', {
      energyKcal: '379',
      protein: '13.0',
      fat: '6.5',
      carbohydrate: '67.7',
      fibre: '10.1',
    });
    const file = aFile([aDish('d', aRecipe('r', [line]))], [full, bran], { recipes: [recipe] });
    const [figures] = episodeFigures(file).dishes;
    const [first] = waitingLines([line], figures?.lines ?? []);
    expect(first?.waits ?? null).toBe(waits);
  });
});
