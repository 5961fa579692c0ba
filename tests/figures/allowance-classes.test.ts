import { describe, expect, it } from 'vitest';
import { allowance } from '#lib/figures/allowance';
import type { Nutrient } from '#lib/foods/nutrients';
import { panelNutrients } from '#lib/foods/label-panel';
import { aDish, aFile, aFood, aLine, aRecipe } from '../support/build';

const one = { low: { num: 1, den: 1 }, high: { num: 1, den: 1 } };
const serving = { massMg: 100_000, volumeMl: null, decimals: 0, text: '', perPack: null };

/** The allowance of one serving of a US label that declares so much. */
function allowed(nutrient: Nutrient, declared: string) {
  const food = aFood(
    'label',
    { [nutrient]: declared },
    { kind: 'label' },
    { basis: 'serving', rule: 'us', serving },
  );
  const line = aLine('one serving', 'label', { quantity: one, unit: 'serving' });
  const file = aFile([aDish('d', aRecipe('r', [line]))], [food]);
  return allowance(file, { kind: 'whole', segmentId: 'd' }, nutrient);
}

/** 21 CFR 101.9(g)(5): analysed at most 120 % of what is declared. */
const THIRD_GROUP: readonly Nutrient[] = [
  'energyKcal',
  'sugars',
  'addedSugars',
  'fat',
  'saturated',
  'transFat',
  'cholesterol',
  'sodium',
];

/** 21 CFR 101.9(g)(3)(ii), (g)(4)(ii) (from memory): at least 80 %, as far as naturally occurring. */
const CLASS_II: readonly Nutrient[] = [
  'protein',
  'carbohydrate',
  'fibre',
  'monounsaturated',
  'polyunsaturated',
  'potassium',
  'calcium',
  'iron',
  'vitaminC',
  'vitaminDMicrograms',
];

describe('the classes of 21 CFR 101.9(g)', () => {
  it.each(THIRD_GROUP)('%s: at most 120 %%', (nutrient) => {
    expect(allowed(nutrient, '100')?.side).toBe('atMost');
    expect(allowed(nutrient, '100')?.bound).toBeCloseTo(120, 6);
  });

  it.each(CLASS_II)('%s: at least 80 %%', (nutrient) => {
    expect(allowed(nutrient, '100')?.side).toBe('atLeast');
    expect(allowed(nutrient, '100')?.bound).toBeCloseTo(80, 6);
  });

  it('leave nothing that a US panel prints without a limit but polyols and alcohol', () => {
    const without = panelNutrients('us').filter((each) => allowed(each, '100')?.side === null);
    expect(without).toEqual(['polyols', 'alcohol']);
  });
});
