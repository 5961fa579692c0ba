import type { RecipeLine, Weighing } from '#lib/episode/recipe-schema';
import type { EpisodeFile, Segment } from '#lib/episode/schema';
import type { Food } from '#lib/foods/food';
import { NUTRIENT_NAMES, type Nutrient } from '#lib/foods/nutrients';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, grams } from './build';

const DISHES = 12;
const LINES = 25;
const FOODS = 120;

/** What US panels state; other nutrients are blank on a label. */
const ON_LABELS: readonly Nutrient[] = [
  'energyKcal',
  'fat',
  'saturated',
  'transFat',
  'cholesterol',
  'sodium',
  'carbohydrate',
  'fibre',
  'sugars',
  'addedSugars',
  'protein',
  'vitaminDMicrograms',
  'calcium',
  'iron',
  'potassium',
];
/** What tables of foods leave to labels. */
const LABELS_ALONE: readonly Nutrient[] = [
  'energyKj',
  'netCarbohydrate',
  'transFat',
  'addedSugars',
  'polyols',
  'alcohol',
  'salt',
];

/**
 * An invented episode as large as a long one gets: 12 dishes of 25 ingredients, from 120 foods of tables and labels
 * with blanks among their values; typed grams, spoons, servings, readings of a scale of which some are shared, peel
 * as bought and yields; every dish is weighed when done and served in fourths and by grams. The same every time.
 */
export function largeEpisode(): EpisodeFile {
  const next = sequence(20_261_125);
  const foods = Array.from({ length: FOODS }, (_, index) =>
    index % 6 === 5 ? labelFood(`f${index}`, next) : tableFood(`f${index}`, index, next),
  );
  const segments = Array.from({ length: DISHES }, (_, index) => dish(`d${index}`, foods, next));
  const file = aFile(segments, foods);
  const scales = file.kitchen.scales.map((scale) => ({ ...scale, accuracyPpm: 500 }));
  return { ...file, kitchen: { ...file.kitchen, scales } };
}

/** Whole numbers below a limit, in a fixed sequence (a linear congruence; constants of Numerical Recipes, from memory). */
function sequence(seed: number): (limit: number) => number {
  let state = seed;
  return (limit) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * limit);
  };
}

function tableFood(id: string, index: number, next: (limit: number) => number): Food {
  const values = NUTRIENT_NAMES.filter((name) => !LABELS_ALONE.includes(name)).map((name) => {
    // Fibre stays below the carbohydrate that it is taken from.
    const amount = (name === 'fibre' ? 0 : 3) + next(name === 'fibre' ? 2 : 40) + next(100) / 100;
    return [name, next(100) < 3 && name !== 'fibre' ? '' : amount.toFixed(2)] as const;
  });
  const spoon = { qtyNum: 1, qtyDen: 1, massMg: 8_000 + next(9) * 1000, digits: 1, source: '' };
  return aFood(
    id,
    Object.fromEntries(values),
    {
      measures: [{ id: `${id}-tbsp`, name: 'tbsp', ...spoon }],
      yields:
        index % 7 === 0
          ? [
              {
                id: `${id}-y`,
                method: 'boiled',
                rawMg: 100_000,
                cookedMg: 80_000,
                source: '',
                own: null,
              },
            ]
          : [],
    },
    {
      state: index % 7 === 0 ? 'cooked' : 'asIs',
      refuse: index % 5 === 0 ? { percent: 10, text: 'peel', inValues: false } : null,
      carbBasis: index % 9 === 0 ? 'available' : 'total',
    },
  );
}

function labelFood(id: string, next: (limit: number) => number): Food {
  const values = ON_LABELS.map((name) => [name, String(name === 'fibre' ? 2 : 4 + next(30))]);
  const serving = { massMg: 50_000, volumeMl: null, decimals: 0, text: '', perPack: null };
  return aFood(
    id,
    Object.fromEntries(values) as Partial<Record<Nutrient, string>>,
    { kind: 'label' },
    { basis: 'serving', rule: 'us', serving },
  );
}

function dish(id: string, foods: readonly Food[], next: (limit: number) => number): Segment {
  const lines: RecipeLine[] = [];
  const readings: Weighing[] = [];
  for (let index = 0; index < LINES; index += 1) {
    const food = foods[next(foods.length)];
    if (food) lines.push(line(`${id}-l${index}`, food, next));
  }
  for (let index = 0; index < 6; index += 1) {
    const [a, b] = [lines[2 * index], lines[2 * index + 1]];
    if (!a || !b) continue;
    const shared = [
      { lineId: a.id, share: { num: 2, den: 3 } },
      { lineId: b.id, share: { num: 1, den: 3 } },
    ];
    const shares = index === 0 ? shared : [{ lineId: a.id, share: { num: 1, den: 1 } }];
    readings.push(aReading(`${id}-w${index}`, 'raw', 80 + next(400), { shares }));
  }
  readings.push(aReading(`${id}-done`, 'finished', 2600));
  const recipe = aRecipe(`${id}-r`, lines, {
    weighings: readings,
    portions: [
      { id: `${id}-fourth`, kind: 'count', name: 'one of four', of: 4 },
      { id: `${id}-bowl`, kind: 'mass', name: 'a bowl', massMg: 350_000 },
    ],
  });
  return aDish(id, recipe, { eaten: { num: 1, den: 2 } });
}

function line(id: string, food: Food, next: (limit: number) => number): RecipeLine {
  const two = { low: { num: 2, den: 1 }, high: { num: 2, den: 1 } };
  const state = food.yields.length > 0 ? ('raw' as const) : ('asIs' as const);
  const how = next(10);
  if (how < 2 && food.kind === 'label')
    return aLine(id, food.id, { quantity: two, unit: 'serving' });
  if (how < 3 && food.kind !== 'label') {
    return aLine(id, food.id, { quantity: two, unit: 'tbsp', state });
  }
  return grams(id, food.id, 20 + next(400), { state, asBought: food.version.refuse !== null });
}
