import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { episodeFigures } from '#lib/figures/episode-figures';
import type { Figure } from '#lib/figures/figure';
import { someOf } from '#lib/figures/print-figure';
import { confirmedOnly, publishedNumbers } from '#lib/figures/published-numbers';
import { sayDay, sayLine, sayLines, spokenNumber, spokenStep } from '#lib/figures/say-line';
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
    [3, 40, 'at most 50'],
  ])('%d ± %d is %s', (value, half, words) => {
    expect(spokenNumber(known(value, half), String(roundTo(value, 1)))).toBe(words);
  });

  it('is rounded by no more than its likely range allows, so that it stays inside', () => {
    const width = fc.double({ min: 0.5, max: 400, noNaN: true });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 5000 }), width, (value, half) => {
        const words = spokenNumber(known(value, half), String(value)) ?? '';
        fc.pre(!words.startsWith('at most'));
        const said = Number(words.replace(/about |,/g, ''));
        expect(Math.abs(said - value)).toBeLessThanOrEqual(half + 1e-9);
      }),
    );
  });

  it('never has more digits than its likely range supports, alone or in a line', () => {
    const width = fc.double({ min: 0, max: 700, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 0, max: 5000, noNaN: true }), width, (value, half) => {
        const words = spokenNumber(known(value, half), String(roundTo(value, 1))) ?? '';
        const said = Number(words.replace(/about |at most |,/g, ''));
        expect(Number.isInteger(said)).toBe(true);
        // The last digit that is said: the coarsest of 1, 5, 10 … that the number is a multiple of.
        const last = [500, 100, 50, 10, 5, 1].find((each) => said % each === 0) ?? NaN;
        // Rounding by the next coarser step would add more error than there is already.
        const coarser = [1, 5, 10, 50, 100, 500].filter((each) => each / 2 <= half);
        expect(last).toBeGreaterThanOrEqual(Math.max(1, ...coarser));
        expect(words.startsWith('about') || words.startsWith('at most')).toBe(half >= 2.5);
      }),
      { numRuns: 500 },
    );
  });

  it('is rounded to the step that the person chose', () => {
    expect(spokenNumber(known(642, 18), '642', 5)).toBe('about 640');
    expect(spokenNumber(known(643, 18), '643', 1)).toBe('643');
    expect(spokenNumber({ ...known(648, 1), low: 647, high: null }, '647', 10)).toBe(
      'at least 640',
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
    expect(lineOf(grams('oats', 'oats', 200), 4)).toMatchObject({
      ready: true,
      text: 'One of 4 has 190 calories and 7 grams of protein.',
      halved: null,
      remark: null,
    });
    expect(lineOf(grams('oats', 'oats', 200), null)).toMatchObject({
      ready: true,
      numbers: [
        { nutrient: 'energyKcal', amount: 758, hedge: 'exact' },
        { nutrient: 'protein', amount: 26, hedge: 'exact' },
      ],
      text: 'The whole dish has 758 calories and 26 grams of protein.',
      halved: null,
      remark: null,
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

describe('every line of a dish', () => {
  const food = aFood('tofu', {
    energyKcal: '144.00',
    protein: '17.270',
    fat: '8.70',
    carbohydrate: '2.80',
  });
  // 307 g: 442 kcal and 53.0 g of protein.
  const linesOf = (spreadG: number, of: number[], energyStep?: 1 | 5 | 10) => {
    const mg = (g: number) => Math.round(g * 1000);
    const planned = { lowMg: mg(307 - spreadG), valueMg: mg(307), highMg: mg(307 + spreadG) };
    const portions = of.map((each) => ({
      id: `p${each}`,
      kind: 'count' as const,
      name: '',
      of: each,
    }));
    const file = aFile(
      [aDish('d', aRecipe('r', [aLine('tofu', 'tofu', { planned })], { portions }))],
      [food],
    );
    const figures = episodeFigures(file);
    const [dish] = figures.dishes;
    if (!dish) throw new Error('no dish');
    const numbers = confirmedOnly(publishedNumbers(file, figures));
    return {
      day: sayDay(figures, numbers, { energyStep }),
      lines: sayLines(dish, portions, figures, numbers, { energyStep }).map(({ line }) => line),
    };
  };

  it('is of the whole, each portion, half of it, and of the day', () => {
    const { lines, day } = linesOf(0.5, [4]);
    expect(lines.map((line) => line.ready && line.text)).toEqual([
      'The whole dish has 442 calories and 53 grams of protein.',
      'One of 4 has 111 calories and 13 grams of protein.',
      'Half of it has 221 calories and 27 grams of protein.',
    ]);
    expect(day.ready && day.text).toBe(
      'The dishes shown have 442 calories and 53 grams of protein.',
    );
  });

  it('says an odd gram halved both ways, and no half gram that the range does not support', () => {
    const halved = (spreadG: number) =>
      linesOf(spreadG, [2]).lines.map((line) => line.ready && line.halved);
    expect(halved(0.5)).toEqual([null, '53 grams halved: 26 and a half grams, or 26 and 27.']);
    // ± 10 g of it are ± 1 g of protein likely: ± 0.6 for a half, more than half a gram.
    expect(halved(10)).toEqual([null, '53 grams halved: 26 and 27.']);
    expect(halved(40)).toEqual([null, null]);
  });

  it('says where the person chose more digits than the likely range supports', () => {
    const remark = (energyStep?: 1 | 5 | 10) => {
      const [whole] = linesOf(15, [], energyStep).lines;
      return whole?.ready ? whole.remark : 'not ready';
    };
    // ± 15 g are ± 22 kcal, which supports tens.
    expect([remark(), remark(10)]).toEqual([null, null]);
    expect(remark(1)).toBe('More digits than its likely range supports: 420 to 464 calories.');
  });
});

it('a sentence names three, or the fourth where it is the last, and counts the others', () => {
  expect(someOf(['a', 'b', 'c', 'd'])).toBe('a, b, c, d');
  expect(someOf(['a', 'b', 'c', 'd', 'e'])).toBe('a, b, c and 2 more');
  expect(someOf([])).toBe('');
});
