import { describe, expect, it } from 'vitest';
import { episodeFileText, parseEpisodeFile } from '#lib/episode/file';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import { figureStatus, type Figure } from '#lib/figures/figure';
import type { Nutrient } from '#lib/foods/nutrients';
import { outputs } from '#lib/sheet/outputs';
import { aDish, aFile, aFood, aReading, aRecipe, grams } from '../support/build';

/** Published recipes through the whole path: file text → grams → figures, and figures.json for what is shown. */
function dishOf(file: EpisodeFile, nutrients: readonly Nutrient[]) {
  const parsed = parseEpisodeFile(episodeFileText(file));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  const text = outputs(parsed.value, { now: file.savedAt, seed: 1 }).get('figures.json');
  const dish = episodeFigures(parsed.value, nutrients).dishes[0];
  if (!dish) throw new Error('a dish');
  const figure = (nutrient: Nutrient): Figure => {
    const found = dish.per100g?.[nutrient];
    if (!found) throw new Error(`per 100 g of ${nutrient}`);
    return found;
  };
  return { json: JSON.parse(text ?? '').dishes[0], figure };
}

/**
 * Indian Nutrient Databank, recipes ASC021 and OSR056 (github.com/lindsayjaacks/Indian-Nutrient-Databank-INDB-,
 * commit fbdb62b): ingredient values from UK CoFID 2021, results per 100 g of raw total weight (no yield, no
 * retention). The databank counts unknown and trace as 0. Four decimals are published: tolerance half of the last,
 * and what the scale of 1 mg adds.
 */
const TOLERANCE = 0.00006;
const clock = { resolutionMg: 1 };

describe('sweet lassi (INDB ASC021)', () => {
  const available = { carbBasis: 'available' } as const;
  const none = {
    energyKcal: '0',
    energyKj: '0',
    carbohydrate: '0',
    protein: '0',
    fat: '0',
    sodium: '0',
    calcium: '0',
    potassium: '0',
    iron: '0',
    vitaminC: '0',
    cholesterol: '0',
  };
  const yogurt = aFood(
    'yogurt',
    {
      energyKcal: '79',
      energyKj: '333',
      carbohydrate: '7.8',
      protein: '5.7',
      fat: '3.0',
      sodium: '80',
      calcium: '200',
      potassium: '280',
      iron: '0.10',
      vitaminC: '1',
      cholesterol: '11.0',
    },
    {},
    available,
  );
  const sugar = aFood(
    'sugar',
    {
      ...none,
      energyKcal: '394',
      energyKj: '1680',
      carbohydrate: '105.0',
      protein: 'Tr',
      sodium: '5',
      calcium: '10',
      potassium: '5',
      iron: '0.20',
    },
    {},
    available,
  );
  const water = aFood('water', none, {}, available);
  const file = aFile(
    [
      aDish(
        'lassi',
        aRecipe(
          'r',
          [
            grams('yogurt', 'yogurt', 100),
            grams('sugar', 'sugar', 20),
            grams('13.5 tbsp water', 'water', 202.5),
            grams('half a cup of water', 'water', 120),
          ],
          {
            weighings: [aReading('all', 'finished', 442.5)],
            portions: [{ id: 'glass', kind: 'count', name: 'One tall glass', of: 1 }],
          },
        ),
      ),
    ],
    [yogurt, sugar, water],
    { ...clock, episode: { region: 'EU' } },
  );
  const published: [Nutrient, number][] = [
    ['energyKcal', 35.661],
    ['energyKj', 151.1864],
    ['carbohydrate', 6.5085],
    ['protein', 1.2881],
    ['fat', 0.678],
    ['sodium', 18.3051],
    ['calcium', 45.6497],
    ['potassium', 63.5028],
    ['iron', 0.0316],
    ['vitaminC', 0.226],
    ['cholesterol', 2.4859],
  ];
  const { json, figure } = dishOf(
    file,
    published.map(([nutrient]) => nutrient),
  );

  it.each(published)('has %s %d per 100 g as published', (nutrient, value) => {
    const found = figure(nutrient);
    expect(figureStatus(found)).toBe('known');
    expect(Math.abs(found.value - value)).toBeLessThanOrEqual(TOLERANCE);
    expect(found.low).toBeLessThanOrEqual(value + TOLERANCE);
    expect(found.high).toBeGreaterThanOrEqual(value - TOLERANCE);
  });

  it('prints the same in figures.json, with salt that follows from the published sodium', () => {
    for (const nutrient of ['energyKcal', 'energyKj', 'carbohydrate', 'protein', 'fat'] as const) {
      expect(json.per100g[nutrient].value).toBeCloseTo(figure(nutrient).value, 9);
    }
    expect(json.per100g.salt.value).toBeCloseTo((18.3051 * 2.5) / 1000, 6);
  });

  it('has 157.80 kcal in the glass', () => {
    expect(json.portions[0].figures.energyKcal.value).toBeCloseTo(157.8, 2);
  });
});

describe('small onion pickle (INDB OSR056)', () => {
  const shallots = aFood('shallots', {
    energyKcal: '20',
    carbohydrate: '3.3',
    protein: '1.5',
    fat: '0.2',
    fibre: 'N',
    sodium: '10',
    calcium: '24',
    potassium: '180',
    iron: '0.80',
    vitaminC: '13',
  });
  const chilli = aFood('chilli powder', {
    energyKcal: 'N',
    carbohydrate: 'N',
    protein: '13.5',
    fat: '14.3',
    fibre: '34.8',
    sodium: '4000',
    calcium: '330',
    potassium: '1950',
    iron: '17.30',
    vitaminC: '1',
  });
  const lemon = aFood('lemon', {
    energyKcal: '9',
    carbohydrate: '1.4',
    protein: '0.5',
    fat: '0.2',
    fibre: 'N',
    sodium: '2',
    calcium: '17',
    potassium: '90',
    iron: '0.30',
    vitaminC: '34',
  });
  const salt = aFood('salt', {
    energyKcal: '0',
    carbohydrate: '0',
    protein: '0',
    fat: '0',
    fibre: '0',
    sodium: '39300',
    calcium: '10',
    potassium: '89',
    iron: '0.30',
    vitaminC: '0',
  });
  const known: [Nutrient, number][] = [
    ['protein', 1.6471],
    ['fat', 0.6394],
    ['sodium', 249.4799],
    ['calcium', 31.9465],
    ['potassium', 214.9005],
    ['iron', 1.2019],
    ['vitaminC', 17.2675],
  ];
  // The databank sums what it does not know as 0. Here that is 'at least', with the ingredients named.
  const atLeast: [Nutrient, number, string[]][] = [
    ['energyKcal', 16.8648, ['chilli powder']],
    ['carbohydrate', 2.7637, ['chilli powder']],
    ['fibre', 1.0859, ['shallots', 'lemon']],
  ];
  const recipe = aRecipe(
    'r',
    [
      grams('shallots', 'shallots', 250),
      grams('chilli powder', 'chilli powder', 10.5),
      grams('lemon', 'lemon', 75),
      grams('salt', 'salt', 1),
    ],
    {
      weighings: [aReading('all', 'finished', 336.5)],
      portions: [{ id: 'p', kind: 'count', name: 'One of three', of: 3 }],
    },
  );
  const { json, figure } = dishOf(
    aFile([aDish('pickle', recipe)], [shallots, chilli, lemon, salt], clock),
    [...known.map(([nutrient]) => nutrient), ...atLeast.map(([nutrient]) => nutrient)],
  );

  it.each(known)('has %s %d per 100 g as published', (nutrient, value) => {
    const found = figure(nutrient);
    expect(figureStatus(found)).toBe('known');
    expect(Math.abs(found.value - value)).toBeLessThanOrEqual(TOLERANCE);
    expect(found.low).toBeLessThanOrEqual(value + TOLERANCE);
    expect(found.high).toBeGreaterThanOrEqual(value - TOLERANCE);
  });

  it.each(atLeast)('has %s at least %d, for want of a value of %j', (nutrient, value, texts) => {
    const found = figure(nutrient);
    expect(figureStatus(found)).toBe('atLeast');
    expect(Math.abs(found.value - value)).toBeLessThanOrEqual(TOLERANCE);
    expect([found.high, found.likelyHigh]).toEqual([null, null]);
    expect(found.low).toBeLessThanOrEqual(value + TOLERANCE);
    expect(found.missing.map(({ text, reason }) => [text, reason])).toEqual(
      texts.map((text) => [text, 'noValue']),
    );
  });

  it('says so in figures.json, and never the bare number', () => {
    const { energyKcal, carbohydrate } = json.per100g;
    expect(energyKcal).toMatchObject({
      high: null,
      shown: expect.stringMatching(/^at least 16\b/),
      missing: [{ lineId: 'chilli powder', text: 'chilli powder', reason: 'noValue' }],
    });
    expect(carbohydrate.shown).toMatch(/^at least /);
    expect(json.portions[0].figures.energyKcal).toMatchObject({
      value: expect.closeTo(18.9167, 3),
      high: null,
      shown: expect.stringMatching(/^at least 18\b/),
    });
  });
});
