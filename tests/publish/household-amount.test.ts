import { describe, expect, it } from 'vitest';
import type { FoodMeasure } from '#lib/foods/food';
import { householdAmount } from '#lib/publish/household-amount';
import { aFood, aLine, grams } from '../support/build';

const measure = (name: string, massMg: number, qtyDen = 1): FoodMeasure => ({
  ...{ id: `${name}${String(massMg)}`, name, qtyNum: 1, qtyDen, massMg, digits: 0, source: 'SR28' },
});
const food = (measures: FoodMeasure[], state: 'asIs' | 'raw' | 'dry' = 'dry') =>
  aFood('f', {}, { measures }, { state });
// USDA SR28, weights of household measures: 08120 oats, 11282 onions, 02047 salt, 04053 olive oil.
const OATS = food([measure('cup', 81_000), measure('cup', 27_000, 3)]);
const ONIONS = food([measure('cup, chopped', 160_000), measure('cup, sliced', 115_000)], 'raw');
const SALT = food([measure('tsp', 6_000), measure('tbsp', 18_000)], 'asIs');
const OIL = food([measure('tablespoon', 13_500), measure('cup', 216_000)], 'asIs');

const about = (of: typeof OATS, text: string, g: number, more = {}) => {
  const line = grams('l', 'f', g, { text, state: of.version.state, ...more });
  return householdAmount(line, g * 1000, of);
};

describe('what grams come to by a household measure', () => {
  it.each([
    [OATS, '80 g rolled oats', 80, 'about 1 cup'],
    [OATS, '120 g rolled oats', 120, 'about 1 1/2 cups'],
    [OATS, '27 g rolled oats', 27, 'about 1/3 cup'],
    [ONIONS, '110 g onion, chopped', 110, 'about 2/3 cup'],
    [SALT, '6 g salt', 6, 'about 1 tsp'],
    [SALT, '18 g salt', 18, 'about 1 tbsp'],
    [OIL, '27 g olive oil', 27, 'about 2 tbsp'],
    // 20.9 twelfths of a cup: 20 of them are within 5 % too, and 21 are nearer; 15.3 between 15 and 16.
    [OATS, '141 g rolled oats', 141, 'about 1 3/4 cups'],
    [OATS, '103 g rolled oats', 103, 'about 1 1/4 cups'],
    [OATS, '106 g rolled oats', 106, 'about 1 1/3 cups'],
  ])('%#: %s', (of, text, g, words) => {
    expect(about(of, text, g)).toBe(words);
  });

  it.each([
    ['nothing practical is within 5 %', OATS, '50 g rolled oats', 50, {}],
    ['the measure is of another form', ONIONS, '110 g onion, in rings', 110, {}],
    ['the words name one already', OATS, '1 cup oats, 80 g', 80, {}],
    ['it is counted', OATS, '80 g rolled oats', 80, { unit: 'piece' }],
    ['it was weighed in another state', OATS, '80 g oats', 80, { state: 'cooked' }],
    ['peel and trim are in the weight', ONIONS, '110 g onion, chopped', 110, { asBought: true }],
  ])('is nothing where %s', (_why, of, text, g, more) => {
    expect(about(of, text, g, more)).toBeNull();
  });

  it('is nothing where the food states no measure', () => {
    expect(householdAmount(aLine('l', 'f', { state: 'dry' }), 80_000, food([]))).toBeNull();
  });
});
