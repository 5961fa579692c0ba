import { expect, it } from 'vitest';
import { episodeFigures } from '#lib/figures/episode-figures';
import { waitingLines } from '#lib/overview/waiting-lines';
import { aDish, aFile, aFood, aLine, aRecipe, grams } from '../support/build';

const oats = aFood('oats', { energyKcal: '379' });

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
