import { expect, test } from 'vitest';
import type { SaidLine } from '#lib/episode/said-line';
import { isBroken, saidStandings } from '#lib/overview/said-standing';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';

// 100 kcal and 10 g of protein in 100 g, as printed; so grams and kilocalories are one number.
const food = aFood('f', { energyKcal: '100.00', protein: '10.00' });
const of = (soup: number, said: SaidLine[]) =>
  aFile(
    [
      aDish('soup', aRecipe('r1', [grams('leek', 'f', soup)])),
      aDish('bread', aRecipe('r2', [grams('flour', 'f', 300)])),
    ],
    [food],
    { said },
  );
const line = (scope: SaidLine['scope'], amount: number): SaidLine => ({
  id: `s-${amount}`,
  at: '2026-11-14T11:40:00Z',
  scope,
  text: `It has ${amount} calories.`,
  numbers: [{ nutrient: 'energyKcal', amount, hedge: 'exact', value: amount }],
});
const whole = (amount: number) => line({ kind: 'whole', segmentId: 'soup' }, amount);

test('what was said stands while its figures are what they were', () => {
  expect(saidStandings(of(251, [whole(251)]))).toEqual([
    {
      id: 's-251',
      segmentId: 'soup',
      about: 'soup: all of it',
      on: '14 Nov',
      text: 'It has 251 calories.',
      change: null,
      clashes: false,
    },
  ]);
});

test('a change under it is told with what it was and is, and breaks it where it covers no more', () => {
  const [broken] = saidStandings(of(280, [whole(251)]));
  expect(broken?.change).toEqual({ kind: 'off', words: 'You said 251 calories, it is now 280.' });
  expect(broken && isBroken(broken)).toBe(true);
  const [covered] = saidStandings(of(253, [whole(250)]));
  expect(covered?.change?.kind).toBe('covered');
  expect(covered && isBroken(covered)).toBe(false);
});

test('a change of another dish breaks what was said of the day, and of the day so far only what is in it', () => {
  const said = [line({ kind: 'day' }, 551), line({ kind: 'soFar', segmentId: 'soup' }, 251)];
  const broken = (soup: number) => saidStandings(of(soup, said)).map(isBroken);
  expect(broken(251)).toEqual([false, false]);
  expect(broken(300)).toEqual([true, true]);
});

test('of a portion that was taken out it says so', () => {
  const gone = line({ kind: 'portion', segmentId: 'soup', portionId: 'gone' }, 60);
  expect(saidStandings(of(251, [gone]))[0]).toMatchObject({
    about: 'soup: a portion',
    change: { kind: 'off', words: 'What it was said of is no longer in the episode.' },
  });
});

test('where what was said rests on a food that nobody has confirmed any more, it can’t be said now', () => {
  const recipe = aRecipe('r1', [{ ...grams('leek', 'f', 251), match: 'provisional' }]);
  const file = aFile([aDish('soup', recipe)], [food], { said: [whole(251)] });
  expect(saidStandings(file)[0]?.change?.words).toContain('now it can’t be said');
});
