import { describe, expect, it } from 'vitest';
import type { Food } from '#lib/foods/food';
import {
  addedMeasuresSchema,
  addedYieldsSchema,
  addToReferenceFoods,
} from '#lib/foods/reference-additions';
import { loadSr28, readSeedJson } from '#seed/load-sr28';

const foods = loadSr28();
const byNumber = new Map(foods.map((food) => [food.version.sourceNo, food]));

function food(sourceNo: string): Food {
  const found = byNumber.get(sourceNo);
  if (!found) throw new Error(`no food ${sourceNo}`);
  return found;
}

/** Measures as "1/2 name": grams. */
function weights(sourceNo: string): Record<string, number> {
  return Object.fromEntries(
    food(sourceNo).measures.map(({ qtyNum, qtyDen, name, massMg }) => [
      `${qtyNum}${qtyDen === 1 ? '' : `/${qtyDen}`} ${name}`,
      massMg / 1000,
    ]),
  );
}

describe('household weights', () => {
  // Source: USDA SR28, Weight file (the abbreviated file carries the first two of each food).
  it.each<[string, Record<string, number>]>([
    [
      '01123',
      {
        '1 small': 38,
        '1 medium': 44,
        '1 large': 50,
        '1 extra large': 56,
        '1 jumbo': 63,
        '1 cup (4.86 large eggs)': 243,
      },
    ],
    ['01124', { '1 large': 33 }],
    ['01125', { '1 large': 17 }],
    [
      '01009',
      {
        '1 cup, shredded': 113,
        '1 cup, diced': 132,
        '1 cup, melted': 244,
        '1 cubic inch': 17,
        '1 slice (1 oz)': 28,
      },
    ],
    ['01026', { '1 cup, shredded': 112 }],
    ['01028', { '1 oz': 28.35 }],
    [
      '11477',
      {
        '1 cup, chopped': 124,
        '1 cup, sliced': 113,
        '1 small': 118,
        '1 medium': 196,
        '1 large': 323,
      },
    ],
    ['11457', { '1 cup': 30, '1 bunch': 340, '1 leaf': 10 }],
    ['04053', { '1 tablespoon': 13.5, '1 tsp': 4.5, '1 cup': 216 }],
    ['01145', { '1 tbsp': 14.2, '1 stick': 113, '1 cup': 227 }],
    ['20081', { '1 cup': 125 }],
    ['19335', { '1 tsp': 4.2, '1 cup': 200 }],
    ['19334', { '1 cup, packed': 220, '1 cup, unpacked': 145 }],
    ['02047', { '1 tsp': 6, '1 tbsp': 18, '1 dash': 0.4 }],
    ['18369', { '1 tsp': 4.6, '1/2 tsp': 2.3 }],
    ['11282', { '1 cup, chopped': 160, '1 small': 70, '1 medium': 110, '1 large': 150 }],
    ['11215', { '1 clove': 3, '1 tsp': 2.8 }],
    ['09040', { '1 medium': 118, '1 cup, mashed': 225 }],
    ['09037', { '1 avocado': 201, '1 cup, cubes': 150 }],
    ['16015', { '1 cup': 172 }],
    ['20044', { '1 cup': 185 }],
    ['20045', { '1 cup': 158 }],
    ['01077', { '1 cup': 244, '1 tbsp': 15 }],
    ['16098', { '2 tbsp': 32 }],
    ['08120', { '1 cup': 81, '1/3 cup': 27 }],
  ])('of %s', (sourceNo, expected) => {
    expect(weights(sourceNo)).toMatchObject(expected);
  });

  it('name where they are from, whether in the abbreviated file or added', () => {
    const sources = new Set(food('11477').measures.map(({ source }) => source));
    expect(sources).toEqual(new Set(['USDA SR28, abbreviated file', 'USDA SR28, Weight file']));
  });
});

describe('published yields', () => {
  const percent = (sourceNo: string, method: string) => {
    const found = food(sourceNo).yields.find((each) => each.method === method);
    return found && Math.round((found.cookedMg / found.rawMg) * 1000) / 10;
  };

  // Source: USDA SR28, Weight file: cooked weight "yield from x g raw"; the percent follows.
  it.each([
    ['05306', 'patty', 72.3],
    ['05306', 'from 1 lb', 72.8],
    ['05305', 'patty', 72.3],
    ['23568', 'patty, broiled', 67.9],
    ['23567', 'patty, pan-broiled', 73.2],
    ['23565', 'crumbles, pan-browned', 67.9],
    ['13494', 'crumbles, pan-browned', 61.3],
    ['13495', 'loaf, baked', 62.6],
    ['13317', 'patties, frozen, broiled', 69],
    ['13067', 'broiled', 80.1],
    ['13440', 'grilled', 78.3],
    ['10859', 'pan-broiled', 79.4],
    ['17331', 'patty, pan-broiled', 77.2],
    ['10123', 'slice, pan-fried', 41.1],
    // Derived: protein 22.50 raw against 31.02 roasted.
    ['05062', 'roasted', 72.5],
  ])('%s, %s: %d %%', (sourceNo, method, expected) => {
    expect(percent(sourceNo, method)).toBe(expected);
  });

  it('leave out the implausible one at 23479, with the reason', () => {
    expect(food('23479').yields).toEqual([]);
    const { leftOut } = addedYieldsSchema.parse(readSeedJson('yields.json'));
    expect(leftOut.map(({ sourceNo }) => sourceNo)).toEqual(['23479']);
  });
});

describe('a wrong data file', () => {
  const none = { leftOut: [], yields: [] };

  it('is told by path: a number that is another food, an amount that cannot be read', () => {
    const measures = addedMeasuresSchema.parse({
      source: 'a test',
      foods: [
        {
          sourceNo: '01123',
          food: 'Cheese, cheddar',
          measures: [{ amount: '1 cup', grams: '243' }],
        },
        {
          sourceNo: '01009',
          food: 'Cheese, cheddar',
          measures: [{ amount: 'cup', grams: '113' }],
        },
      ],
    });
    const merged = addToReferenceFoods(foods, measures, none);
    if (merged.ok) throw new Error('was merged');
    expect(merged.problems.map(({ path, code }) => `${path} ${code}`)).toEqual([
      'measures.foods[0] not-that-food',
      'measures.foods[1].measures[0] measure-not-readable',
    ]);
  });

  it('does not pass the boundary with grams that are no number', () => {
    const wrong = {
      source: 'a test',
      foods: [
        { sourceNo: '01123', food: 'x', measures: [{ amount: '1 cup', grams: 'about 240' }] },
      ],
    };
    expect(addedMeasuresSchema.safeParse(wrong).success).toBe(false);
  });
});
