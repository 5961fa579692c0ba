import { mkdtempSync, rmSync, writeFileSync, existsSync, readdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { importFdc, releaseName, type ImportOutcome } from '#db/import-fdc';
import { fdcFood } from '#lib/foods/fdc-food';
import { fdcPartId, fdcRecordId } from '#lib/foods/fdc-ids';
import { readGtin } from '#lib/foods/gtin';
import { closeDatabase, database } from '#lib/store/client';
import { matchFoods } from '#lib/store/match-foods';
import { readFood, readFoodVersions, readReferenceFoods } from '#lib/store/read-foods';
import { findFoods } from '#lib/store/reference-search';
import { writeReference } from '#lib/store/write-reference';
import { madeProduct } from '../support/made-fdc/made-food';
import { madeJson, madeJsonFood } from '../support/made-fdc/made-json';
import { csvLine, HEADERS, writeMadeTables } from '../support/made-fdc/write-tables';
import { AT, freshDatabase, withFreshDatabase } from './database';
import { BARLEY, SALT } from './fixture';

withFreshDatabase();

const folder = mkdtempSync(join(tmpdir(), 'slate-import-'));
const tables = join(folder, 'tables');
const json = join(folder, 'FoodData_Central_branded_food_json_2025-04-24.json');
const FOODS = 900;
beforeAll(async () => {
  await writeMadeTables(tables, FOODS);
  writeFileSync(json, madeJson(FOODS));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const bring = (path: string, again = false): Promise<ImportOutcome> => {
  return importFdc(path, { at: AT, again, tell: () => undefined });
};
let databases = 0;
const anew = () => freshDatabase(join(folder, `anew-${(databases += 1)}.db`));
const counted = () =>
  Promise.all([
    database().food.count(),
    database().foodVersion.count(),
    database().foodMeasure.count(),
    database().allergenFact.count(),
    database().foodToken.count(),
    database().referenceRelease.count(),
    database().change.count(),
  ]);
/** Every row that an import makes, as text. */
async function allRows(): Promise<string> {
  const orderBy = { id: 'asc' } as const;
  return JSON.stringify([
    await database().food.findMany({ orderBy }),
    await database().foodVersion.findMany({ orderBy }),
    await database().allergenFact.findMany({ orderBy }),
    await database().foodToken.findMany({ orderBy }),
  ]);
}

describe('an import', () => {
  it('brings in every food of the tables with what its label prints', async () => {
    const outcome = await bring(tables);
    expect(outcome).toMatchObject({ kind: 'done', newFoods: FOODS, newReadings: FOODS });
    expect(outcome.tally).toMatchObject({ foods: FOODS, faults: 0, unknownNutrients: {} });
    for (const place of [0, 399, 400, 899]) {
      const made = madeProduct(1, place);
      const read = readGtin(made.gtin);
      if (read.kind !== 'right') throw new Error('a made-up barcode is wrong');
      const food = await readFood(fdcPartId('food', { by: 'gtin', gtin14: read.gtin14 }, 0));
      expect(food?.name.startsWith(made.description)).toBe(true);
      expect(food?.version).toMatchObject({
        basis: 'serving',
        rule: 'us',
        source: 'USDA FoodData Central',
        release: `Branded ${made.published}`,
        sourceNo: String(made.fdcId),
      });
      for (const [nutrient, printed] of Object.entries(made.label)) {
        const cell = (food?.version.values as Record<string, object>)[nutrient];
        const shown = printed.startsWith('<') ? 'lessThan' : 'eq';
        expect(cell).toMatchObject({ kind: shown });
      }
    }
  });

  it('done again changes nothing, looked at or not', async () => {
    const before = await counted();
    expect(await bring(tables)).toMatchObject({ kind: 'before', newFoods: 0, newReadings: 0 });
    expect(await bring(tables, true)).toMatchObject({ kind: 'done', newFoods: 0, newReadings: 0 });
    expect(await counted()).toEqual(before);
  });

  it('of the JSON gives the same rows as of the tables', async () => {
    const rows = await allRows();
    await anew();
    expect(await bring(json)).toMatchObject({ kind: 'done', newFoods: FOODS });
    expect(JSON.parse(await allRows())).toEqual(JSON.parse(rows));
  });

  it('leaves one line in the journal and no files behind', async () => {
    await anew();
    await bring(tables);
    const lines = await database().change.findMany();
    expect(lines.map(({ label, entity }) => [label, entity])).toEqual([
      ['Import USDA FoodData Central, tables', 'ReferenceRelease'],
    ]);
    const beside = join(dirname(process.env.SLATE_DATABASE ?? ''), 'imports');
    expect(existsSync(beside) ? readdirSync(beside) : []).toEqual([]);
  });

  it.each([150, 450, 899])('given up after %d foods goes on, with the same end', async (stopAt) => {
    await anew();
    await bring(tables);
    const whole = await allRows();
    await anew();
    const killed = importFdc(tables, {
      at: AT,
      tell: ({ file, bytes }) => {
        if (file.startsWith('foods into') && bytes >= stopAt) throw new Error('killed');
        if (stopAt === 150 && file === 'food_nutrient.csv') throw new Error('killed');
      },
    });
    await expect(killed).rejects.toThrow('killed');
    await closeDatabase();
    const outcome = await bring(tables);
    expect(outcome.tally).toMatchObject({ foods: FOODS, faults: 0 });
    expect(JSON.parse(await allRows())).toEqual(JSON.parse(whole));
  });

  it('of a truncated JSON keeps what is whole, says so, and takes the rest from the whole file', async () => {
    await anew();
    const text = madeJson(FOODS);
    const cut = join(folder, 'cut.json');
    writeFileSync(cut, text.slice(0, text.length * 0.7));
    const broken = await bring(cut);
    expect(broken.kind).toBe('broken');
    expect(broken.why).toMatch(/is not whole: it breaks off in food \d+/);
    expect(broken.newFoods).toBeGreaterThan(FOODS * 0.6);
    expect((await findFoods(madeProduct(1, 3).description, { take: 5 })).length).toBeGreaterThan(0);
    expect(await bring(json)).toMatchObject({ kind: 'done', newFoods: FOODS - broken.newFoods });
  });
});

describe('rows that are wrong', () => {
  const wrong = join(folder, 'wrong');
  beforeAll(async () => {
    await writeMadeTables(wrong, 3);
    const at = (name: keyof typeof HEADERS) => join(wrong, name);
    const blank = (cells: readonly (string | number)[], width: number) =>
      csvLine([...cells, ...Array.from({ length: width - cells.length }, () => '')]);
    const add = (name: keyof typeof HEADERS, ...cells: (string | number)[]) =>
      writeFileSync(at(name), blank(cells, HEADERS[name].length), { flag: 'a' });
    add('food.csv', 'x', 'branded_food', 'NO NUMBER');
    add('food.csv', 77, 'branded_food', '   ');
    add('food.csv', 78, 'sub_sample_food', 'A sample');
    add('food.csv', 9_000_001, 'branded_food', 'THE SAME NUMBER AGAIN');
    add('food_nutrient.csv', 1, 78, 1003, '1');
    add('food_nutrient.csv', 2, 555, 1003, '1');
    add('food_nutrient.csv', 3, 9_000_000, 1, '1');
    add('food_nutrient.csv', 4, 9_000_000, 1051, 'wet');
    add('branded_food.csv', 556, 'Nobody', '', '', '4');
    writeFileSync(at('nutrient.csv'), csvLine([2057, 'Ergothioneine', 'MG', '957.5', '']), {
      flag: 'a',
    });
    add('food_nutrient.csv', 5, 9_000_000, 2057, '1');
    writeFileSync(at('food.csv'), '"9000009","branded_food"\n', { flag: 'a' });
  });

  it('are counted and listed with what is wrong, and the others are kept', async () => {
    await anew();
    const { kind, tally, newFoods } = await bring(wrong);
    expect([kind, newFoods]).toEqual(['done', 3]);
    expect(tally.firstFaults.map(({ file, at, why }) => `${file} ${at}: ${why}`)).toEqual([
      'food.csv row 5: "x" is no fdc_id',
      'food.csv row 6: food 77 has no description',
      'food.csv row 8: food 9000001 is there twice; the first stands',
      'food.csv row 9: it has 2 cells, the first line has 8',
      'branded_food.csv row 5: food 556 is not in food.csv',
      'food_nutrient.csv row 36: food 555 is not in food.csv',
      'food_nutrient.csv row 37: nutrient 1 is not in nutrient.csv',
      'food.csv food 9000000: "wet" is no amount of water: a number that is not negative',
    ]);
    expect(tally.faults).toBe(8);
    expect(tally.passedOver).toEqual({ sub_sample_food: 1 });
    expect(tally.unknownNutrients).toEqual({ 'Ergothioneine (957.5, MG)': 1 });
  });

  it('are listed up to a hundred and counted beyond', async () => {
    await anew();
    const many = join(folder, 'many');
    await writeMadeTables(many, 1);
    const lines = Array.from({ length: 250 }, () => '"only one cell"\n').join('');
    writeFileSync(join(many, 'food_nutrient.csv'), lines, { flag: 'a' });
    const { tally } = await bring(many);
    expect([tally.faults, tally.firstFaults.length]).toEqual([250, 100]);
  });

  it('a download without one of its tables, or a column of it, is refused in words', async () => {
    const bare = join(folder, 'bare');
    await writeMadeTables(bare, 1);
    rmSync(join(bare, 'food_nutrient.csv'));
    await expect(bring(bare)).rejects.toThrow('lacks food_nutrient.csv: give the whole download');
    writeFileSync(join(bare, 'food_nutrient.csv'), csvLine(['id', 'fdc_id', 'nutrient', 'amount']));
    await expect(bring(bare)).rejects.toThrow('food_nutrient.csv lacks the column nutrient_id');
  });
});

describe('readings of one product', () => {
  /** A record of one product, its fat as given. */
  const record = (fdcId: number, name: string, fat: number) => {
    const food = madeJsonFood(0);
    const nutrients = food.foodNutrients as { nutrient: { number: string }; amount: number }[];
    return {
      ...food,
      fdcId,
      description: name,
      servingSize: 100,
      foodNutrients: nutrients.map((each) =>
        each.nutrient.number === '204' ? { ...each, amount: fat } : each,
      ),
    };
  };
  const file = (name: string, foods: readonly object[]) => {
    const path = join(folder, name);
    writeFileSync(path, JSON.stringify({ BrandedFoods: foods }));
    return path;
  };
  const made = readGtin(madeProduct(1, 0).gtin);
  const id = made.kind === 'right' ? fdcPartId('food', { by: 'gtin', gtin14: made.gtin14 }, 0) : '';

  it.each([
    ['in one file', [[500, 700, 600]]],
    ['the later ones first', [[700], [500], [600]]],
    ['the earlier ones first', [[500], [600], [700]]],
  ])('are one food whose last record is in use: %s', async (_, files) => {
    await anew();
    for (const [at, ids] of files.entries()) {
      const foods = ids.map((fdcId) => record(fdcId, `RECORD ${fdcId} OF BAR`, fdcId / 100));
      await bring(file(`readings-${at}.json`, foods));
    }
    const food = await readFood(id);
    expect(food?.name.startsWith('RECORD 700 OF BAR')).toBe(true);
    expect(food?.version.values.fat).toMatchObject({ mantissa: 7 });
    const versions = await readFoodVersions(id);
    expect(versions.map(({ seq, sourceNo }) => [seq, sourceNo])).toEqual([
      [3, '700'],
      [2, '600'],
      [1, '500'],
    ]);
    expect(await database().food.count()).toBe(1);
    expect((await findFoods('record 700', { take: 3 })).map((each) => each.id)).toEqual([id]);
  });
});

it('many records of few products are few foods, each with its readings in order', async () => {
  await anew();
  const history = join(folder, 'history');
  await writeMadeTables(history, 1200, { products: 300 });
  expect(await bring(history)).toMatchObject({ newFoods: 300, newReadings: 1200 });
  const versions = await database().foodVersion.findMany({ orderBy: { id: 'asc' } });
  const seqs = new Map<string, number[]>();
  for (const { foodId, seq } of versions) seqs.set(foodId, [...(seqs.get(foodId) ?? []), seq]);
  expect([...seqs.values()].every((all) => all.join() === '1,2,3,4')).toBe(true);
  // The fourth reading has another name, and the food is found by that.
  const last = madeProduct(1, 900 + 7, 300);
  expect(last.description).not.toBe(madeProduct(1, 7, 300).description);
  const named = `${last.description}, ${last.brandName || last.brandOwner}`;
  const names = (await findFoods(named, { take: 6 })).map(({ name }) => name);
  expect(names).toContain(named);
});

describe('the search', () => {
  beforeAll(async () => {
    await anew();
    await writeReference([BARLEY, SALT], { source: 'Harbour table', release: 'H1', at: AT });
    await bring(tables);
    const moor = fdcFood({
      fdcId: 5,
      dataType: 'foundation_food',
      description: 'Beans, moor, raw',
      groupCode: '1600',
      published: '2025-04-24',
      nutrients: [],
      portions: [],
      factors: null,
      branded: null,
    });
    expect('food' in moor && moor.food.version.id).toBe(fdcRecordId('version', 5, 0));
    const path = join(folder, 'moor.json');
    writeFileSync(
      path,
      JSON.stringify({
        FoundationFoods: [{ fdcId: 5, description: 'Beans, moor, raw', foodNutrients: [] }],
      }),
    );
    await bring(path);
  });

  it('finds imported foods by words in any order, unfinished ones and the number under the barcode', async () => {
    const made = madeProduct(1, 17);
    const [way, ...others] = made.description.toLowerCase().split(' ');
    const named = made.brandName || made.brandOwner;
    for (const query of [
      made.gtin,
      `${named} ${made.description}`,
      `${named} ${others.join(' ')} ${way?.slice(0, 3)}`,
    ]) {
      const names = (await findFoods(query, { take: 6 })).map(({ name }) => name);
      expect(names[0]).toBe(`${made.description}, ${named}`);
    }
  });

  it('gives the reference table alone to its index, and brands to nobody who has not asked for them', async () => {
    expect((await readReferenceFoods()).map(({ id }) => id).sort()).toEqual(
      [BARLEY.id, SALT.id].sort(),
    );
    const [brand] = await findFoods('toasted oat bar', { take: 1 });
    expect(brand?.name).toContain('BAR');
    const matched = await matchFoods(['toasted oat bar', 'moor beans']);
    expect(matched[0]?.food.version.source).not.toBe('USDA FoodData Central');
    expect(matched[1]?.food.name).toBe('Beans, moor, raw');
  });

  it('says nothing for words that no food has, and for none', async () => {
    for (const query of ['zzzz qqqq', '   ', '%', "'; DROP TABLE Food; --"]) {
      const found = await findFoods(query, { take: 6 });
      expect(found.every(({ version }) => version.source !== 'USDA FoodData Central')).toBe(true);
    }
  });
});

it('a release is named as its download is, without what all have in common', () => {
  expect(releaseName('/d/FoodData_Central_branded_food_csv_2025-04-24.zip')).toBe(
    'branded_food_csv_2025-04-24',
  );
});
