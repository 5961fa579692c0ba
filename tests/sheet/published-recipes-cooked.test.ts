import { describe, expect, it } from 'vitest';
import { episodeFileText, parseEpisodeFile } from '#lib/episode/file';
import type { Recipe } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import { figureStatus } from '#lib/figures/figure';
import type { Nutrient } from '#lib/foods/nutrients';
import { loadSr28 } from '#seed/load-sr28';
import { aDish, aFile, aFood, aLine, aRecipe, grams } from '../support/build';

const byNumber = new Map(loadSr28().map((food) => [food.version.sourceNo, food]));

function sr28(number: string) {
  const found = byNumber.get(number);
  if (!found) throw new Error(`SR28 has ${number}`);
  return found;
}

/** The dish of a file, through the file's text. */
function dishOf(file: EpisodeFile, nutrients: readonly Nutrient[]) {
  const parsed = parseEpisodeFile(episodeFileText(file));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  const dish = episodeFigures(parsed.value, nutrients).dishes[0];
  if (!dish) throw new Error('a dish');
  return dish;
}

const moisture = (moisturePermille: number): NonNullable<Recipe['cooking']> => ({
  moisturePermille,
  fatPermille: 0,
  spreadPermille: 5,
  source: 'USDA FNDDS',
});

/**
 * USDA FNDDS 2021-2023, FDC 2709225 "Banana, baked" (published 31 October 2024): banana raw 90 g with retention
 * code 151, brown sugar 7 g and butter without salt 3 g with code 0, moisture change −15 % of the raw weight.
 * Banana: FDC Foundation 1105314 (energy, protein, fat, carbohydrate, fibre, sugars); its water, potassium, vitamin C,
 * B6 and folate are from memory, calcium and sodium derived from the published result. Sugar and butter: SR28 19334
 * and 01145. Retention: USDA Table of Nutrient Retention Factors, Release 6 (2007).
 */
describe('banana, baked (FNDDS 2709225)', () => {
  const banana = aFood('banana', {
    energyKcal: '97',
    protein: '0.74',
    fat: '0.29',
    carbohydrate: '23.0',
    fibre: '1.7',
    sugars: '15.8',
    water: '75.3',
    calcium: '5',
    sodium: '0.0',
    cholesterol: '0.0',
    potassium: '326',
    vitaminC: '12.3',
    vitaminB6: '0.209',
    folate: '14',
  });
  const [sugar, butter] = [sr28('19334'), sr28('01145')];
  const baked = (retention: string | null) =>
    aFile(
      [
        aDish(
          'd',
          aRecipe(
            'r',
            [
              grams('banana', 'banana', 90, { retention }),
              grams('sugar', sugar.id, 7),
              grams('butter', butter.id, 3),
            ],
            { cooking: moisture(-150) },
          ),
        ),
      ],
      [banana, sugar, butter],
      { resolutionMg: 1 },
    );
  // Recomputed from the inputs, then what is published; tolerance of the first: half of its last digit.
  const rows: [Nutrient, number, number, number][] = [
    ['water', 62.8, 0.05, 62.8],
    ['protein', 0.82, 0.005, 0.82],
    ['carbohydrate', 32.43, 0.005, 32.4],
    ['sugars', 24.72, 0.005, 24.7],
    ['fibre', 1.8, 0.005, 1.8],
    ['calcium', 12.7, 0.05, 13],
    ['sodium', 2.7, 0.05, 3],
    ['cholesterol', 7.6, 0.05, 8],
    ['potassium', 322, 0.5, 322],
    ['vitaminC', 10.42, 0.005, 10.4],
    ['vitaminB6', 0.214, 0.0005, 0.214],
    // Banana 8.9, sugar and butter 0.2.
    ['folate', 9.1, 0.05, 9],
  ];
  const nutrients = [...rows.map(([nutrient]) => nutrient), 'energyKcal', 'fat'] as const;
  const dish = dishOf(baked('151'), nutrients);
  const per100g = (nutrient: Nutrient, of = dish) => {
    const figure = of.per100g?.[nutrient];
    if (!figure) throw new Error(`per 100 g of ${nutrient}`);
    return figure;
  };

  it('weighs 85 g of the 100 g that went in', () => {
    expect(dish.finishedMg?.value).toBeCloseTo(85_000, 6);
  });

  it.each(rows)(
    '%s %d per 100 g (± %d), published %d',
    (nutrient, expected, tolerance, published) => {
      const { value, low, high } = per100g(nutrient);
      // Sums of decimals: the recomputed figure is itself rounded.
      expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance * 1.02);
      const digits = /\.(\d+)/.exec(String(published))?.[1]?.length ?? 0;
      expect(Number(value.toFixed(digits))).toBeCloseTo(published, 9);
      const half = 0.5 / 10 ** digits;
      expect(low).toBeLessThanOrEqual(published + half);
      expect(high).toBeGreaterThanOrEqual(published - half);
    },
  );

  // Published 161 kcal and 3.21 g fat rest on a butter and a banana of other analyses: 159 to 161, 3.17 to 3.18.
  it('has 159 to 161 kcal and 3.17 g fat', () => {
    expect(per100g('energyKcal').value).toBeGreaterThanOrEqual(159);
    expect(per100g('energyKcal').value).toBeLessThanOrEqual(161);
    expect(per100g('fat').value).toBeCloseTo(3.17, 2);
  });

  it('keeps protein, fat and carbohydrate whole: the table of retention is of vitamins and minerals', () => {
    const plain = dishOf(baked(null), nutrients);
    for (const nutrient of ['energyKcal', 'protein', 'fat', 'carbohydrate', 'fibre'] as const) {
      expect(per100g(nutrient)).toEqual(per100g(nutrient, plain));
    }
  });

  it('would have 357 mg potassium and 13.0 mg vitamin C without retention: (293.4 + 10.0) / 0.85 and 11.07 / 0.85', () => {
    const plain = dishOf(baked(null), nutrients);
    expect(Math.round(per100g('potassium', plain).value)).toBe(357);
    expect(per100g('vitaminC', plain).value).toBeCloseTo(13.0, 1);
  });
});

// USDA Table of Nutrient Retention Factors, Release 6 (2007): folate 60 % by code 431 (rice, cooked, drained), 70 %
// by 432 (water used). 100 g of rice with 8 µg.
describe('folate of rice', () => {
  it.each([
    ['431', 4.8],
    ['432', 5.6],
  ])('by code %s: %d µg', (retention, expected) => {
    const rice = aFood('rice', { folate: '8', potassium: '100', selenium: '10', protein: '7.00' });
    const file = aFile(
      [aDish('d', aRecipe('r', [grams('l', 'rice', 100, { retention })]))],
      [rice],
    );
    const dish = dishOf(file, ['folate', 'protein', 'selenium']);
    expect(dish.whole.folate?.value).toBeCloseTo(expected, 9);
    expect(dish.whole.protein?.value).toBeCloseTo(7, 9);
    // What the row that was read does not say is not taken as all kept.
    expect(dish.whole.selenium && figureStatus(dish.whole.selenium)).toBe('atMost');
  });
});

/**
 * USDA FNDDS 2019-2020, FDC 2342655 "Egg Benedict" (food code 32101500): the weights that go in are published, one
 * of them a recipe itself; moisture change −2 %, portion "1 egg" 155 g. The hollandaise here is of our own.
 */
describe('Egg Benedict (FNDDS 2342655), with its sauce as a recipe', () => {
  const foods = ['10998', '18258', '04626', '01131', '01125', '01145', '09152'].map(sr28);
  const [bacon, muffin, margarine, egg, yolk, butter, lemon] = foods.map(({ id }) => id);
  const sauce = aRecipe(
    'sauce',
    [
      grams('yolk', yolk ?? '', 60),
      grams('butter', butter ?? '', 170),
      grams('lemon', lemon ?? '', 20),
    ],
    { cooking: { ...moisture(-40), source: 'our own' } },
  );
  const nested = aLine('hollandaise', null, {
    madeFrom: { recipeId: 'sauce', rev: 1 },
    planned: { lowMg: 192_750, valueMg: 192_750, highMg: 192_750 },
  });
  const recipe = aRecipe(
    'r',
    [
      nested,
      grams('bacon', bacon ?? '', 170),
      grams('muffin', muffin ?? '', 114),
      grams('margarine', margarine ?? '', 14),
      grams('egg', egg ?? '', 200),
    ],
    {
      cooking: moisture(-20),
      portions: [{ id: 'egg', kind: 'mass', name: '1 egg', massMg: 155_000 }],
    },
  );
  const file = {
    ...aFile([aDish('d', recipe)], foods, { resolutionMg: 10 }),
    recipes: [sauce],
  };
  const dish = dishOf(file, ['energyKcal', 'protein']);

  it('weighs 676.9 g of the 690.75 g that go in', () => {
    expect((dish.finishedMg?.value ?? NaN) / 1000).toBeCloseTo(690.75 * 0.98, 6);
    expect((dish.finishedMg?.value ?? NaN) / 1000).toBeCloseTo(676.9, 1);
  });

  it('holds the sauce by its share of the sauce’s finished weight, and a portion by 155 g of the dish', () => {
    const energy = (number: string) => {
      const cell = sr28(number).version.values.energyKcal;
      if (cell?.kind !== 'eq') throw new Error(number);
      return cell.mantissa / 10 ** cell.scale;
    };
    const inSauce = 0.6 * energy('01125') + 1.7 * energy('01145') + 0.2 * energy('09152');
    const whole =
      (inSauce * 192.75) / (250 * 0.96) +
      1.7 * energy('10998') +
      1.14 * energy('18258') +
      0.14 * energy('04626') +
      2 * energy('01131');
    expect(dish.whole.energyKcal?.value).toBeCloseTo(whole, 6);
    const portion = dish.portions[0]?.figures.energyKcal;
    expect(portion?.value).toBeCloseTo((whole * 155) / (690.75 * 0.98), 6);
    expect(portion && figureStatus(portion)).toBe('known');
  });
});
