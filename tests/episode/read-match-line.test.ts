import { describe, expect, test } from 'vitest';
import { writtenAmount } from '#lib/episode/line-amount';
import { lineFromReading } from '#lib/episode/line-from-reading';
import { countsSaid, matchQuery, pickMeasure } from '#lib/episode/match-line';
import { readIngredient } from '#lib/episode/read-ingredient';
import type { Kitchen } from '#lib/episode/kitchen-schema';
import { recipeLineSchema } from '#lib/episode/recipe-schema';
import type { Food } from '#lib/foods/food';
import { loadSr28 } from '#seed/load-sr28';
import { UNSAID_KITCHEN } from '#lib/episode/unsaid';

const foods = loadSr28();

function foodNamed(name: string): Food {
  const food = foods.find((each) => each.name === name);
  if (!food) throw new Error(`no food ${name}`);
  return food;
}

const EGG = 'Egg, whole, raw, fresh';
const CHEDDAR = 'Cheese, cheddar';
const GARLIC = 'Garlic, raw';
const ONION = 'Onions, raw';
const BREAD = 'Bread, whole-wheat, commercially prepared';
const EGGPLANT = 'Eggplant, raw';
const ROCKET = 'Arugula, raw';
const OIL = 'Oil, olive, salad or cooking';

function partOf(text: string) {
  const [part] = readIngredient(text);
  if (!part) throw new Error('one part');
  return part;
}

describe('which measure is meant', () => {
  // Household weights of USDA SR28, by their names there.
  test.each<[string, string, string | null]>([
    ['2 large eggs', EGG, 'large'],
    ['3 extra large eggs', EGG, 'extra large'],
    ['1 egg', EGG, null],
    ['2 eggs, medium', EGG, 'medium'],
    ['1 1/2 cups shredded cheddar', CHEDDAR, 'cup, shredded'],
    ['1 cup grated cheddar', CHEDDAR, 'cup, shredded'],
    ['1 cup diced cheddar', CHEDDAR, 'cup, diced'],
    ['1 cup cheddar', CHEDDAR, null],
    ['2 slices cheddar', CHEDDAR, 'slice (1 oz)'],
    ['2 garlic cloves, crushed', GARLIC, 'clove'],
    ['1 tsp garlic', GARLIC, 'tsp'],
    ['2 garlic', GARLIC, null],
    ['1 medium onion', ONION, 'medium'],
    ['1 onion', ONION, null],
    ['½ cup onion, chopped', ONION, 'cup, chopped'],
    ['½ cup onion', ONION, null],
    ['2 slices wholemeal bread', BREAD, 'slice'],
    ['a handful of rocket', ROCKET, null],
    ['1 cup rocket', ROCKET, 'cup'],
    ['1 tbsp olive oil', OIL, 'tablespoon'],
    ['15 ml olive oil', OIL, 'tablespoon'],
    ['1 eggplant', EGGPLANT, 'eggplant, peeled (yield from 1-1/4 lb)'],
    ['½ large aubergine', EGGPLANT, null],
    ['200 g cheddar', CHEDDAR, null],
  ])('%s of %s: %s', (text, name, expected) => {
    expect(pickMeasure(foodNamed(name), partOf(text))?.name ?? null).toBe(expected);
  });

  test('one that is picked is one of the food, and counts what the words count, over many foods', () => {
    const parts = ['1 large x', '2 slices x', '1 cup chopped x', '1 x', '1 tbsp x'].map(partOf);
    for (const food of foods.slice(0, 3000)) {
      for (const part of parts) {
        const picked = pickMeasure(food, part);
        if (!picked) continue;
        expect(food.measures).toContain(picked);
        if (part.measure) expect(picked.name.toLowerCase()).toContain(part.measure);
      }
    }
  });
});

describe('the words to look a food up by', () => {
  test.each([
    ['1 1/2 cups shredded cheddar', 'cheddar'],
    ['200 g cooked brown rice', 'brown rice cooked'],
    ['2 eggs, hard-boiled', 'eggs hard-boiled'],
    ['2 tbsp parsley, dried', 'parsley dried'],
    ['180 g egg whites', 'egg whites'],
    ['salt to taste', 'salt'],
    ['2 x 400 g tins butter beans, drained', 'butter beans canned drained'],
    ['1 tin butter beans', 'butter beans canned'],
    ['1 lb ground beef (80/20)', 'ground beef 80/20'],
    ['600 g turkey mince (5 % fat)', 'turkey mince 5 % fat'],
    ['50 g chocolate, 70% cocoa', 'chocolate 70% cocoa'],
    ['4 chicken thighs, skin on', 'chicken thighs skin-on'],
    ['a pinch of pepper', 'black pepper'],
    ['pepper to taste', 'black pepper'],
    ['1 pepper', 'pepper'],
    ['2 peppers, sliced', 'peppers'],
    ['1/2 onion, sliced 1/4 inch', 'onion'],
  ])('%s → %s', (text, expected) => {
    expect(matchQuery(partOf(text))).toBe(expected);
  });
});

const kitchen: Kitchen = {
  ...UNSAID_KITCHEN,
  id: 'k',
  name: 'K',
  zone: 'UTC',
  lat: null,
  lon: null,
  burners: 1,
  ovens: [],
  scales: [],
  spreads: [],
};

/** Whether the line's grams are known. */
function grams(text: string, name: string | null): boolean {
  const food = name === null ? null : foodNamed(name);
  const line = { ...lineFromReading(partOf(text), food), id: 'l' };
  expect(recipeLineSchema.safeParse(line).success).toBe(true);
  const context = { foods: new Map(food ? [[food.id, food]] : []), packs: new Map(), kitchen };
  return (
    writtenAmount(line, food, context as unknown as Parameters<typeof writtenAmount>[2]).massMg !==
    null
  );
}

describe('an ingredient from its reading', () => {
  test.each<[string, string | null, boolean]>([
    ['2 large eggs', EGG, true],
    ['2 eggs', EGG, false],
    ['2 large eggs', null, false],
    ['1 cup cheddar', CHEDDAR, false],
    ['1 cup shredded cheddar', CHEDDAR, true],
    ['a handful of rocket', ROCKET, false],
    ['a handful of rocket (20 g)', ROCKET, true],
    ['2 x 400 g tins butter beans', null, true],
    ['2 x 400 g tins butter beans, drained', null, false],
    ['a few eggs', EGG, false],
    ['200 g cheddar', CHEDDAR, true],
    ['3 cloves garlic', GARLIC, true],
  ])('%s of %s has grams: %s', (text, name, known) => {
    expect(grams(text, name)).toBe(known);
  });

  test('fields', () => {
    const line = lineFromReading(partOf('2 large eggs, beaten'), foodNamed(EGG));
    expect(line).toMatchObject({
      text: '2 large eggs, beaten',
      quantity: { low: { num: 2, den: 1 }, high: { num: 2, den: 1 } },
      unit: 'piece',
      measureName: 'large',
      match: 'provisional',
      state: 'raw',
      asBought: false,
      planned: null,
      note: 'beaten',
    });
    expect(lineFromReading(partOf('200 g cheddar'), foodNamed(CHEDDAR)).state).toBe('asIs');
    expect(lineFromReading(partOf('200 g cooked onions'), foodNamed(ONION)).state).toBe('cooked');
    expect(lineFromReading(partOf('200 g onions, with peel'), foodNamed(ONION)).asBought).toBe(
      true,
    );
    expect(lineFromReading(partOf('150 g each'), null).match).toBe('provisional');
    const [exact] = [lineFromReading(partOf('1 (14 oz) can black beans'), null)];
    expect(exact.planned?.valueMg).toBe(396_893);
  });
});

// Household weights of USDA SR28, by their names there; which of them may be meant: common practice, no source.
describe('a measure is offered only for what was counted', () => {
  const offered = (text: string, name: string) => {
    const food = foodNamed(name);
    const { measureName } = lineFromReading(partOf(text), food);
    return food.measures
      .filter((measure) => countsSaid(measureName, measure))
      .map((each) => each.name);
  };

  test.each([
    ['1 bunch radishes', 'Radishes, raw', []],
    ['2 heads garlic', GARLIC, []],
    ['1 bunch rocket', ROCKET, []],
    ['1 fillet trout', EGG, []],
    ['2 slices onion', ONION, []],
    ['2 slices cheddar', CHEDDAR, ['slice (1 oz)']],
    ['1 large onion', ONION, expect.arrayContaining(['large'])],
    ['1 large onion', ONION, expect.not.arrayContaining(['small'])],
    ['1 onion', ONION, expect.arrayContaining(['small', 'medium', 'large'])],
  ])('%s of %s', (text, name, measures) => {
    expect(offered(text, name)).toEqual(measures);
  });
});
