import { describe, expect, it } from 'vitest';
import { episodeFigures } from '#lib/figures/episode-figures';
import { zeroLabelRemarks } from '#lib/figures/zero-label-remark';
import type { FoodVersion } from '#lib/foods/food';
import { aDish, aFile, aFood, aLine, aRecipe, grams } from '../support/build';

const serving = {
  massMg: 250,
  volumeMl: null,
  decimals: 2,
  text: '1/4 second spray',
  perPack: 500,
};
const ZERO = {
  energyKcal: '0',
  fat: '0',
  sodium: '0',
  cholesterol: '0',
  carbohydrate: '0',
  protein: '0',
};

function remarks(
  servings: number,
  more: Partial<FoodVersion> = {},
  values: Parameters<typeof aFood>[1] = ZERO,
) {
  const spray = aFood(
    'spray',
    values,
    { kind: 'label', name: 'Cooking spray' },
    { basis: 'serving', serving, rule: 'us', ...more },
  );
  const quantity = { num: servings, den: 1 };
  const line = aLine('cooking spray', 'spray', {
    quantity: { low: quantity, high: quantity },
    unit: 'serving',
  });
  const file = aFile([aDish('d', aRecipe('r', [line]))], [spray]);
  return zeroLabelRemarks(file, episodeFigures(file), 'd');
}

// "0" on a US label: under 5 kcal, under 0.5 g of fat, protein and carbohydrate, under 5 mg of sodium, 2.5 mg at most of
// cholesterol (21 CFR 101.9(c)(1) to (7)); how much is large is common practice, no source.
describe('a label that says 0', () => {
  it('of 20 servings may be up to 100 kcal and 10 g of fat', () => {
    const [remark] = remarks(20);
    expect(remark?.hidden).toEqual([
      { nutrient: 'energyKcal', top: 100 },
      { nutrient: 'fat', top: 10 },
      { nutrient: 'cholesterol', top: 50 },
      { nutrient: 'sodium', top: 100 },
      { nutrient: 'carbohydrate', top: 10 },
      { nutrient: 'protein', top: 10 },
    ]);
    expect(remark?.words).toBe(
      'cooking spray: its label says 0 of calories, fat, cholesterol and 3 more, and 20 servings of it may hold ' +
        'up to 100 kcal, 10 g fat, 50 mg cholesterol and 3 more. The ranges count that, the numbers do not. ' +
        'A reference food in its place says how much it is.',
    );
  });

  it('is not remarked on where it can be no more than a published unit', () => {
    // 2 servings: 10 kcal, 1 g, 10 mg of sodium, 5 mg of cholesterol; 3 are more.
    expect(remarks(2)).toEqual([]);
    expect(remarks(3)[0]?.hidden.map(({ nutrient }) => nutrient)).toEqual([
      'energyKcal',
      'fat',
      'cholesterol',
      'sodium',
      'carbohydrate',
      'protein',
    ]);
  });

  it('is not remarked on where its second column says what it is', () => {
    const values = { ...ZERO };
    const per100 = { energyKcal: { kind: 'eq', mantissa: 880, scale: 0 } } as const;
    const [remark] = remarks(20, { secondColumn: { basis: 'per100g', values: per100 } }, values);
    expect(remark?.hidden.map(({ nutrient }) => nutrient)).not.toContain('energyKcal');
  });

  it('is not one that says less than 1, a blank, or a table’s 0.00', () => {
    expect(remarks(20, {}, { fat: '<1', protein: '' })).toEqual([]);
    expect(remarks(20, { rule: 'asPrinted' }, { fat: '0.00' })).toEqual([]);
  });

  it('in the EU counts by grams: 0 g of fat is up to 0.5 g in 100 g', () => {
    // EU guidance on tolerances, 2012 (from memory): up to 0.5 g may be declared as 0.
    const drink = aFood(
      'drink',
      { fat: '0', energyKcal: '0' },
      { kind: 'label', witnessId: 'whey' },
      { rule: 'eu' },
    );
    const whey = aFood('whey', { fat: '0.09' }, { name: 'Whey, sweet, fluid' });
    const file = aFile(
      [aDish('d', aRecipe('r', [grams('a drink', 'drink', 300)]))],
      [drink, whey],
      {
        resolutionMg: 1,
      },
    );
    const [remark] = zeroLabelRemarks(file, episodeFigures(file), 'd');
    expect(remark?.hidden).toEqual([{ nutrient: 'fat', top: expect.closeTo(1.5, 4) }]);
    expect(remark?.witness).toBe('Whey, sweet, fluid');
    expect(remark?.words).toContain('300 g of it may hold up to 1.6 g fat.');
  });

  it('is counted in the range and not in the value', () => {
    const whole = (servings: number) => {
      const spray = aFood('s', ZERO, { kind: 'label' }, { basis: 'serving', serving, rule: 'us' });
      const count = { num: servings, den: 1 };
      const line = aLine('s', 's', { quantity: { low: count, high: count }, unit: 'serving' });
      return episodeFigures(aFile([aDish('d', aRecipe('r', [line]))], [spray])).dishes[0]?.whole;
    };
    expect(whole(20)?.energyKcal).toMatchObject({ value: 0, high: expect.closeTo(100, 6) });
  });
});
