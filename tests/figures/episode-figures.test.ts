import { describe, expect, it } from 'vitest';
import { episodeFigures } from '#lib/figures/episode-figures';
import { figureStatus } from '#lib/figures/figure';
import { printFigure } from '#lib/figures/print-figure';
import { judgeLimit } from '#lib/figures/judge-limit';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, aTalk, grams } from '../support/build';

const oats = aFood('oats', { energyKcal: '379', protein: '13.15', fibre: '10.1', sodium: '6' });
const salt = aFood('salt', { energyKcal: '0', protein: '0', fibre: '0.0', sodium: '38758' });
const paprika = aFood('paprika', { energyKcal: '282', protein: '14.14', fibre: '', sodium: '68' });

function figureOf(
  lines: Parameters<typeof aRecipe>[1],
  nutrient: 'energyKcal' | 'protein' | 'fibre' | 'sodium',
) {
  const file = aFile([aDish('dish', aRecipe('recipe', lines))], [oats, salt, paprika]);
  const figure = episodeFigures(file).dishes[0]?.whole[nutrient];
  if (!figure) throw new Error('the dish has this figure');
  return figure;
}

describe('missing and open', () => {
  it('a blank value makes the sum at least, and names the ingredient', () => {
    const figure = figureOf(
      [grams('oats', 'oats', 40), grams('smoked paprika', 'paprika', 2)],
      'fibre',
    );
    expect(figureStatus(figure)).toBe('atLeast');
    expect(figure.value).toBeCloseTo(4.04, 9);
    expect(printFigure(figure)).toMatchObject({
      text: 'at least 3.9',
      range: 'at least: no value for smoked paprika',
    });
  });

  it('missing grams leave every nutrient open that the food does not state as zero', () => {
    const lines = [grams('oats', 'oats', 40), aLine('salt to taste', 'salt')];
    expect(figureStatus(figureOf(lines, 'sodium'))).toBe('open');
    expect(figureStatus(figureOf(lines, 'protein'))).toBe('known');
    expect(figureStatus(figureOf(lines, 'energyKcal'))).toBe('known');
  });

  it('a plain zero of the table adds none in derived nutrients too, a label’s zero is a range', () => {
    const zero = {
      energyKcal: '0',
      protein: '0.00',
      fat: '0.00',
      carbohydrate: '0.00',
      fibre: '0.0',
    };
    const open = (food: typeof salt) => {
      const lines = [grams('oats', 'oats', 40), aLine('to taste', food.id)];
      const wholeOats = aFood('oats', { ...zero, protein: '13.15' });
      const file = aFile([aDish('d', aRecipe('r', lines))], [wholeOats, food], {
        episode: { region: 'EU' },
      });
      const { energyKj, salt: saltFigure } = episodeFigures(file).dishes[0]?.whole ?? {};
      return [energyKj && figureStatus(energyKj), saltFigure && figureStatus(saltFigure)];
    };
    expect(open(aFood('salt', { ...zero, sodium: '38758' }))).toEqual(['known', 'open']);
    const serving = { massMg: 1000, volumeMl: null, decimals: 0, text: '1 g', perPack: null };
    const label = aFood(
      'spray',
      { ...zero, salt: '0' },
      { kind: 'label' },
      { basis: 'serving', rule: 'us', serving },
    );
    expect(open(label)[0]).toBe('open');
  });

  it('a line without a food leaves everything open', () => {
    const figure = figureOf(
      [grams('oats', 'oats', 40), aLine('mystery sauce', null)],
      'energyKcal',
    );
    expect(figureStatus(figure)).toBe('open');
    expect(printFigure(figure)).toMatchObject({
      text: 'open',
      number: null,
      range: 'no food chosen for mystery sauce',
    });
  });

  it('a dish without ingredients is open, not zero', () => {
    const file = aFile([aDish('soup', aRecipe('r', []))], []);
    const { dishes, day } = episodeFigures(file);
    expect(dishes[0]?.whole.energyKcal && printFigure(dishes[0].whole.energyKcal)).toMatchObject({
      text: 'open',
      range: 'no ingredients yet in soup',
    });
    expect(day.energyKcal && figureStatus(day.energyKcal)).toBe('open');
  });

  it('one open dish leaves the other dish known and the day open', () => {
    const file = aFile(
      [
        aDish('a', aRecipe('ra', [grams('oats', 'oats', 40)])),
        aDish('b', aRecipe('rb', [aLine('mystery', null)])),
      ],
      [oats],
    );
    const figures = episodeFigures(file);
    const status = figures.dishes.map(
      (dish) => dish.whole.energyKcal && figureStatus(dish.whole.energyKcal),
    );
    expect(status).toEqual(['known', 'open']);
    expect(figures.day.energyKcal && figureStatus(figures.day.energyKcal)).toBe('open');
  });

  it('raw against cooked without a yield is an error that leaves the line open', () => {
    const raw = aFood('barley', { energyKcal: '352' }, {}, { state: 'raw' });
    const file = aFile(
      [aDish('d', aRecipe('r', [grams('barley', 'barley', 200, { state: 'cooked' })]))],
      [raw],
    );
    const figure = episodeFigures(file).dishes[0]?.whole.energyKcal;
    expect(figure?.missing[0]?.reason).toBe('states');
    expect(figure && figureStatus(figure)).toBe('open');
  });
});

describe('amounts', () => {
  // SR28 05306: 82 g cooked from 113.4 g raw (USDA SR28, WEIGHT table).
  it('converts by a published yield, ± 5 points', () => {
    const turkey = aFood(
      'turkey',
      { energyKcal: '203' },
      {
        yields: [
          { id: 'y', method: 'patty', rawMg: 113_400, cookedMg: 82_000, source: 'SR28', own: null },
        ],
      },
      { state: 'cooked' },
    );
    const file = aFile(
      [aDish('d', aRecipe('r', [grams('turkey', 'turkey', 400, { state: 'raw' })]))],
      [turkey],
    );
    const line = episodeFigures(file).dishes[0]?.lines[0];
    expect((line?.eatenMg?.value ?? 0) / 1000).toBeCloseTo(400 * (82 / 113.4), 6);
    expect((line?.eatenMg?.high ?? 0) / 1000).toBeCloseTo(400.5 * (82 / 113.4 + 0.05), 6);
  });

  // SR28 FOOD_DES: zucchini 5 % refuse (ends); 400 g as bought are 380 g to eat.
  it('takes peel and trim off an amount as bought, once', () => {
    const zucchini = aFood(
      'zucchini',
      { energyKcal: '17' },
      {},
      { refuse: { percent: 5, text: 'Ends', inValues: false } },
    );
    const file = aFile(
      [aDish('d', aRecipe('r', [grams('zucchini', 'zucchini', 400, { asBought: true })]))],
      [zucchini],
    );
    expect(episodeFigures(file).dishes[0]?.lines[0]?.eatenMg?.value).toBeCloseTo(380_000, 6);
  });

  it('takes away what stays in the tray', () => {
    const oil = aFood('oil', { energyKcal: '884' });
    const leftBehind = {
      kind: 'mass',
      lowMg: 4_000,
      valueMg: 5_000,
      highMg: 6_000,
      where: 'pan',
      made: 'alike',
    } as const;
    const file = aFile(
      [aDish('d', aRecipe('r', [grams('oil', 'oil', 20, { leftBehind })]))],
      [oil],
    );
    const figure = episodeFigures(file).dishes[0]?.whole.energyKcal;
    expect(figure?.value).toBeCloseTo(8.84 * 15, 9);
    expect(figure?.low).toBeCloseTo(8.835 * (19.5 - 6), 6);
    expect(figure?.high).toBeCloseTo(8.845 * (20.5 - 4), 6);
  });

  it('does not let a line that leaves more behind than it had take from the others', () => {
    const leftBehind = {
      kind: 'mass',
      lowMg: 90_000,
      valueMg: 90_000,
      highMg: 90_000,
      where: 'pan',
      made: 'alike',
    } as const;
    const lines = [grams('a', 'oats', 100), grams('b', 'oats', 15, { leftBehind })];
    const figure = episodeFigures(aFile([aDish('d', aRecipe('r', lines))], [oats])).dishes[0]?.whole
      .protein;
    expect(figure && figureStatus(figure)).toBe('open');
    expect(figure?.missing[0]?.reason).toBe('leftBehind');
  });

  it('takes household weights as without peel: refuse never enters twice', () => {
    // USDA SR28, 11282: one small onion 70 g; refuse 10 % (stem ends, sprouts and defects).
    const onion = aFood(
      'onion',
      { energyKcal: '40' },
      {
        measures: [
          {
            id: 'small',
            name: 'small',
            qtyNum: 1,
            qtyDen: 1,
            massMg: 70_000,
            digits: 0,
            source: 'SR28',
          },
        ],
      },
      { refuse: { percent: 10, text: 'ends', inValues: false } },
    );
    const one = { low: { num: 1, den: 1 }, high: { num: 1, den: 1 } };
    const line = aLine('onion', 'onion', { quantity: one, unit: 'piece', asBought: true });
    const eaten = (measureName: string | null) =>
      episodeFigures(aFile([aDish('d', aRecipe('r', [{ ...line, measureName }]))], [onion]))
        .dishes[0]?.lines[0];
    expect(eaten(null)?.eatenMg?.value).toBe(70_000);
    expect(eaten('small')?.eatenMg?.value).toBe(70_000);
    expect(eaten('enormous')).toMatchObject({ eatenMg: null, gap: 'noGrams' });
  });

  it('multiplies servings by the declared value: the serving weight cancels', () => {
    const skyr = aFood(
      'skyr',
      { protein: '17', energyKcal: '100' },
      { kind: 'label' },
      {
        basis: 'serving',
        rule: 'us',
        serving: { massMg: 170_000, volumeMl: null, decimals: 0, text: '1 cup', perPack: null },
      },
    );
    const two = { low: { num: 2, den: 1 }, high: { num: 2, den: 1 } };
    const file = aFile(
      [aDish('d', aRecipe('r', [aLine('skyr', 'skyr', { quantity: two, unit: 'serving' })]))],
      [skyr],
    );
    const figure = episodeFigures(file).dishes[0]?.whole.protein;
    // 21 CFR 101.9(c)(7): 17 g declared stand for 16.5 to 17.5 g.
    expect(figure?.value).toBe(34);
    expect(figure?.low).toBeCloseTo(33, 6);
    expect(figure?.high).toBeCloseTo(35, 6);
  });

  it('lets a reading win over the plan and shares its one error', () => {
    const reading = aReading('w', 'raw', 100, {
      shares: [
        { lineId: 'a', share: { num: 1, den: 4 } },
        { lineId: 'b', share: { num: 3, den: 4 } },
      ],
    });
    const recipe = aRecipe('r', [grams('a', 'oats', 500), grams('b', 'oats', 500)], {
      weighings: [reading],
    });
    const figure = episodeFigures(aFile([aDish('d', recipe)], [oats])).dishes[0]?.whole.protein;
    expect(figure?.value).toBeCloseTo(13.15, 9);
    expect(figure?.low).toBeCloseTo(0.995 * 13.145, 6);
    expect(figure?.sources).toEqual(['food:oats-v1:protein', 'weighing:w']);
  });
});

describe('portions and the day', () => {
  const reading = aReading('done', 'finished', 500);
  const portions = [
    { id: 'half', kind: 'count' as const, name: 'One of two', of: 2 },
    { id: 'bowl', kind: 'mass' as const, name: '125 g', massMg: 125_000 },
  ];

  it('divides exactly by count and by the finished weight by grams', () => {
    const recipe = aRecipe('r', [grams('oats', 'oats', 400)], { weighings: [reading], portions });
    const dish = episodeFigures(aFile([aDish('d', recipe)], [oats])).dishes[0];
    expect(dish?.portions[0]?.figures.protein?.value).toBeCloseTo(26.3, 9);
    expect(dish?.portions[1]?.figures.protein?.value).toBeCloseTo(13.15, 9);
    expect(dish?.per100g?.protein?.value).toBeCloseTo(10.52, 9);
    expect(dish?.portions[1]?.figures.protein?.sources).toContain('weighing:done');
  });

  it('divides by the scale’s accuracy as well, and never by what may be nothing', () => {
    const weighed = (g: number, accuracyPpm: number) => {
      const recipe = aRecipe('r', [grams('oats', 'oats', 400)], {
        weighings: [aReading('w', 'finished', g)],
        portions,
      });
      const file = aFile([aDish('d', recipe)], [oats]);
      const [scale] = file.kitchen.scales;
      const kitchen = { ...file.kitchen, scales: scale ? [{ ...scale, accuracyPpm }] : [] };
      return episodeFigures({ ...file, kitchen }).dishes[0];
    };
    const [exact, rough] = [weighed(500, 0), weighed(500, 20_000)];
    expect(rough?.finishedMg?.high).toBeCloseTo(500_500 * 1.02, 3);
    expect(rough?.per100g?.protein?.high ?? 0).toBeGreaterThan(
      exact?.per100g?.protein?.high ?? Infinity,
    );
    expect(weighed(0.5, 0)?.per100g).toBeNull();
  });

  it('leaves a portion by grams open until the dish is weighed', () => {
    const recipe = aRecipe('r', [grams('oats', 'oats', 400)], { portions });
    const bowl = episodeFigures(aFile([aDish('d', recipe)], [oats])).dishes[0]?.portions[1]?.figures
      .protein;
    expect(bowl && figureStatus(bowl)).toBe('open');
    expect(bowl?.missing[0]?.reason).toBe('noDivisor');
  });

  it('sums what is eaten, and talk adds nothing', () => {
    const dish = aDish('d', aRecipe('r', [grams('oats', 'oats', 400)]), {
      eaten: { num: 1, den: 4 },
    });
    const figures = episodeFigures(aFile([aTalk('intro'), dish], [oats]));
    expect(figures.day.protein?.value).toBeCloseTo(13.15, 9);
    expect(figures.dayIsWhole).toBe(false);
  });
});

describe('carbohydrate on one basis', () => {
  const us = aFood('beans', { carbohydrate: '23.71', fibre: '8.7' });
  const eu = aFood(
    'bread',
    { carbohydrate: '40.0', fibre: '9.0' },
    {},
    { carbBasis: 'available', rule: 'asPrinted' },
  );
  const unknown = aFood('rice', { carbohydrate: '28.7', fibre: '' });
  const carbohydrate = (region: 'US' | 'EU', ...foods: (typeof us)[]) => {
    const lines = foods.map((food) => grams(food.id, food.id, 100));
    const file = aFile([aDish('d', aRecipe('r', lines))], foods, { episode: { region } });
    const figure = episodeFigures(file).dishes[0]?.whole.carbohydrate;
    if (!figure) throw new Error('the dish has carbohydrate');
    return figure;
  };

  // Regulation (EU) 1169/2011, Annex I: carbohydrate is available, fibre not included.
  it('converts by the food’s own fibre in both directions', () => {
    expect(carbohydrate('EU', us, eu).value).toBeCloseTo(23.71 - 8.7 + 40, 9);
    expect(carbohydrate('US', us, eu).value).toBeCloseTo(23.71 + 40 + 9, 9);
  });

  it('without a fibre value it is at most, or at least', () => {
    expect(figureStatus(carbohydrate('EU', unknown))).toBe('atMost');
    const euUnknown = aFood(
      'loaf',
      { carbohydrate: '40', fibre: '' },
      {},
      { carbBasis: 'available' },
    );
    expect(figureStatus(carbohydrate('US', euUnknown))).toBe('atLeast');
    expect(figureStatus(carbohydrate('EU', unknown, euUnknown))).toBe('atMost');
  });
});

describe('European panels', () => {
  // Factors: Regulation (EU) 1169/2011, Annex XIV. Values per 100 g: USDA SR28 05062, 16015, 09040.
  it.each([
    [
      'chicken breast, raw',
      { protein: '22.50', fat: '2.62', carbohydrate: '0', fibre: '0.0', energyKcal: '120' },
      479,
    ],
    [
      'black beans, boiled',
      { protein: '8.86', fat: '0.54', carbohydrate: '23.71', fibre: '8.7', energyKcal: '132' },
      495,
    ],
    [
      'banana',
      { protein: '1.09', fat: '0.33', carbohydrate: '22.84', fibre: '2.6', energyKcal: '89' },
      396,
    ],
  ] as const)('computes the kJ of %s from its own factors', (name, values, kilojoules) => {
    const food = aFood(name, values);
    const file = aFile([aDish('d', aRecipe('r', [grams(name, name, 100)]))], [food], {
      episode: { region: 'EU' },
    });
    const figure = episodeFigures(file).dishes[0]?.whole.energyKj;
    expect(Math.round(figure?.value ?? 0)).toBe(kilojoules);
    expect(figure && figureStatus(figure)).toBe('known');
  });

  it('does not leave out energy that macros cannot explain', () => {
    const spirit = aFood('spirit', {
      protein: '0.00',
      fat: '0.00',
      carbohydrate: '0.00',
      fibre: '0.0',
      energyKcal: '231',
    });
    const file = aFile([aDish('d', aRecipe('r', [grams('spirit', 'spirit', 40)]))], [spirit], {
      episode: { region: 'EU' },
    });
    const figure = episodeFigures(file).dishes[0]?.whole.energyKj;
    expect(figure && figureStatus(figure)).toBe('atLeast');
  });

  // Regulation (EU) 1169/2011, Annex I: salt is sodium times 2.5.
  it('turns sodium into salt', () => {
    const file = aFile([aDish('d', aRecipe('r', [grams('salt', 'salt', 10)]))], [salt], {
      episode: { region: 'EU' },
    });
    expect(episodeFigures(file).dishes[0]?.whole.salt?.value).toBeCloseTo(9.6895, 9);
  });
});

describe('judging against a limit', () => {
  const figure = {
    nutrient: 'protein',
    value: 70,
    low: 66,
    high: 74,
    likelyLow: 68,
    likelyHigh: 72,
    missing: [],
    provisional: [],
    sources: [],
  } as const;
  it.each([
    ['atLeast', 68, 'met'],
    ['atLeast', 69, 'cannotTell'],
    ['atLeast', 71, 'cannotTell'],
    ['atLeast', 73, 'missed'],
    ['atMost', 72, 'met'],
    ['atMost', 71, 'cannotTell'],
    ['atMost', 67, 'missed'],
  ] as const)('%s %s is %s', (relation, amount, verdict) => {
    expect(judgeLimit(figure, relation, amount)).toBe(verdict);
  });

  it('a one-sided figure decides only where its known side does', () => {
    const atLeast = { ...figure, high: null, likelyHigh: null };
    expect(judgeLimit(atLeast, 'atLeast', 68)).toBe('met');
    expect(judgeLimit(atLeast, 'atLeast', 69)).toBe('unknown');
    expect(judgeLimit(atLeast, 'atMost', 60)).toBe('missed');
    expect(judgeLimit(atLeast, 'atMost', 90)).toBe('unknown');
    expect(judgeLimit({ ...atLeast, low: null, likelyLow: null }, 'atLeast', 1)).toBe('unknown');
  });
});
