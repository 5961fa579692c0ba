import { describe, expect, it } from 'vitest';
import { episodeFigures } from '#lib/figures/episode-figures';
import { cellOf, type Food } from '#lib/foods/food';
import type { Nutrient } from '#lib/foods/nutrients';
import { addedYieldsSchema } from '#lib/foods/reference-additions';
import { printedValue } from '#lib/units/printed';
import { loadSr28, readSeedJson } from '#seed/load-sr28';
import { aDish, aFile, aRecipe, grams } from '../support/build';

const byNumber = new Map(loadSr28().map((food) => [food.version.sourceNo, food]));

function food(number: string): Food {
  const found = byNumber.get(number);
  if (!found) throw new Error(`SR28 has ${number}`);
  return found;
}

function value(number: string, nutrient: Nutrient): number {
  const cell = cellOf(food(number).version.values, nutrient);
  if (cell.kind !== 'eq') throw new Error(`${number} states ${nutrient}`);
  return printedValue(cell);
}

/** What is eaten of so many grams in a state, and its protein. */
function eaten(number: string, g: number, more: Parameters<typeof grams>[3]) {
  const line = grams('l', food(number).id, g, more);
  const file = aFile([aDish('d', aRecipe('r', [line]))], [food(number)], { resolutionMg: 1 });
  const dish = episodeFigures(file).dishes[0];
  const amount = dish?.lines[0]?.eatenMg;
  const protein = dish?.whole.protein;
  if (!amount || !protein) throw new Error('an amount that is known');
  return { g: amount.value / 1000, low: amount.low / 1000, high: amount.high / 1000, protein };
}

// USDA SR28, Weight file: cooked weight "yield from x g raw".
describe('yields that the table states', () => {
  const { yields, leftOut } = addedYieldsSchema.parse(readSeedJson('yields.json'));

  it('are the pairs of the Weight file, and no others beside the two that are derived', () => {
    const stated = yields
      .filter(({ source }) => source === 'USDA SR28, Weight file')
      .map((each) => [each.sourceNo, Number(each.cookedGrams), Number(each.rawGrams)]);
    expect(stated).toEqual([
      ['05306', 82, 113.4],
      ['05306', 330, 453.6],
      ['23568', 77, 113.4],
      ['23569', 83, 113.4],
      ['23565', 154, 226.8],
      ['13494', 139, 226.8],
      ['13495', 284, 453.6],
      ['13317', 313, 453.6],
      ['13067', 387, 483],
      ['13440', 126, 161],
      ['10859', 150, 189],
      ['17331', 87, 112.7],
    ]);
    const derived = yields.filter(({ source }) => source !== 'USDA SR28, Weight file');
    expect(derived.map(({ sourceNo }) => sourceNo)).toEqual(['10862', '05064']);
  });

  // 139 g from 226.8 g is 61.3 %; protein 26.03 cooked against about 22 raw implies about 84 %.
  it('leave out ground beef 97/3, whose protein speaks against its pair', () => {
    expect(leftOut.map(({ sourceNo }) => sourceNo)).toEqual(['23479']);
    expect(value('23479', 'protein')).toBe(26.03);
    expect(22 / value('23479', 'protein')).toBeGreaterThan(139 / 226.8 + 0.2);
  });
});

// Derived from USDA SR28, 05062 raw and 05064 roasted: what stays in the meat is more in less weight.
describe('the yield of a roasted chicken breast', () => {
  const implied = (nutrient: Nutrient) => value('05062', nutrient) / value('05064', nutrient);

  it('is 72.5 % by protein and 73.4 % by fat, a point apart', () => {
    expect(implied('protein')).toBeCloseTo(0.725, 3);
    expect(implied('fat')).toBeCloseTo(0.734, 3);
    expect(Math.abs(implied('protein') - implied('fat'))).toBeLessThan(0.01);
  });

  it('leaves 47.3 g of 73.90 g water: a moisture change of −26.6 %', () => {
    expect(value('05062', 'water')).toBe(73.9);
    expect(value('05064', 'water')).toBe(65.26);
    const left = 65.26 * implied('protein');
    expect(left).toBeCloseTo(47.3, 1);
    expect(left - 73.9).toBeCloseTo(-26.6, 1);
  });

  it('makes about 363 g of 500 g raw, with 112.5 g protein before and after', () => {
    const raw = eaten('05062', 500, { state: 'raw' });
    const roasted = eaten('05064', 500, { state: 'raw' });
    expect(raw.g).toBeCloseTo(500, 9);
    expect(roasted.g).toBeCloseTo(362.67, 1);
    expect(Math.round(roasted.g)).toBe(363);
    expect(raw.protein.value).toBeCloseTo(112.5, 9);
    expect(roasted.protein.value).toBeCloseTo(112.5, 9);
    // A single published yield stands for ± 5 points (common practice, no source).
    expect(roasted.low).toBeCloseTo(500 * (22.5 / 31.02 - 0.05), 2);
    expect(roasted.high).toBeCloseTo(500 * (22.5 / 31.02 + 0.05), 2);
  });

  it('turns roasted grams back: 363 g roasted of the raw food are about 500 g', () => {
    expect(eaten('05062', 362.67, { state: 'cooked' }).g).toBeCloseTo(500, 1);
  });
});

// USDA SR28, Food Description file: refuse percent and what it is. Edible = as bought × (1 − refuse / 100).
describe('refuse', () => {
  it.each<[string, string, number, RegExp]>([
    ['zucchini', '11477', 5, /ends/i],
    ['banana', '09040', 36, /skin/i],
    ['avocado', '09037', 26, /seed.*skin/i],
    ['egg', '01123', 12, /shell/i],
    ['lemon', '09150', 47, /^45% peel, 2% seeds$/],
    ['chicken breast with skin', '05057', 20, /bone/i],
  ])('%s (%s): %d %%', (_name, number, percent, words) => {
    const { refuse } = food(number).version;
    expect(refuse?.percent).toBe(percent);
    expect(refuse?.text).toMatch(words);
  });

  it.each([
    ['zucchini', '11477', 400, 380],
    ['three bananas of 184 g', '09040', 3 * 184, 353],
    ['one large egg in its shell', '01123', 56.8, 50.0],
  ])('%s (%s), %d g as bought: %d g to eat', (_name, number, bought, edible) => {
    const { g } = eaten(number, bought, { asBought: true, state: 'raw' });
    expect(Math.abs(g - edible)).toBeLessThan(edible > 100 ? 0.5 : 0.05);
    // Grams that are not as bought lose nothing.
    expect(eaten(number, bought, { state: 'raw' }).g).toBeCloseTo(bought, 9);
  });
});

// USDA SR28, Weight file (the abbreviated file carries two weights a food, measures.json the others).
describe('household weights', () => {
  it.each<[string, string, Record<string, number>]>([
    ['egg white, yolk', '01124', { large: 33 }],
    ['egg yolk', '01125', { large: 17 }],
    [
      'mushrooms',
      '11260',
      { 'cup, pieces or slices': 70, 'cup, whole': 96, small: 10, medium: 18, large: 23 },
    ],
    ['tomato', '11529', { 'cup, chopped or sliced': 180, 'medium whole': 123, cherry: 17 }],
    ['butter', '01145', { tbsp: 14.2, stick: 113, cup: 227, pat: 5 }],
    ['butter, salted', '01001', { tbsp: 14.2, stick: 113, cup: 227, pat: 5 }],
    ['sugar', '19335', { tsp: 4.2, cup: 200 }],
    ['brown sugar', '19334', { 'cup, packed': 220, 'cup, unpacked': 145 }],
    ['baking powder', '18369', { tsp: 4.6 }],
    ['baking soda', '18372', { tsp: 4.6 }],
    [
      'onion',
      '11282',
      { 'cup, chopped': 160, 'cup, sliced': 115, small: 70, medium: 110, large: 150 },
    ],
    ['garlic', '11215', { clove: 3, tsp: 2.8 }],
    ['carrot', '11124', { 'cup, grated': 110, 'cup, chopped': 128, medium: 61 }],
    ['banana', '09040', { medium: 118, 'cup, mashed': 225 }],
    ['avocado', '09037', { avocado: 201, 'cup, cubes': 150 }],
    ['honey', '19296', { tbsp: 21 }],
    ['peanut butter', '16098', { tbsp: 16 }],
    ['oats', '08120', { cup: 81 }],
    ['cocoa', '19165', { cup: 86, tbsp: 5.4 }],
    ['grated parmesan', '01032', { cup: 100, tbsp: 5 }],
  ])('%s (%s): %j', (_name, number, expected) => {
    for (const [words, g] of Object.entries(expected)) {
      const named = food(number).measures.filter(({ name }) => name.startsWith(words));
      // Grams of one; all that carry the name agree, as a teaspoon and half of one.
      const one = named.map(({ qtyNum, qtyDen, massMg }) => (massMg * qtyDen) / qtyNum / 1000);
      expect([words, one]).toEqual([words, named.map(() => g)]);
      expect(named.length).toBeGreaterThan(0);
    }
  });

  it('a white and a yolk make a large egg: 33 + 17 = 50 g', () => {
    const large = (number: string) =>
      food(number).measures.find(({ name }) => name === 'large')?.massMg ?? NaN;
    expect(large('01124') + large('01125')).toBe(large('01123'));
  });
});
