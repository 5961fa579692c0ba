import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { episodeFigures } from '#lib/figures/episode-figures';
import type { Figure } from '#lib/figures/figure';
import { someOf } from '#lib/figures/print-figure';
import { confirmedOnly, publishedNumbers } from '#lib/figures/published-numbers';
import { sayLine, spokenNumber, spokenStep } from '#lib/figures/say-line';
import { roundTo } from '#lib/units/print';
import { aDish, aFile, aFood, aLine, aRecipe, grams } from '../support/build';

const known = (value: number, half: number): Figure => ({
  nutrient: 'energyKcal',
  value,
  low: value - half,
  high: value + half,
  likelyLow: value - half,
  likelyHigh: value + half,
  missing: [],
  provisional: [],
  sources: [],
});

// Rounding rules of speech are common practice, no source; the tolerance of "about" is the project's own.
describe('a number as it is said', () => {
  it.each([
    [1285, 37, 'about 1,300'],
    [642, 18, 'about 640'],
    [52, 1.5, '52'],
    [52.4, 0.1, '52'],
    [212, 3, 'about 210'],
    [0.4, 0.2, '0'],
    [3, 40, '3'],
  ])('%d ± %d is %s', (value, half, words) => {
    expect(spokenNumber(known(value, half), String(roundTo(value, 1)))).toBe(words);
  });

  it('is rounded by no more than its likely range allows, so that it stays inside', () => {
    const width = fc.double({ min: 0.5, max: 400, noNaN: true });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 5000 }), width, (value, half) => {
        const words = spokenNumber(known(value, half), String(value)) ?? '';
        const said = Number(words.replace(/about |,/g, ''));
        expect(Math.abs(said - value)).toBeLessThanOrEqual(half + 1e-9);
      }),
    );
  });

  it('takes the next coarser step exactly where its half fits', () => {
    expect([0.1, 2.4, 2.5, 4.9, 5, 24.9, 25].map(spokenStep)).toEqual([1, 1, 5, 5, 10, 10, 50]);
  });

  it('says at least, and nothing where it is open', () => {
    expect(spokenNumber({ ...known(44.9, 1), low: 43.9, high: null }, '43')).toBe('at least 43');
    expect(spokenNumber({ ...known(44.9, 1), low: null, high: null }, '44')).toBeNull();
    expect(spokenNumber({ ...known(44.9, 1), low: null }, '46')).toBeNull();
  });
});

describe('the line to say', () => {
  const food = aFood('oats', {
    energyKcal: '379',
    protein: '13.15',
    fat: '6.5',
    carbohydrate: '67.7',
  });
  const lineOf = (line: ReturnType<typeof aLine>, of: number | null) => {
    const portion = of === null ? null : { id: 'p', of };
    const portions = of === null ? [] : [{ id: 'p', kind: 'count' as const, name: 'one', of }];
    const file = aFile([aDish('d', aRecipe('r', [line], { portions }))], [food]);
    const figures = episodeFigures(file);
    const [dish] = figures.dishes;
    if (!dish) throw new Error('no dish');
    return sayLine(dish, portion, figures, confirmedOnly(publishedNumbers(file, figures)));
  };

  it('is of one portion where there are equal ones, else of the whole dish', () => {
    // 200 g: 758 kcal ± 2.1 likely, 26.3 g; a quarter: 189.5 kcal, 6.6 g.
    expect(lineOf(grams('oats', 'oats', 200), 4)).toEqual({
      ready: true,
      text: 'One of 4 has 190 calories and 7 grams of protein.',
    });
    expect(lineOf(grams('oats', 'oats', 200), null)).toEqual({
      ready: true,
      text: 'The whole dish has 758 calories and 26 grams of protein.',
    });
  });

  it('waits for what is open or not confirmed, and says for what', () => {
    expect(lineOf(aLine('a handful of oats', 'oats'), 4)).toEqual({
      ready: false,
      why: 'no grams for a handful of oats',
    });
    expect(lineOf(grams('200 g oats', 'oats', 200, { match: 'provisional' }), 4)).toEqual({
      ready: false,
      why: 'not confirmed yet: 200 g oats',
    });
  });
});

it('a sentence names three, or the fourth where it is the last, and counts the others', () => {
  expect(someOf(['a', 'b', 'c', 'd'])).toBe('a, b, c, d');
  expect(someOf(['a', 'b', 'c', 'd', 'e'])).toBe('a, b, c and 2 more');
  expect(someOf([])).toBe('');
});
