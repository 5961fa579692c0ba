import { describe, expect, it } from 'vitest';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import { dayCautions, insideTemperatures } from '#lib/shoot/day-cautions';
import { leastInside } from '#lib/shoot/inside-least';
import { animalFoods } from '#lib/shoot/may-go-in-raw';
import { aStep } from '../claims/judge-beyond/invented-kitchen';
import { aDish, aFile, aFood, aLine, aRecipe, grams } from '../support/build';

/*
 * FoodSafety.gov, Safe Minimum Internal Temperature Chart, 12 April 2019 (the same at USDA FSIS): poultry 165 °F, which
 * is 73.9 °C. However it comes into a dish, the day says so.
 */
const LABEL = aFood('label', {}, { kind: 'label', name: 'Thighs, boneless' });
const BALLS = aRecipe('balls', [aLine('b', null, { text: '400 g minced turkey' })]);

describe('raw poultry that nobody calls raw', () => {
  it.each<readonly [string, RecipeLine]>([
    ['a label’s food as it is sold', grams('l', 'label', 500, { text: '500 g of the big pack' })],
    ['words without a food', aLine('l', null, { text: '500 g chicken' })],
    ['one of two foods', grams('l', 'rice', 500, { text: '500 g', orFoodId: 'label' })],
    [
      'a dish within',
      aLine('l', null, { text: 'the balls', madeFrom: { recipeId: 'balls', rev: 1 } }),
    ],
  ])('has its caution on the day: %s', (_, line) => {
    const step = aStep('bake', 'Bake it', { coreMilliC: 71_111 });
    const dish = aDish('d', aRecipe('r', [line]), { steps: [step] });
    const file = {
      ...aFile([dish], [LABEL, aFood('rice', {}, { name: 'Rice' })]),
      recipes: [BALLS],
    };
    expect(dayCautions(file, [dish]).map(({ id }) => id)).toContain('inside-poultry');
    expect(insideTemperatures(file, dish)[0]?.below?.text).toContain('at least 73.9 °C (165 °F)');
    expect(leastInside(file, dish, step)?.milliC).toBe(73_889);
  });
});

/* Common practice, no source: what comes out of a tin was heated in it, and is eaten as it is. */
describe('what is eaten as it is bought', () => {
  const rawOf = (text: string) => {
    const recipe = aRecipe('r', [aLine('l', null, { text })]);
    return animalFoods(aFile([aDish('d', recipe)], []), recipe)?.map(({ raw }) => raw);
  };
  it.each([
    ['2 tins salmon', false],
    ['1 x 160 g can of tuna', false],
    ['1 tinned tuna', false],
    ['1 tin of beans, 4 chicken legs', true],
    ['2 salmon fillets', true],
    // A can beside it is not its own.
    ['1 chicken for the beer can', true],
    ['200 g rice', null],
  ])('%s', (text, raw) => {
    expect(rawOf(text)).toEqual([raw]);
  });

  it('is not known of a dish that nobody has filled', () => {
    expect(animalFoods(aFile([], []), aRecipe('r', []))).toBeNull();
  });
});
