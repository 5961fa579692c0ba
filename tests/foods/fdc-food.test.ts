import { describe, expect, test } from 'vitest';
import { FDC_SOURCE, fdcFood, readDate, type FdcFood } from '#lib/foods/fdc-food';
import { fdcPartId, fdcRecordId } from '#lib/foods/fdc-ids';
import { knownNumber } from '#lib/foods/fdc-nutrients';
import type { FdcBranded, FdcRecord } from '#lib/foods/fdc-record';
import { foodSchema } from '#lib/foods/food';
import { cellInterval, servingInterval } from '#lib/foods/label-rounding';
import { searchTokens } from '#lib/foods/search-tokens';
import { beginningWith, buildVocabulary } from '#lib/foods/vocabulary';

const stated = (number: string, unit: string, amount: string, derivation = 'LCCS', loq = '') => {
  return { number, unit, amount, derivation, loq };
};

const TABLE: FdcRecord = {
  fdcId: 9_100_001,
  dataType: 'foundation_food',
  description: 'Beans, moor, raw',
  groupCode: '1600',
  published: '2025-04-24',
  nutrients: [
    stated('203', 'G', '7.30', 'A'),
    stated('208', 'KCAL', '', 'A'),
    stated('957', 'KCAL', '81.0', 'NC'),
    stated('958', 'KCAL', '79.5', 'NC'),
    stated('204', 'G', '0.0', 'A', '0.15'),
    stated('291', 'G', '', 'A', '0.4'),
    stated('307', 'MG', '-3', 'A'),
    stated('303', 'MG', 'n/a', 'A'),
    stated('421', 'MG', '0', 'A'),
  ],
  portions: [
    { amount: '1', unit: 'cup', modifier: 'shelled', description: '', grams: '151.5' },
    { amount: '0.33', unit: 'undetermined', modifier: 'pack', description: '', grams: '40' },
    { amount: '', unit: '', modifier: '', description: '1 handful', grams: '30' },
    { amount: '1', unit: 'pod', modifier: '', description: '', grams: '0' },
  ],
  factors: { protein: '3.47', fat: '8.37000000', carbohydrate: '4.07', nitrogen: '6.25' },
  branded: null,
};

const LABEL: FdcBranded = {
  brandOwner: 'Quillmoor Larder',
  brandName: 'Fernmarch',
  gtin: '020000000015',
  ingredients: 'OATS, MILK POWDER, SESAME',
  servingSize: '28.0',
  servingUnit: 'GRM',
  household: '1 bar',
  category: 'Snack, Energy & Granola Bars',
  marketCountry: 'United States',
};
const PRODUCT: FdcRecord = {
  fdcId: 9_200_001,
  dataType: 'branded_food',
  description: 'OAT BAR',
  groupCode: '',
  published: '10/28/2021',
  nutrients: [
    stated('208', 'kcal', '500'),
    stated('204', 'g', '32.14'),
    stated('291', 'g', '3.57', 'LCSL'),
    stated('601', 'mg', '17.86', 'LCSG'),
    stated('318', 'IU', '714', 'LCCD'),
    stated('401', 'mg', '0', 'LCCD'),
  ],
  portions: [],
  factors: null,
  branded: LABEL,
};

function read(record: FdcRecord): FdcFood {
  const food = fdcFood(record);
  if ('refused' in food) throw new Error(food.refused);
  // Everything that is made here passes the boundary that every food passes.
  expect(foodSchema.parse(food.food)).toEqual(food.food);
  return food;
}

describe('a food of the tables', () => {
  const { food, faults } = read(TABLE);

  test('keeps printed digits, source, number and date; a blank is missing and never 0', () => {
    expect(food).toMatchObject({
      name: 'Beans, moor, raw',
      kind: 'reference',
      section: 'dryGoods',
    });
    expect(food.version).toMatchObject({
      basis: 'per100g',
      carbBasis: 'total',
      rule: 'asPrinted',
      state: 'raw',
      source: FDC_SOURCE,
      release: 'Foundation 2025-04-24',
      sourceNo: '9100001',
    });
    expect(food.version.values.protein).toEqual({ kind: 'eq', mantissa: 730, scale: 2 });
    expect(food.version.values.choline).toEqual({ kind: 'eq', mantissa: 0, scale: 0 });
    expect(food.version.values.carbohydrate).toBeUndefined();
  });

  test('energy by Atwater’s specific factors stands in where 208 is blank', () => {
    expect(food.version.values.energyKcal).toEqual({ kind: 'eq', mantissa: 795, scale: 1 });
  });

  test('nothing above the limit of quantification is less than that limit', () => {
    expect(food.version.values.fat).toEqual({ kind: 'lessThan', mantissa: 15, scale: 2 });
    expect(food.version.values.fibre).toEqual({ kind: 'lessThan', mantissa: 4, scale: 1 });
  });

  test('negative amounts and words are told and stay missing', () => {
    expect(food.version.values.sodium).toBeUndefined();
    expect(food.version.values.iron).toBeUndefined();
    expect(faults.join('\n')).toMatch(
      /"-3" is no amount of sodium[\s\S]*"n\/a" is no amount of iron/,
    );
  });

  test('household weights from the unit, or from the modifier where the unit is undetermined', () => {
    expect(food.measures.map(({ id: _, ...measure }) => measure)).toMatchObject([
      { qtyNum: 1, qtyDen: 1, name: 'cup, shelled', massMg: 151_500, digits: 1 },
      { qtyNum: 1, qtyDen: 3, name: 'pack', massMg: 40_000, digits: 0 },
      { qtyNum: 1, qtyDen: 1, name: '1 handful', massMg: 30_000 },
    ]);
    expect(faults.join()).toContain('the portion "1 pod" of "0" g cannot be read');
  });

  test('factors are kept', () => {
    expect(food.version.factors).toEqual({
      protein: { mantissa: 347, scale: 2 },
      fat: { mantissa: 8_370_000, scale: 6 },
      carbohydrate: { mantissa: 407, scale: 2 },
      nitrogen: { mantissa: 625, scale: 2 },
    });
  });
});

describe('a product', () => {
  const { food, faults, product, key } = read(PRODUCT);

  test('is stated for its label’s serving with the label’s numbers and rounding', () => {
    expect(food.version).toMatchObject({
      basis: 'serving',
      rule: 'us',
      serving: { massMg: 28_000, volumeMl: null, decimals: 0, text: '1 bar' },
      release: 'Branded 2021-10-28',
    });
    expect(food.version.values.energyKcal).toEqual({ kind: 'eq', mantissa: 140, scale: 0 });
    expect(food.version.values.fat).toEqual({ kind: 'eq', mantissa: 9, scale: 0 });
    // 21 CFR 101.9(b)(7): 28 g is 27.5 to 28.5 g; (c)(2): 9 g of fat is 8.5 to 9.5 g.
    expect(servingInterval(food.version)).toMatchObject({ low: 27_500, high: 28_500 });
    expect(cellInterval(food.version, 'fat')).toMatchObject({ low: 8.5, high: 9.5 });
  });

  test('"less than" stays so, "more than" and 0 % of a daily value are missing', () => {
    expect(food.version.values.fibre).toEqual({ kind: 'lessThan', mantissa: 1, scale: 0 });
    expect(food.version.values.cholesterol).toBeUndefined();
    expect(food.version.values.vitaminC).toBeUndefined();
    expect(food.version.values.vitaminAIu).toMatchObject({ plusMinus: { mantissa: 100 } });
    expect(faults.join()).toContain('more than an amount');
  });

  test('has its brand in its name, its barcode as typed, and its allergens asked', () => {
    expect(food.name).toBe('OAT BAR, Fernmarch');
    expect(product).toEqual({
      gtin: '020000000015',
      brand: 'Fernmarch',
      ingredients: 'OATS, MILK POWDER, SESAME',
    });
    const proposed = food.allergens.map(({ allergen, standing }) => `${allergen} ${standing}`);
    expect(proposed).toEqual(expect.arrayContaining(['milk proposed', 'sesame proposed']));
    expect(food.allergens.find(({ allergen }) => allergen === 'milk')?.reason).toContain(
      'ingredient list',
    );
    expect(key).toEqual({ by: 'gtin', gtin14: '00020000000015' });
  });

  test('with a wrong barcode keeps it as typed, flagged, and stands alone', () => {
    const wrong = read({ ...PRODUCT, branded: { ...LABEL, gtin: '020000000016' } });
    expect(wrong.product.gtin).toBe('020000000016');
    expect(wrong.key).toEqual({ by: 'record', fdcId: 9_200_001 });
    expect(wrong.food.version.kept).toEqual([
      { code: 'gtin-check-digit', reason: expect.stringContaining('it would be 5') as string },
    ]);
    expect(wrong.faults.join()).toContain('ends in a wrong check digit');
  });

  test('in millilitres is stated for its volume; without a serving per 100 as published', () => {
    const drink = read({
      ...PRODUCT,
      branded: { ...LABEL, servingSize: '240', servingUnit: 'ml' },
    });
    expect(drink.food.version).toMatchObject({
      basis: 'serving',
      serving: { massMg: null, volumeMl: 240 },
    });
    for (const [servingSize, servingUnit, words] of [
      ['', '', ''],
      ['0', 'g', 'no amount above zero'],
      ['two', 'g', 'no amount above zero'],
      ['1', 'IU', 'neither grams nor millilitres'],
    ] as const) {
      const bare = read({ ...PRODUCT, branded: { ...LABEL, servingSize, servingUnit } });
      expect(bare.food.version).toMatchObject({ basis: 'per100g', rule: 'asPrinted' });
      expect(bare.food.version.values.fat).toEqual({ kind: 'eq', mantissa: 3214, scale: 2 });
      expect(bare.food.version.serving?.text).toBe('1 bar');
      expect(bare.faults.join()).toContain(words);
    }
  });

  test('of New Zealand states available carbohydrate, as printed', () => {
    const kiwi = read({ ...PRODUCT, branded: { ...LABEL, marketCountry: 'New Zealand' } });
    expect(kiwi.food.version).toMatchObject({ carbBasis: 'available', rule: 'asPrinted' });
  });

  test('without its row in branded_food.csv is kept per 100 g and told', () => {
    const bare = read({ ...PRODUCT, branded: null });
    expect(bare.food.version.basis).toBe('per100g');
    expect(bare.faults.join()).toContain('branded_food.csv is missing');
  });
});

test.each([
  [{ description: '  ' }, 'no description'],
  [{ fdcId: 0 }, 'no whole number above zero'],
  [{ fdcId: 3e9 }, 'no whole number above zero'],
])('a record that cannot be a food is refused: %j', (change, words) => {
  expect(fdcFood({ ...TABLE, ...change })).toEqual({
    refused: expect.stringContaining(words) as string,
  });
});

test('very long texts are cut, not refused', () => {
  const long = 'x '.repeat(9000);
  const { food, product } = read({
    ...PRODUCT,
    description: long,
    branded: { ...LABEL, brandName: long, ingredients: long, household: long, gtin: long },
  });
  expect(food.name.length).toBeLessThanOrEqual(240);
  expect(product.ingredients?.length).toBeLessThanOrEqual(8000);
});

// Rows of nutrient.csv, checked against public copies of it.
test.each([
  ['203', 'G', 'protein'],
  ['205', 'G', 'carbohydrate'],
  ['269.3', 'G', 'sugars'],
  ['307', 'MG', 'sodium'],
  ['317', 'UG', 'selenium'],
  ['320', 'µg', 'vitaminARae'],
  ['208', 'kcal', 'energyKcal'],
  ['268', 'kJ', 'energyKj'],
  ['539', 'G', 'addedSugars'],
  ['204', 'MG', undefined],
  ['340', 'IU', undefined],
  ['205.2', 'G', undefined],
  ['', 'G', undefined],
])('nutrient number %s in %s', (number, unit, nutrient) => {
  expect(knownNumber(number, unit)?.nutrient).toBe(nutrient);
});

test('dates of the tables and of the JSON', () => {
  expect(readDate('2021-10-28')).toBe('2021-10-28');
  expect(readDate('4/1/2019')).toBe('2019-04-01');
  for (const wrong of ['', '2021-02-30', '13/1/2019', '1.4.2019', 'soon']) {
    expect(readDate(wrong)).toBeNull();
  }
});

test('ids are the same everywhere, part from part, and a later record’s reading has the larger one', () => {
  const gtin = { by: 'gtin', gtin14: '06291041500213' } as const;
  const record = { by: 'record', fdcId: 6_291_041 } as const;
  const ids = [
    fdcPartId('food', gtin, 0),
    fdcPartId('food', record, 0),
    fdcPartId('token', gtin, 0),
    fdcPartId('token', gtin, 1),
    fdcPartId('allergen', record, 1),
    fdcRecordId('version', 6_291_041, 0),
    fdcRecordId('measure', 6_291_041, 0),
  ];
  expect(new Set(ids).size).toBe(ids.length);
  for (const id of ids) expect(id).toMatch(/^0169d632-1400-7[0-9a-f]{3}-80\d\d-\d{12}$/);
  expect(fdcRecordId('version', 999, 0) < fdcRecordId('version', 1_000_000, 0)).toBe(true);
});

test('the words that a food is filed under: singulars, once, tables before products, short names first', () => {
  expect(searchTokens('Oats, rolled', 'table', null)).toEqual({
    tokens: ['oat', 'rolled'],
    rank: 2,
  });
  const product = searchTokens('OAT BAR WITH OATS', 'product', '00020000000015');
  expect(product).toEqual({ tokens: ['oat', 'bar', '~00020000000015'], rank: 202 });
});

test('words that begin so, the most frequent first', () => {
  const vocabulary = buildVocabulary(
    new Map([
      ['choc', 1],
      ['chop', 50],
      ['chocolate', 900],
      ['chocolatey', 3],
      ['cheese', 800],
      ['dip', 2],
    ]),
  );
  expect(beginningWith(vocabulary, 'choc', 8)).toEqual(['choc', 'chocolate', 'chocolatey']);
  expect(beginningWith(vocabulary, 'ch', 2)).toEqual(['chocolate', 'cheese']);
  expect(beginningWith(vocabulary, 'x', 2)).toEqual([]);
});
