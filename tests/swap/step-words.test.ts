import { describe, expect, it } from 'vitest';
import { amountContext, dishesOf } from '#lib/episode/context';
import { printDifference } from '#lib/swap/print-difference';
import { proposedName, stepWords, withStep } from '#lib/swap/step-words';
import { textAtAmount } from '#lib/swap/text-at-amount';
import { triedLines } from '#lib/swap/tried-lines';
import { aLine, grams } from '../support/build';
import { kitchen, LINES, swapped } from './kitchen';

const file = kitchen(LINES);
const recipe = dishesOf(file.episode.segments)[0]?.recipe;
if (!recipe) throw new Error('no dish');
const context = amountContext(file);
const toRich = { kind: 'food', lineId: 'curd', foodId: 'rich', massMg: null } as const;
const more = { kind: 'amount', lineId: 'curd', massMg: 250_000 } as const;

describe('the steps of a swap', () => {
  it('are said in words, and name the swap', () => {
    const words = (step: Parameters<typeof stepWords>[0]) => stepWords(step, recipe, context);
    expect(words(toRich)).toBe('Full-fat curd in place of curd');
    expect(words(more)).toBe('curd: 250 g instead of 203 g');
    expect(words({ kind: 'leaveOut', lineId: 'oats' })).toBe('without oats');
    expect(words({ kind: 'add', foodId: 'oil', massMg: 15_000, state: 'asIs' })).toBe(
      'and 15 g of Oil',
    );
    expect(words({ kind: 'leaveOut', lineId: 'gone' })).toContain('that is gone');
    expect(proposedName([toRich], recipe, context)).toBe('Full-fat curd');
    expect(proposedName([more], recipe, context)).toBe('more Skimmed curd');
    expect(proposedName([], recipe, context)).toBe('');
  });

  it('say one thing of an ingredient each, the latest', () => {
    expect(withStep([toRich], more)).toEqual([{ ...toRich, massMg: 250_000 }]);
    expect(withStep([more], { ...more, massMg: 1 })).toEqual([{ ...more, massMg: 1 }]);
    expect(withStep([more], toRich)).toEqual([toRich]);
    expect(withStep([toRich, more], { kind: 'leaveOut', lineId: 'curd' })).toHaveLength(1);
    const oil = { kind: 'add', foodId: 'oil', massMg: 1, state: 'asIs' } as const;
    expect(withStep([oil], oil)).toHaveLength(2);
  });

  it('show each ingredient in its place, those left out too', () => {
    const oil = { kind: 'add', foodId: 'oil', massMg: 15_000, state: 'asIs' } as const;
    const after = swapped(file, [toRich, { kind: 'leaveOut', lineId: 'oats' }, oil]);
    expect(
      triedLines(file, after, 'bowl').map(({ text, amount, kind }) => [text, amount, kind]),
    ).toEqual([
      ['Full-fat curd', '203 g', 'changed'],
      ['oats', '80 g', 'out'],
      ['spread', '15 g', 'same'],
      ['salt to taste', null, 'same'],
      ['Oil', '15 g', 'new'],
    ]);
  });
});

describe('a difference as printed', () => {
  const of = (likelyLow: number | null, likelyHigh: number | null, value = 0) =>
    printDifference(
      {
        nutrient: 'protein',
        value,
        low: likelyLow,
        high: likelyHigh,
        likelyLow,
        likelyHigh,
        missing: [],
      },
      'US',
    );
  it('has its sign, and words that stay true where one end is not known', () => {
    expect(of(39.2, 43.4, 41.2)).toMatchObject({ text: '+41', range: 'likely +39 to +43' });
    expect(of(-3.42, -3.18, -3.3)).toMatchObject({ text: '−3.3', range: 'likely −3.4 to −3.2' });
    expect(of(0, 0)).toMatchObject({ text: '0.0', range: 'likely 0.0' });
    expect(of(4.38, null, 5)).toMatchObject({ text: 'at least +4.3' });
    expect(of(null, -4.38, -5)).toMatchObject({ text: 'at most −4.3' });
    expect(of(null, null)).toMatchObject({ text: 'open' });
  });
});

describe('an ingredient’s words', () => {
  const planned = (mg: number) => ({ lowMg: mg, valueMg: mg, highMg: mg });
  const count = (num: number, den = 1) => ({ low: { num, den }, high: { num, den } });
  it.each([
    ['200 g curd', planned(235_000), null, '235 g curd'],
    ['14 oz ground turkey, 93 %', planned(425_000), null, '425 g ground turkey, 93 %'],
    ['1/2 cup (40 g) oats', planned(55_000), null, '55 g oats'],
    ['2 slices bread', null, count(3), '3 slices bread'],
    ['2 slices bread', null, count(1), '1 slice bread'],
    ['1 tablespoon olive oil', null, count(5, 2), '2 1/2 tablespoons olive oil'],
    ['2 large eggs', null, count(3), '3 large eggs'],
    ['salt to taste', planned(2_000), null, 'salt to taste'],
    [
      '1 large zucchini, about 320 g with its ends',
      planned(250_000),
      null,
      '1 large zucchini, about 320 g with its ends',
    ],
  ])('of %s name the amount that it has now', (text, mass, quantity, expected) => {
    expect(textAtAmount({ ...aLine('x', null, { text, quantity }), planned: mass })).toBe(expected);
  });
  it('stay where nothing can be told', () => {
    expect(textAtAmount(grams('curd', 'lean', 200))).toBe('curd');
  });
});
