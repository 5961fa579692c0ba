import { describe, expect, it } from 'vitest';
import { episodeFigures } from '#lib/figures/episode-figures';
import { figureStatus } from '#lib/figures/figure';
import { cellOf, type Food } from '#lib/foods/food';
import { checkTableEnergy } from '#lib/foods/energy-check';
import type { Nutrient } from '#lib/foods/nutrients';
import { printedText, printedValue } from '#lib/units/printed';
import { loadSr28 } from '#seed/load-sr28';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';

const foods = loadSr28();
const byNumber = new Map(foods.map((food) => [food.version.sourceNo, food]));

function sr28(sourceNo: string): Food {
  const found = byNumber.get(sourceNo);
  if (!found) throw new Error(`SR28 has ${sourceNo}`);
  return found;
}

function stated(food: Food, nutrient: Nutrient): number {
  const cell = cellOf(food.version.values, nutrient);
  if (cell.kind !== 'eq') throw new Error(`${food.name} states no ${nutrient}`);
  return printedValue(cell);
}

/** The figure in kJ of 100 g of a food in an episode of the EU. */
function kilojoules(food: Food) {
  const line = grams('l', food.id, 100, { state: food.version.state });
  const file = aFile([aDish('d', aRecipe('r', [line]))], [food], { episode: { region: 'EU' } });
  const figure = episodeFigures(file).dishes[0]?.whole.energyKj;
  if (!figure) throw new Error('a dish of the EU has kJ');
  return figure;
}

// Regulation (EU) 1169/2011, Annex XIV (full table seen in a consolidated text of 13 March 2024).
describe('kJ a gram', () => {
  it.each<[Nutrient, number]>([
    ['carbohydrate', 17],
    ['polyols', 10],
    ['protein', 17],
    ['fat', 37],
    ['alcohol', 29],
    ['fibre', 8],
  ])('%s %d', (nutrient, factor) => {
    const none = {
      protein: '0',
      fat: '0',
      carbohydrate: '0',
      fibre: '0',
      polyols: '0',
      alcohol: '0',
    };
    const food = aFood('f', { ...none, [nutrient]: '1.000' }, {}, { carbBasis: 'available' });
    const figure = kilojoules(food);
    expect(figure.value).toBeCloseTo(factor, 9);
    expect(figureStatus(figure)).toBe('known');
  });

  it('carbohydrate is the available one: fibre inside a total counts 8 and not 17', () => {
    const values = { protein: '0', fat: '0', carbohydrate: '10.0', fibre: '4.0', energyKcal: '36' };
    expect(kilojoules(aFood('f', values)).value).toBeCloseTo(17 * 6 + 8 * 4, 9);
  });
});

// USDA Agriculture Handbook 74 factors (kcal per gram of protein, fat, carbohydrate) as stored per food in the
// Food Description file of SR28, and how many foods carry exactly that triple.
describe('the factors of the table', () => {
  const triple = ({ version: { factors } }: Food) =>
    [factors?.protein, factors?.fat, factors?.carbohydrate]
      .map((factor) => (factor ? printedText(factor) : '-'))
      .join(' ');

  it.each([
    ['eggs', '4.36 9.02 3.68', ['01123', '01124', '01125']],
    ['vegetables', '2.44 8.37 3.57', ['11477', '11457']],
    ['fruits', '3.36 8.37 3.60', ['09040']],
    ['legumes, nuts', '3.47 8.37 4.07', ['16015', '12061']],
    ['mushrooms', '2.62 8.37 3.48', ['11260']],
    ['potato', '2.78 8.37 4.03', ['11352', '11367']],
    ['white wheat flour', '4.05 8.37 4.12', ['20081']],
    ['white rice', '3.82 8.37 4.16', ['20044', '20045']],
    ['oats', '3.46 8.37 4.12', ['20038']],
    ['cocoa powder', '1.83 8.37 1.33', ['19165']],
    ['milk, cheese, butter', '4.27 8.79 3.87', ['01077', '01028', '01145']],
  ])('%s: %s', (_words, factors, numbers) => {
    expect(numbers.map((number) => triple(sr28(number)))).toEqual(numbers.map(() => factors));
  });

  it.each([
    ['meat, poultry, fish', '4.27 9.02 3.87', 1544],
    ['milk, cheese, butter', '4.27 8.79 3.87', 136],
    ['oils, shortening', '- 8.84 -', 76],
    ['vegetables', '2.44 8.37 3.57', 483],
    ['fruits', '3.36 8.37 3.60', 205],
    ['legumes, nuts', '3.47 8.37 4.07', 387],
    ['potato', '2.78 8.37 4.03', 68],
    ['white wheat flour', '4.05 8.37 4.12', 41],
    ['mixed dishes', '4.00 9.00 4.00', 284],
    ['none given', '- - -', 4086],
  ])('%s: %s stand at %d foods', (_words, factors, count) => {
    expect(foods.filter((food) => triple(food) === factors)).toHaveLength(count);
  });
});

// USDA SR28 per 100 g. Macros, fibre and the published kcal are the table's; by its own factors, by 4-4-9 and in
// kJ by 17 P + 37 F + 17 (C − fibre) + 8 fibre (Regulation 1169/2011, Annex XIV) they are derived.
const ROWS = [
  ['01123', 'egg, whole, raw', 12.56, 9.51, 0.72, 0, 143.19, 143, 138.7, 578],
  ['01124', 'egg white, raw', 10.9, 0.17, 0.73, 0, 51.74, 52, 48.1, 204],
  ['05062', 'chicken breast, raw', 22.5, 2.62, 0, 0, 119.71, 120, 113.6, 479],
  ['05064', 'chicken breast, roasted', 31.02, 3.57, 0, 0, 164.66, 165, 156.2, 659],
  ['01028', 'mozzarella, part skim', 24.26, 15.92, 2.77, 0, 254.25, 254, 251.4, 1049],
  ['01145', 'butter, no salt', 0.85, 81.11, 0.06, 0, 716.82, 717, 733.6, 3017],
  ['04053', 'olive oil', 0, 100, 0, 0, 884.0, 884, 900.0, 3700],
  ['11477', 'zucchini, raw', 1.21, 0.32, 3.11, 1.0, 16.73, 17, 20.2, 76],
  ['11457', 'spinach, raw', 2.86, 0.39, 3.63, 2.2, 23.2, 23, 29.5, 105],
  ['11260', 'mushrooms, white, raw', 3.09, 0.34, 3.26, 1.0, 22.29, 22, 28.5, 112],
  ['16015', 'black beans, boiled', 8.86, 0.54, 23.71, 8.7, 131.76, 132, 135.1, 495],
  ['20081', 'flour, all-purpose', 10.33, 0.98, 76.31, 2.7, 364.44, 364, 355.4, 1485],
  ['12061', 'almonds', 21.15, 49.93, 21.55, 12.5, 579.01, 579, 620.2, 2461],
  ['19165', 'cocoa, unsweetened', 19.6, 13.7, 57.9, 37.0, 227.54, 228, 433.3, 1491],
  ['09040', 'banana', 1.09, 0.33, 22.84, 2.6, 88.65, 89, 98.7, 396],
] as const;

describe('energy per 100 g of USDA SR28', () => {
  it.each(ROWS)(
    '%s %s: macros and calories as published',
    (number, _name, p, f, c, fibre, ...rest) => {
      const food = sr28(number);
      const macros = (['protein', 'fat', 'carbohydrate', 'fibre'] as const).map((each) =>
        stated(food, each),
      );
      expect(macros).toEqual([p, f, c, fibre]);
      expect(stated(food, 'energyKcal')).toBe(rest[1]);
    },
  );

  it.each(ROWS)(
    '%s %s: by its own factors',
    (number, _name, p, f, c, _fibre, specific, published) => {
      const { factors } = sr28(number).version;
      const sum = (
        [
          [factors?.protein, p],
          [factors?.fat, f],
          [factors?.carbohydrate, c],
        ] as const
      ).reduce((total, [factor, g]) => {
        // A factor is blank where the food has none of it.
        if (!factor) expect(g).toBe(0);
        return total + (factor ? printedValue(factor) * g : 0);
      }, 0);
      expect(sum).toBeCloseTo(specific, 1);
      expect(Math.abs(sum - specific)).toBeLessThanOrEqual(0.006);
      expect(Math.round(sum)).toBe(published);
    },
  );

  it.each(ROWS)(
    '%s %s: by 4-4-9',
    (number, _name, _p, _f, _c, fibre, _specific, _kcal, general) => {
      const check = checkTableEnergy({ ...sr28(number).version, factors: null });
      // The rule reads 0.95 (4-4-9 − 4 fibre) − 5 to 1.05 × 4-4-9 + 5.
      expect(Math.abs(((check?.high ?? NaN) - 5) / 1.05 - general)).toBeLessThanOrEqual(0.0501);
      expect(Math.abs(((check?.low ?? NaN) + 5) / 0.95 + 4 * fibre - general)).toBeLessThanOrEqual(
        0.0501,
      );
    },
  );

  it.each(ROWS)('%s %s: in kJ', (number, ...rest) => {
    const figure = kilojoules(sr28(number));
    expect(Math.abs(figure.value - rest[8])).toBeLessThanOrEqual(0.5);
    expect(figure.low).toBeLessThan(figure.value);
    expect(figure.high).toBeGreaterThan(figure.value);
  });
});
