import { describe, expect, it } from 'vitest';
import { labelRemarks } from '#lib/figures/label-remark';
import type { Food } from '#lib/foods/food';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';

const serving = { massMg: 60_000, volumeMl: null, decimals: 0, text: '1 bar', perPack: 4 };
const BAR = {
  energyKcal: '230',
  fat: '8',
  carbohydrate: '27',
  fibre: '4',
  sugars: '12',
  protein: '14',
};

function remarks(
  values: Parameters<typeof aFood>[1],
  more: Partial<Food> = {},
  version: Parameters<typeof aFood>[3] = {},
) {
  const label = aFood(
    'label',
    values,
    { kind: 'label', name: 'Seed bar', ...more },
    { basis: 'serving', serving, rule: 'us', ...version },
  );
  const table = aFood('table', { protein: '23.50', fat: '13.00' }, { name: 'Bar, seeds' });
  const lines = [grams('one', 'label', 60), grams('two', 'label', 60), grams('three', 'table', 5)];
  return labelRemarks(aFile([aDish('d', aRecipe('r', lines))], [label, table]), 'd');
}

// The slack of a serving and the slips tried: 21 CFR 101.9(c)(1)(i); see check-label and likely-slip.
describe('a label that a dish counts', () => {
  it('is remarked on once, with the likely slip before what cannot be', () => {
    expect(remarks(BAR)).toEqual([]);
    const found = remarks({ ...BAR, protein: '1.4' });
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ foodId: 'label', lineId: 'one' });
    expect(found[0]?.words).toMatch(/^Seed bar: protein 1\.4 looks like 14\. /);
  });

  it('is not remarked on where it was kept with a reason', () => {
    const kept = ['energy-above-nutrients', 'not-by-rule'].map((code) => ({
      code,
      reason: 'says so',
    }));
    expect(remarks({ ...BAR, protein: '1.4' }, {}, { kept })).toEqual([]);
  });

  it('names alcohol, polyols and acids where its name tells of them', () => {
    const wine = remarks({ ...BAR, energyKcal: '380' }, { name: 'Red wine jelly' });
    expect(wine[0]?.words).toContain('Likely: alcohol gives 7 kcal a gram.');
  });

  it('is held against its second witness, with the nutrient and the factor', () => {
    // 60 g with 1 g of protein are 1.7 g in 100 g; the table has 23.5.
    const [remark] = remarks({ fat: '8', protein: '1' }, { witnessId: 'table' });
    expect(remark?.words).toContain('Seed bar against its second witness: protein ');
    expect(remark?.words).toContain('where the table has 23.495–23.505 g: 7 % of it.');
  });
});
