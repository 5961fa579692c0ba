import { describe, expect, it } from 'vitest';
import { parseBindings } from '#lib/episode/binding';
import { recipeLineSchema } from '#lib/episode/recipe-schema';
import { targetSchema } from '#lib/episode/schema';
import { breakdown } from '#lib/figures/breakdown';
import { episodeFigures } from '#lib/figures/episode-figures';
import { figureStatus } from '#lib/figures/figure';
import { countedNutrients } from '#lib/figures/shown-nutrients';
import { foodVersionSchema } from '#lib/foods/food';
import { loadSr28 } from '#seed/load-sr28';
import { aDish, aFile, aFood, aLine, aRecipe, grams } from '../support/build';

const sr28 = new Map(loadSr28().map((food) => [food.version.sourceNo, food]));
const table = (number: string) => {
  const food = sr28.get(number);
  if (!food) throw new Error(`no ${number}`);
  return food;
};
const total = aFood('total', { carbohydrate: '20.0', fibre: '5.0' });
const totalBare = aFood('totalBare', { carbohydrate: '20.0' });
const available = aFood(
  'available',
  { carbohydrate: '15.0', fibre: '5.0' },
  {},
  { carbBasis: 'available' },
);
const availableBare = aFood(
  'availableBare',
  { carbohydrate: '15.0' },
  {},
  { carbBasis: 'available' },
);
const FOODS = [total, totalBare, available, availableBare];

function figureOf(
  nutrient: 'carbohydrate' | 'netCarbohydrate',
  foodIds: readonly string[],
  region: 'US' | 'EU' = 'US',
) {
  const lines = foodIds.map((id, index) => grams(`${index}`, id, 100));
  const file = aFile([aDish('d', aRecipe('r', lines))], [...FOODS, ...sr28.values()], {
    episode: { region },
    resolutionMg: 1,
  });
  const figure = episodeFigures(file, [nutrient]).dishes[0]?.whole[nutrient];
  if (!figure) throw new Error('no figure');
  return figure;
}

// Carbohydrate without fibre: Regulation (EU) 1169/2011, Annex I, point 8 ("available"); with it: 21 CFR 101.9(c)(6).
describe('net carbohydrate', () => {
  it.each([
    // Carbohydrate and fibre per 100 g as USDA SR28 prints them.
    ['11477', 3.11 - 1.0],
    ['12061', 21.55 - 12.5],
    ['16015', 23.71 - 8.7],
    ['09040', 22.84 - 2.6],
  ])('of %s is its carbohydrate less its fibre, alike in both regions', (number, net) => {
    for (const region of ['US', 'EU'] as const) {
      const figure = figureOf('netCarbohydrate', [table(number).id], region);
      expect(figure.value).toBeCloseTo(net, 10);
      expect(figureStatus(figure)).toBe('known');
    }
  });

  it('in the EU is the carbohydrate itself', () => {
    const all = ['total', 'available'];
    expect(figureOf('netCarbohydrate', all, 'EU')).toMatchObject({
      ...figureOf('carbohydrate', all, 'EU'),
      nutrient: 'netCarbohydrate',
    });
  });

  it('is stated by no table, label or bound, and can be a target', () => {
    const cell = { kind: 'eq', mantissa: 1, scale: 0 };
    const version = { ...total.version, values: { netCarbohydrate: cell } };
    expect(foodVersionSchema.safeParse(version).success).toBe(false);
    const bounded = [{ nutrient: 'netCarbohydrate', maxPer100: 1 }];
    expect(
      recipeLineSchema.safeParse(aLine('l', null, { bounded: bounded as never })).success,
    ).toBe(false);
    const target = { id: 't', nutrient: 'netCarbohydrate', relation: 'atMost', amount: 20 };
    expect(targetSchema.safeParse({ ...target, segmentId: null }).success).toBe(true);
  });
});

describe('total and available carbohydrate', () => {
  it('are never summed without fibre', () => {
    // 20 with fibre and 15 + 5 without: 40 in the US; 15 and 15 in the EU.
    expect(figureOf('carbohydrate', ['total', 'available']).value).toBeCloseTo(40, 10);
    expect(figureOf('carbohydrate', ['total', 'available'], 'EU').value).toBeCloseTo(30, 10);
    expect(figureOf('netCarbohydrate', ['total', 'available']).value).toBeCloseTo(30, 10);
  });

  it.each([
    ['carbohydrate', 'US', ['total', 'availableBare'], 'atLeast'],
    ['carbohydrate', 'EU', ['totalBare', 'available'], 'atMost'],
    ['netCarbohydrate', 'US', ['totalBare', 'available'], 'atMost'],
    ['netCarbohydrate', 'EU', ['total', 'totalBare'], 'atMost'],
    ['carbohydrate', 'US', ['totalBare', 'total'], 'known'],
    ['carbohydrate', 'EU', ['availableBare', 'available'], 'known'],
    ['netCarbohydrate', 'US', ['availableBare', 'total'], 'known'],
  ] as const)('%s in the %s of %j is %s', (nutrient, region, foods, status) => {
    const figure = figureOf(nutrient, foods, region);
    expect(figureStatus(figure)).toBe(status);
    if (status !== 'known') expect(figure.missing.map(({ reason }) => reason)).toEqual(['noFibre']);
  });
});

describe('where it is asked for', () => {
  const dish = aDish('d', aRecipe('r', [grams('oats', 'total', 50)]), {
    talkingPoints: [{ id: 'p', text: 'Only [net carbs, whole]!' }],
  });

  it('by a target or a sentence it is counted, and not otherwise', () => {
    const { episode } = aFile([dish], FOODS);
    expect(countedNutrients(episode)).toContain('netCarbohydrate');
    expect(countedNutrients({ ...episode, segments: [] })).not.toContain('netCarbohydrate');
    const target = {
      id: 't',
      nutrient: 'netCarbohydrate',
      relation: 'atMost',
      amount: 20,
      segmentId: null,
      portionId: null,
    } as const;
    const aimed = countedNutrients({ region: 'EU', segments: [], targets: [target, target] });
    expect(aimed.filter((each) => each === 'netCarbohydrate')).toHaveLength(1);
  });

  it('it is bound by its name', () => {
    expect(parseBindings('[net carbs, each]')).toEqual([
      { kind: 'number', nutrient: 'netCarbohydrate', scope: 'each' },
    ]);
  });

  it('its breakdown adds up to it, with the value of each food', () => {
    const file = aFile(
      [aDish('d', aRecipe('r', [grams('a', 'total', 50), grams('b', 'available', 40)]))],
      FOODS,
      { resolutionMg: 1 },
    );
    const of = breakdown(file, { kind: 'whole', segmentId: 'd' }, 'netCarbohydrate');
    expect(of?.rows.map(({ value }) => value)).toEqual([7.5, 6].map((v) => expect.closeTo(v, 10)));
    expect(of?.rows.map(({ foods }) => foods[0]?.value.value)).toEqual(
      [15, 15].map((v) => expect.closeTo(v, 10)),
    );
    expect(of?.figure.value).toBeCloseTo(13.5, 10);
  });
});
