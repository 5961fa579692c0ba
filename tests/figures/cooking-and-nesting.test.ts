import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { recipeRing } from '#lib/episode/made-from';
import type { RecipeLine, Weighing } from '#lib/episode/recipe-schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import type { Figure } from '#lib/figures/figure';
import type { Nutrient } from '#lib/foods/nutrients';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, grams } from '../support/build';

const whole = { num: 1, den: 1 };

function figure(file: ReturnType<typeof aFile>, nutrient: Nutrient): Figure {
  const found = episodeFigures(file, [nutrient]).dishes[0]?.whole[nutrient];
  if (!found) throw new Error('no figure');
  return found;
}

const of = (lines: RecipeLine[], weighings: Weighing[] = []) =>
  aDish('d', aRecipe('r', lines, { weighings }));

describe('a running total on one scale', () => {
  const oats = aFood('oats', { protein: '10.00' });
  const shares = (lineId: string) => [{ lineId, share: whole }];
  // A bowl of 300 g is on the scale: 400 g with the first, 560 g with the second, 600 g with the third.
  const first = aReading('w1', 'raw', 400, { tareMg: 300_000, shares: shares('a') });
  const second = aReading('w2', 'raw', 560, {
    tareMg: 400_000,
    afterId: 'w1',
    shares: shares('b'),
  });
  const third = aReading('w3', 'raw', 600, { tareMg: 560_000, afterId: 'w2', shares: shares('c') });
  const lines = ['a', 'b', 'c'].map((id) => aLine(id, 'oats'));
  const protein = figure(aFile([of(lines, [first, second, third])], [oats]), 'protein');

  it('adds what each reading has over the one before', () => {
    expect(protein.value).toBeCloseTo(30, 9);
  });

  it('has the error of the last reading alone: what one ingredient gains the next loses', () => {
    // 300 g ± half a resolution of 1 g, at 10.00 ± 0.005 g per 100 g.
    expect(protein.low).toBeCloseTo(2.995 * 9.995, 6);
    expect(protein.high).toBeCloseTo(3.005 * 10.005, 6);
  });

  it('has both errors for one ingredient by itself', () => {
    const only = episodeFigures(aFile([of(lines, [first, second, third])], [oats]), ['protein']);
    expect(only.dishes[0]?.lines[1]?.eatenMg).toMatchObject({ value: 160_000 });
    expect(only.dishes[0]?.lines[1]?.eatenMg?.low).toBeCloseTo(159_000, 0);
    expect(only.dishes[0]?.lines[1]?.eatenMg?.high).toBeCloseTo(161_000, 0);
  });
});

describe('what stayed behind', () => {
  const oil = aFood('oil', { energyKcal: '884', fat: '100.00', saturated: '14.0', sodium: '0' });

  it('is taken from two ingredients that share one reading of it, by their shares', () => {
    const half = { num: 1, den: 2 };
    const leftBehind = { kind: 'weighed', where: 'pan', made: 'alike' } as const;
    const lines = [grams('a', 'oil', 20, { leftBehind }), grams('b', 'oil', 10, { leftBehind })];
    const pan = aReading('w', 'left', 6, {
      shares: ['a', 'b'].map((lineId) => ({ lineId, share: half })),
    });
    const fat = figure(aFile([of(lines, [pan])], [oil]), 'fat');
    expect(fat.value).toBeCloseTo(24, 9);
    // 20 ± 0.5, 10 ± 0.5 and one reading of 6 ± 0.5 g; 100.00 g per 100 g ± 0.005.
    expect(fat.low).toBeCloseTo(22.5 * 0.99995, 6);
    expect(fat.high).toBeCloseTo(25.5 * 1.00005, 6);
  });

  it('makes the figure at most while it is still to be weighed', () => {
    const leftBehind = { kind: 'weighed', where: 'tray', made: 'alike' } as const;
    const fat = figure(aFile([of([grams('a', 'oil', 20, { leftBehind })])], [oil]), 'fat');
    expect(fat).toMatchObject({ low: null, missing: [{ reason: 'leftNotWeighed' }] });
    expect(fat.high).toBeCloseTo(20.5 * 1.00005, 6);
  });

  it('as fat is less fat and energy, and at most the rest that goes with fat; protein stays', () => {
    const mince = aFood('mince', {
      energyKcal: '254',
      protein: '17.17',
      fat: '20.00',
      saturated: '7.58',
      sodium: '66',
    });
    const mass = { lowMg: 30_000, valueMg: 30_000, highMg: 30_000 };
    const leftBehind = { kind: 'mass', ...mass, where: 'pan', made: 'fat' } as const;
    const file = aFile([of([grams('a', 'mince', 500, { leftBehind })])], [mince]);
    expect(figure(file, 'protein').value).toBeCloseTo(85.85, 9);
    expect(figure(file, 'sodium').value).toBeCloseTo(330, 9);
    expect(figure(file, 'fat').value).toBeCloseTo(70, 9);
    // 9 kcal a gram (21 CFR 101.9(c)(1)(i)(B)), 8.79 to 9.02 by USDA Handbook 74.
    expect(figure(file, 'energyKcal').value).toBeCloseTo(1270 - 270, 9);
    expect(figure(file, 'saturated')).toMatchObject({
      low: null,
      missing: [{ reason: 'fatLeft' }],
    });
  });
});

describe('cooked weights', () => {
  const turkey = (state: 'raw' | 'cooked', yields: Parameters<typeof aFood>[2] = {}) =>
    aFood('turkey', { protein: '20.00' }, yields, { state });
  const own = (id: string, rawMg: number, cookedMg: number, lineId: string | null = null) => ({
    id,
    method: 'pan',
    rawMg,
    cookedMg,
    source: 'my own weights',
    own: { halfMg: 500, lineId },
  });
  const eaten = (food: ReturnType<typeof aFood>, line: RecipeLine, weighings: Weighing[] = []) =>
    episodeFigures(aFile([of([line], weighings)], [food]), ['protein']).dishes[0]?.lines[0];

  it('of this cook: the errors of its two readings', () => {
    const food = turkey('raw', { yields: [own('y', 500_000, 360_000, 'l')] });
    const mg = eaten(food, grams('l', 'turkey', 150, { state: 'cooked' }))?.eatenMg;
    expect(mg?.value).toBeCloseTo((150_000 * 500) / 360, 6);
    expect(mg?.low).toBeCloseTo((149_500 * 499.5) / 360.5, 4);
    expect(mg?.high).toBeCloseTo((150_500 * 500.5) / 359.5, 4);
  });

  it('of two past cooks: their range, widened by reading errors', () => {
    const food = turkey('cooked', {
      yields: [own('y1', 500_000, 350_000), own('y2', 400_000, 300_000)],
    });
    const mg = eaten(food, grams('l', 'turkey', 200, { state: 'raw' }))?.eatenMg;
    expect(mg?.low).toBeCloseTo((199_500 * 349.5) / 500.5, 4);
    expect(mg?.high).toBeCloseTo((200_500 * 300.5) / 399.5, 4);
  });

  it('of one past cook: ± 5 points; a past cook wins over what is published', () => {
    const published = { ...own('p', 100_000, 60_000), source: 'SR28', own: null };
    const food = turkey('cooked', { yields: [published, own('y', 500_000, 350_000)] });
    const mg = eaten(food, grams('l', 'turkey', 200, { state: 'raw' }))?.eatenMg;
    expect(mg?.value).toBeCloseTo(140_000, 6);
    expect(mg?.low).toBeCloseTo(199_500 * 0.65, 4);
    expect(mg?.high).toBeCloseTo(200_500 * 0.75, 4);
  });

  it('of the method that the ingredient names', () => {
    const roasted = { ...own('p', 100_000, 60_000), method: 'roasted', own: null };
    const fried = { ...own('q', 100_000, 80_000), method: 'fried', own: null };
    const food = turkey('cooked', { yields: [roasted, fried] });
    const line = grams('l', 'turkey', 200, { state: 'raw' });
    expect(eaten(food, line)?.eatenMg?.value).toBeCloseTo(120_000, 6);
    expect(eaten(food, { ...line, cookMethod: 'fried' })?.eatenMg?.value).toBeCloseTo(160_000, 6);
    expect(eaten(food, { ...line, cookMethod: 'boiled' })?.gap).toBe('states');
  });

  it('a reading of the cooked ingredient counts for a food whose values hold cooked', () => {
    const line = grams('l', 'turkey', 500, { state: 'raw' });
    const cooked = aReading('w', 'cooked', 362, { shares: [{ lineId: 'l', share: whole }] });
    expect(eaten(turkey('cooked'), line, [cooked])?.eatenMg?.value).toBe(362_000);
    // Raw values: the raw grams hold what was eaten, whatever it weighs when done.
    expect(eaten(turkey('raw'), line, [cooked])?.eatenMg?.value).toBe(500_000);
  });
});

describe('values for the food with its bone', () => {
  const wings = aFood(
    'wings',
    { protein: '10.00' },
    {},
    {
      refuse: { percent: 40, text: 'bone', inValues: true },
    },
  );

  it('take an amount as bought as it is, and gross an edible one up: never twice', () => {
    const bought = aFile([of([grams('l', 'wings', 500, { asBought: true })])], [wings]);
    expect(figure(bought, 'protein').value).toBeCloseTo(50, 9);
    const edible = aFile([of([grams('l', 'wings', 300)])], [wings]);
    expect(figure(edible, 'protein').value).toBeCloseTo(50, 9);
  });
});

describe('recipes made from recipes', () => {
  const tomato = aFood('tomato', { energyKcal: '18', sodium: '5' });
  const salt = aFood('salt', { energyKcal: '0', sodium: '38758' });
  const made = (id: string, text: string, recipeId: string, more: Partial<RecipeLine>) =>
    aLine(id, null, { text, madeFrom: { recipeId, rev: 1 }, ...more });
  const one = { low: whole, high: whole };
  const sauce = aRecipe('sauce', [grams('t', 'tomato', 800), grams('s', 'salt', 4)], {
    weighings: [aReading('done', 'finished', 600)],
    portions: [{ id: 'ladle', kind: 'count', name: 'ladle', of: 4 }],
  });
  const fileOf = (line: RecipeLine, recipes = [sauce]) =>
    aFile([of([line])], [tomato, salt], { recipes });

  it.each([
    [
      '150 g of the finished one',
      { planned: { lowMg: 150_000, valueMg: 150_000, highMg: 150_000 } },
    ],
    ['one of its portions', { quantity: one, unit: 'portion', measureName: 'ladle' }],
    [
      'a quarter batch',
      { quantity: { low: { num: 1, den: 4 }, high: { num: 1, den: 4 } }, unit: 'batch' },
    ],
  ] as const)('holds %s', (_, amount) => {
    expect(figure(fileOf(made('l', 'sauce', 'sauce', amount)), 'energyKcal').value).toBeCloseTo(
      144 / 4,
      9,
    );
  });

  it('keeps the sources of what it is made from: nested equals flattened', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 8 }), fc.integer({ min: 1, max: 900 }), (num, g) => {
        const share = { num, den: 8 };
        const inner = aRecipe('inner', [grams('t', 'tomato', g), grams('s', 'salt', 3)]);
        const middle = aRecipe('middle', [
          made('m', 'inner', 'inner', { quantity: one, unit: 'batch' }),
        ]);
        const line = made('l', 'middle', 'middle', {
          quantity: { low: share, high: share },
          unit: 'batch',
        });
        const nested = fileOf(line, [inner, middle]);
        const flat = aFile([{ ...aDish('d', inner), eaten: share }], [tomato, salt]);
        for (const nutrient of ['energyKcal', 'sodium'] as const) {
          const a = figure(nested, nutrient);
          const b = episodeFigures(flat, [nutrient]).dishes[0]?.eaten[nutrient];
          expect(a.value).toBeCloseTo(b?.value ?? NaN, 6);
          expect(a.low).toBeCloseTo(b?.low ?? NaN, 6);
          expect(a.likelyHigh).toBeCloseTo(b?.likelyHigh ?? NaN, 6);
          expect(a.sources).toEqual(b?.sources);
        }
      }),
    );
  });

  it('is open by weight while it has no finished weight, and says so', () => {
    const unweighed = { ...sauce, weighings: [] };
    const line = made('l', '150 g sauce', 'sauce', {
      planned: { lowMg: 150_000, valueMg: 150_000, highMg: 150_000 },
    });
    expect(figure(fileOf(line, [unweighed]), 'energyKcal')).toMatchObject({
      low: null,
      high: null,
      missing: [{ text: '150 g sauce', reason: 'noDivisor' }],
    });
  });

  it('is open where it is made from itself, and the ring has names', () => {
    const a = aRecipe('a', [made('x', 'b', 'b', { quantity: one, unit: 'batch' })]);
    const b = aRecipe('b', [made('y', 'a', 'a', { quantity: one, unit: 'batch' })]);
    const file = fileOf(made('l', 'a', 'a', { quantity: one, unit: 'batch' }), [a, b]);
    expect(figure(file, 'energyKcal').missing).toEqual([
      { lineId: 'y', text: 'a', reason: 'cycle' },
    ]);
    expect(recipeRing([a, b])).toEqual(['a', 'b', 'a']);
    expect(recipeRing([a, { ...b, lines: [] }])).toBeNull();
    expect(recipeRing([a, { ...b, lines: [] }], { in: 'b', from: 'a' })).toEqual(['b', 'a', 'b']);
  });
});

describe('per 100 g by a cited change of weight', () => {
  // Ratios take each source at the end its sign points to (JCGM 100:2008, 5.1, for the slopes; from memory):
  // 100 g of a food at 400 and 100 g at 20 kcal per 100 g are 210 kcal per 100 g, and lie between 208 and 212.
  const dense = aFood('dense', { energyKcal: '400' });
  const light = aFood('light', { energyKcal: '20' });
  const cooking = {
    moisturePermille: 0,
    fatPermille: 0,
    spreadPermille: 0,
    source: 'nothing is lost in a bowl',
  };

  it('has exact extremes: an amount above and below the line is one error', () => {
    const recipe = aRecipe('r', [grams('a', 'dense', 100), grams('b', 'light', 100)], { cooking });
    const file = aFile([aDish('d', recipe)], [dense, light]);
    const per100g = episodeFigures(file, ['energyKcal']).dishes[0]?.per100g?.energyKcal;
    const ratio = (a: number, ca: number, b: number, cb: number) => (a * ca + b * cb) / (a + b);
    expect(per100g?.value).toBeCloseTo(210, 9);
    expect(per100g?.low).toBeCloseTo(ratio(99.5, 399.5, 100.5, 19.5), 6);
    expect(per100g?.high).toBeCloseTo(ratio(100.5, 400.5, 99.5, 20.5), 6);
  });

  it('takes the fat that is lost from fat and energy, and its weight from the dish', () => {
    const fatty = aFood('fatty', { energyKcal: '250', fat: '20.00', protein: '17.00' });
    const lost = { ...cooking, moisturePermille: -200, fatPermille: -100, source: 'a table' };
    const recipe = aRecipe('r', [grams('a', 'fatty', 500)], { cooking: lost });
    const figures = episodeFigures(aFile([aDish('d', recipe)], [fatty]), [
      'fat',
      'energyKcal',
      'protein',
    ]).dishes[0];
    expect(figures?.finishedMg?.value).toBeCloseTo(350_000, 6);
    expect(figures?.whole.fat?.value).toBeCloseTo(50, 9);
    expect(figures?.whole.energyKcal?.value).toBeCloseTo(1250 - 450, 9);
    expect(figures?.per100g?.protein?.value).toBeCloseTo(85 / 3.5, 9);
  });
});

describe('parts of a dish', () => {
  const oats = aFood('oats', { energyKcal: '400' });
  const dishOf = (ate: ReturnType<typeof aDish>['ate'], finished = true) =>
    aDish(
      'd',
      aRecipe('r', [grams('a', 'oats', 200)], {
        weighings: finished ? [aReading('w', 'finished', 500)] : [],
        portions: [
          { id: 'p', kind: 'byEye', name: 'mine', share: { num: 1, den: 2 }, permille: 100 },
        ],
      }),
      { ate, eaten: { num: 1, den: 2 } },
    );
  const first = (dish: ReturnType<typeof aDish>) =>
    episodeFigures(aFile([dish], [oats]), ['energyKcal']).dishes[0];

  it('by eye have their spread, exact shares none', () => {
    const portion = first(dishOf({ kind: 'share' }))?.portions[0]?.figures.energyKcal;
    expect(portion?.value).toBeCloseTo(400, 9);
    expect(portion?.low).toBeCloseTo(0.45 * 1.995 * 399.5, 6);
    const eaten = first(dishOf({ kind: 'share' }))?.eaten.energyKcal;
    expect(eaten?.low).toBeCloseTo(0.5 * 1.995 * 399.5, 6);
    const byEye = first(dishOf({ kind: 'byEye', permille: 200 }))?.eaten.energyKcal;
    expect(byEye?.low).toBeCloseTo(0.4 * 1.995 * 399.5, 6);
  });

  it('by weight divide by the finished weight, and are open without one', () => {
    const mass = { kind: 'mass', lowMg: 199_000, valueMg: 200_000, highMg: 201_000 } as const;
    const eaten = first(dishOf(mass))?.eaten.energyKcal;
    expect(eaten?.value).toBeCloseTo(320, 9);
    expect(eaten?.low).toBeCloseTo((1.995 * 399.5 * 199) / 500.5, 6);
    expect(first(dishOf(mass, false))?.eaten.energyKcal).toMatchObject({
      low: null,
      missing: [{ reason: 'noDivisor' }],
    });
  });
});

describe('a missing value that the person has bounded', () => {
  const paprika = aFood('paprika', { energyKcal: '282', fibre: '' });

  it('lies between nothing and the most that so much can hold', () => {
    const bounded = [{ nutrient: 'fibre', maxPer100: 50 } as const];
    const file = aFile([of([grams('p', 'paprika', 2, { bounded })])], [paprika]);
    const fibre = figure(file, 'fibre');
    expect(fibre).toMatchObject({ missing: [] });
    expect(fibre.low).toBeCloseTo(0, 9);
    expect(fibre.high).toBeCloseTo(2.5 * 0.5, 6);
  });

  it('is at least as before where nobody has', () => {
    const file = aFile([of([grams('p', 'paprika', 2)])], [paprika]);
    expect(figure(file, 'fibre')).toMatchObject({ high: null, missing: [{ reason: 'noValue' }] });
  });
});
