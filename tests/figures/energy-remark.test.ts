import { describe, expect, it } from 'vitest';
import { energyRemark } from '#lib/figures/energy-remark';
import { episodeFigures } from '#lib/figures/episode-figures';
import { publishedNumbers } from '#lib/figures/published-numbers';
import type { Food } from '#lib/foods/food';
import { loadSr28 } from '#seed/load-sr28';
import { aDish, aFile, aFood, aLine, aRecipe, grams } from '../support/build';

function remarkOf(foods: readonly (readonly [Food, number])[], region: 'US' | 'EU' = 'US') {
  const lines = foods.map(([food, g]) => grams(`${g} g ${food.name}`, food.id, g));
  const file = aFile(
    [aDish('d', aRecipe('r', lines))],
    foods.map(([food]) => food),
    {
      episode: { region },
      resolutionMg: 1,
    },
  );
  const figures = episodeFigures(file);
  return energyRemark(file, figures, publishedNumbers(file, figures), {
    kind: 'whole',
    segmentId: 'd',
  });
}
const food = (name: string, energyKcal: string, fibre = '0') =>
  aFood(
    'f',
    { energyKcal, protein: '10.00', fat: '10.00', carbohydrate: '10.00', fibre },
    { name },
  );
const sr28 = (number: string) => {
  const found = loadSr28().find(({ version }) => version.sourceNo === number);
  if (!found) throw new Error(`no ${number}`);
  return found;
};

// Factors 4, 4, 9: 21 CFR 101.9(c)(1)(i)(B). Slack of printed numbers: 8.5 kcal and half an energy step (derived).
describe('printed macros beside printed calories', () => {
  it('fit within 8.5 kcal and half a step, and no more', () => {
    // 10, 10 and 10 g make 170 kcal; the slack is 9.
    expect(remarkOf([[food('plain', '179'), 100]])).toBeNull();
    expect(remarkOf([[food('plain', '161'), 100]])).toBeNull();
    expect(remarkOf([[food('plain', '180'), 100]])).toMatchObject({ given: 170, printed: 180 });
    expect(remarkOf([[food('plain', '160'), 100]])).toMatchObject({ given: 170, printed: 160 });
  });

  it('are said in words, without a reason where none is known', () => {
    const remark = remarkOf([[food('plain', '200'), 100]]);
    expect(remark?.reason).toBeNull();
    expect(remark?.words).toBe(
      '10 g protein, 10 g fat and 10 g carbohydrate make 170 kcal by 4, 9 and 4 a gram; 200 is printed. ' +
        'No reason for it is known in d: look through what the labels say.',
    );
  });

  it('are said as they are printed', () => {
    const remark = remarkOf([[food('plain', '200'), 1000]]);
    expect(remark?.words).toContain('make 1700 kcal by 4, 9 and 4 a gram; 2000 is printed.');
  });

  it('differ by fibre: inside the carbohydrate in the US, beside it in the EU', () => {
    expect(remarkOf([[food('oats', '150', '6.0'), 100]])?.reason).toBe('fibre');
    expect(remarkOf([[food('oats', '150', '1.0'), 100]])?.reason).toBeNull();
    // In the EU 4 g of the 10 g are carbohydrate, which makes 146 kcal, and 6 g of fibre 12.
    expect(remarkOf([[food('oats', '158', '6.0'), 100]], 'EU')?.reason).toBe('fibre');
  });

  it('differ by alcohol, which is named by its ingredient', () => {
    const remark = remarkOf([[food('Red wine', '250'), 100]]);
    expect(remark?.reason).toBe('named');
    expect(remark?.words).toContain('Likely 100 g Red wine: alcohol gives 7 kcal a gram.');
    // Alcohol only adds.
    expect(remarkOf([[food('Red wine', '100'), 100]])?.reason).toBeNull();
  });

  it('differ by the table’s own factors: USDA SR28, mushrooms and butter', () => {
    // 22 kcal stated of 11260 where 4-4-9 makes 28.5, more than its fibre explains; 717 of 01145 where it makes 733.6.
    expect(remarkOf([[sr28('11260'), 1000]])?.reason).toBe('ownFactors');
    expect(remarkOf([[sr28('01145'), 250]])?.reason).toBe('ownFactors');
  });

  it('say nothing while a number is open', () => {
    const open = aFood('o', { energyKcal: '300', protein: '10.00', fat: '10.00' });
    expect(remarkOf([[open, 100]])).toBeNull();
  });

  it('are held to the step in which calories are written, and half of it more', () => {
    const off = (energyStep: 1 | 10, energyKcal: string) => {
      const file = aFile(
        [aDish('d', aRecipe('r', [grams('l', 'f', 100)]))],
        [food('plain', energyKcal)],
        { episode: { energyStep }, resolutionMg: 1 },
      );
      const figures = episodeFigures(file);
      const scope = { kind: 'whole', segmentId: 'd' } as const;
      return energyRemark(file, figures, publishedNumbers(file, figures), scope);
    };
    // 170 kcal are given; 8.5 and 0.5, or 8.5 and 5.
    expect(off(1, '180')).not.toBeNull();
    expect(off(10, '180')).toBeNull();
    expect(off(10, '186')).toMatchObject({ printed: 190 });
  });

  it('are held for the day as well, which may be off where no dish is', () => {
    const dish = (id: string) => aDish(id, aRecipe(`r-${id}`, [grams(`l-${id}`, 'f', 100)]));
    const file = aFile([dish('a'), dish('b')], [food('Red wine', '177')], { resolutionMg: 1 });
    const figures = episodeFigures(file);
    const numbers = publishedNumbers(file, figures);
    expect(energyRemark(file, figures, numbers, { kind: 'whole', segmentId: 'a' })).toBeNull();
    const day = energyRemark(file, figures, numbers, { kind: 'day' });
    expect(day).toMatchObject({ given: 340, printed: 354, reason: 'named' });
    expect(day?.words).toContain('Likely l-a, l-b: alcohol gives 7 kcal a gram.');
  });

  it('name what a recipe in the recipe holds', () => {
    const sauce = aRecipe('sauce', [grams('a glass of red wine', 'f', 100)]);
    const one = { num: 1, den: 1 };
    const line = aLine('the sauce', null, {
      madeFrom: { recipeId: 'sauce', rev: 1 },
      quantity: { low: one, high: one },
      unit: 'batch',
    });
    const file = aFile([aDish('d', aRecipe('r', [line]))], [food('Red wine', '250')], {
      recipes: [sauce],
      resolutionMg: 1,
    });
    const figures = episodeFigures(file);
    const scope = { kind: 'whole', segmentId: 'd' } as const;
    const remark = energyRemark(file, figures, publishedNumbers(file, figures), scope);
    expect(remark?.words).toContain('Likely the sauce: alcohol gives 7 kcal a gram.');
  });

  it('leave calories to themselves that were said and are outside their range', () => {
    const said = {
      id: 's',
      at: '2026-11-14T11:40:00Z',
      scope: { kind: 'whole', segmentId: 'a' },
      text: 'The whole dish has 300 calories.',
      numbers: [{ nutrient: 'energyKcal', amount: 300, hedge: 'exact', value: 300 }],
    } as const;
    const remarkOf = (lines: (typeof said)[]) => {
      const dish = aDish('a', aRecipe('r', [grams('l', 'f', 100)]));
      const file = aFile([dish], [food('Red wine', '250')], { said: lines });
      const numbers = publishedNumbers(file, episodeFigures(file));
      return energyRemark(file, episodeFigures(file), numbers, said.scope);
    };
    expect(remarkOf([])).not.toBeNull();
    expect(remarkOf([said])).toBeNull();
  });
});
