import { describe, expect, it } from 'vitest';
import { amountApart } from '#lib/episode/amount-apart';
import { amountContext } from '#lib/episode/context';
import { lineFromReading } from '#lib/episode/line-from-reading';
import { readIngredient } from '#lib/episode/read-ingredient';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import { ingredientText } from '#lib/publish/ingredient-text';
import { aDish, aFile, aFood, aLine, aReading, aRecipe } from '../support/build';
import { COMMON_INGREDIENTS } from './common-ingredients';

const COD = aFood('cod', { energyKcal: '80', protein: '18', fat: '1', carbohydrate: '0' });
const ratio = (num: number, den = 1) => ({ low: { num, den }, high: { num, den } });
const mg = (g: number) => ({ lowMg: g * 1000, valueMg: g * 1000, highMg: g * 1000 });

const line = (text: string, more: Partial<RecipeLine>) => aLine(text, 'cod', more);
const contextOf = (of: RecipeLine) => amountContext(aFile([aDish('d', aRecipe('r', [of]))], [COD]));
const apart = (of: RecipeLine) => amountApart(of, [], contextOf(of));
const told = (of: RecipeLine) => ingredientText(of, [], contextOf(of));

describe('words and amount of an ingredient', () => {
  it.each([
    ['120 g cod loin', { quantity: ratio(150), unit: 'g' }, '120 g', '150 g'],
    ['150 g cod loin', { quantity: ratio(120), unit: 'g' }, '150 g', '120 g'],
    ['1.5 kg cod', { quantity: ratio(2), unit: 'kg' }, '1.5 kg', '2000 g'],
    ['Two hundred grams of cod', { planned: mg(90) }, 'Two hundred grams', '90 g'],
    ['6 oz cod', { planned: mg(120) }, '6 oz', '120 g'],
    ['100-120 g cod', { quantity: ratio(140), unit: 'g' }, '100-120 g', '140 g'],
    // Nobody knows what a piece weighs, so that the weight in the words is not what is counted.
    ['12 g cod skin', { quantity: ratio(2), unit: 'piece' }, '12 g', '2 pieces'],
    ['2 tbsp cod roe', { quantity: ratio(3), unit: 'tbsp' }, '2 tbsp', '3 tbsp'],
    ['2 cups flaked cod', { quantity: ratio(3), unit: 'tbsp' }, '2 cups', '3 tbsp'],
    ['4 slices of cod', { quantity: ratio(3), unit: 'piece' }, '4 slices', '3 pieces'],
  ] as [string, Partial<RecipeLine>, string, string][])(
    '%s is told to be apart',
    (text, more, said, counted) => {
      expect(apart(line(text, more))).toEqual({ said, counted });
    },
  );

  it.each([
    ['120 g cod loin', { quantity: ratio(120), unit: 'g' }],
    // 1 oz is 28.349523125 g (NIST Handbook 44, Appendix C).
    ['6 oz cod', { planned: mg(170) }],
    ['8 oz / 225 g cod', { planned: mg(225) }],
    ['1 lb cod', { quantity: ratio(16), unit: 'oz' }],
    ['100-120 g cod', { quantity: ratio(110), unit: 'g' }],
    ['3 tsp cod roe', { quantity: ratio(1), unit: 'tbsp' }],
    ['500 g cod, 420 g skinned', { quantity: ratio(420), unit: 'g' }],
    // What cannot be compared without knowing what a cup weighs.
    ['1 cup flaked cod', { planned: mg(130) }],
    ['1 small cod', { planned: mg(300) }],
    ['cod', { quantity: ratio(120), unit: 'g' }],
    ['120 g cod', {}],
  ] as [string, Partial<RecipeLine>][])('%s is not', (text, more) => {
    expect(apart(line(text, more))).toBeNull();
  });

  it('are never apart where the amount was read from the words', () => {
    for (const [text] of COMMON_INGREDIENTS) {
      for (const part of readIngredient(text)) {
        const read: RecipeLine = { id: 'l', ...lineFromReading(part, null) };
        expect(amountApart(read, [], contextOf(read)), text).toBeNull();
      }
    }
  });

  it('are the plan where a scale was read', () => {
    const of = line('120 g cod', { quantity: ratio(120), unit: 'g' });
    const reading = aReading('w', 'raw', 131, {
      shares: [{ lineId: of.id, share: { num: 1, den: 1 } }],
    });
    expect(amountApart(of, [reading], contextOf(of))).toBeNull();
    expect(ingredientText(of, [reading], contextOf(of))).toBe('120 g cod (131 g weighed, as sold)');
  });
});

describe('a published ingredient says which of two amounts is counted', () => {
  it.each([
    ['120 g cod', { quantity: ratio(150), unit: 'g' }, '120 g cod (counted: 150 g, raw)'],
    ['6 oz cod', { planned: mg(120) }, '6 oz cod (counted: 120 g, raw)'],
    ['6 oz cod', { planned: mg(170) }, '6 oz cod (170 g, raw)'],
    ['120 g cod', { quantity: ratio(120), unit: 'g' }, '120 g cod (raw)'],
    [
      '500 g cod, 420 g skinned',
      { planned: mg(420) },
      '500 g cod, 420 g skinned (counted: 420 g, raw)',
    ],
    [
      '4 slices of cod',
      { quantity: ratio(3), unit: 'piece', planned: mg(90) },
      '4 slices of cod (90 g, raw)',
    ],
    ['12 g cod skin', { quantity: ratio(2), unit: 'piece' }, '12 g cod skin (not counted)'],
    ['cod', {}, 'cod (not weighed)'],
  ] as [string, Partial<RecipeLine>, string][])('%s', (text, more, words) => {
    expect(told(line(text, { state: 'raw', ...more }))).toBe(words);
  });
});
