import { describe, expect, it } from 'vitest';
import { amountContext } from '#lib/episode/context';
import { eatenAmount } from '#lib/episode/eaten-amount';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { Food } from '#lib/foods/food';
import { aDish, aFile, aFood, aLine, aRecipe } from '../support/build';

const oneCup: Partial<RecipeLine> = {
  quantity: { low: { num: 1, den: 1 }, high: { num: 1, den: 1 } },
  unit: 'cup',
};

function gapOf(food: Food, over: Partial<RecipeLine>): string | null {
  const line = aLine('line', food.id, over);
  const file = aFile([aDish('d', aRecipe('r', [line]))], [food]);
  const eaten = eatenAmount(line, [], amountContext(file));
  return eaten.known ? null : eaten.gap;
}

describe('an amount in another measure than the composition is stated for', () => {
  const values = { energyKcal: '100' };
  const serving = (massMg: number | null, volumeMl: number | null) => ({
    basis: 'serving' as const,
    serving: { massMg, volumeMl, decimals: 0, text: '1 pot', perPack: null },
  });

  it('asks for grams, rather than counting as none', () => {
    expect(gapOf(aFood('cheese', values), oneCup)).toBe('noGrams');
    expect(gapOf(aFood('pot', values, {}, serving(150_000, null)), oneCup)).toBe('noGrams');
  });

  it('is known where a measure or the serving leads over', () => {
    const cup = { id: 'm', name: 'cup', qtyNum: 1, qtyDen: 1, massMg: 113_000, digits: 0 };
    const measures = [{ ...cup, source: 'USDA SR28' }];
    expect(gapOf(aFood('cheese', values, { measures }), oneCup)).toBeNull();
    expect(gapOf(aFood('milk', values, {}, { basis: 'per100ml' }), oneCup)).toBeNull();
    expect(gapOf(aFood('drink', values, {}, serving(null, 250)), oneCup)).toBeNull();
  });
});
