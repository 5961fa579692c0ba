import { describe, expect, it } from 'vitest';
import { episodeFigures } from '#lib/figures/episode-figures';
import type { Nutrient } from '#lib/foods/nutrients';
import { loadSr28 } from '#seed/load-sr28';
import { aDish, aFile, aReading, aRecipe, grams } from '../support/build';

const byNumber = new Map(loadSr28().map((food) => [food.version.sourceNo, food]));

function food(number: string) {
  const found = byNumber.get(number);
  if (!found) throw new Error(`SR28 has ${number}`);
  return found;
}

/** Per 100 g of foods of SR28 mixed by weight, nothing lost. */
function mixed(parts: readonly (readonly [string, number])[], nutrient: Nutrient) {
  const total = parts.reduce((sum, [, g]) => sum + g, 0);
  const lines = parts.map(([number, g]) => grams(number, food(number).id, g));
  const recipe = aRecipe('r', lines, { weighings: [aReading('all', 'finished', total)] });
  const foods = parts.map(([number]) => food(number));
  const file = aFile([aDish('d', recipe)], foods, { resolutionMg: 1 });
  const figure = episodeFigures(file, [nutrient]).dishes[0]?.per100g?.[nutrient];
  if (!figure) throw new Error(`per 100 g of ${nutrient}`);
  return figure;
}

// FNDDS 2021-2023, FDC 2705384 "Milk, NFS": 40 g whole, 38 g of 2 %, 14 g of 1 %, 8 g skim.
// Its published protein (3.33) and sodium (42) rest on newer analyses of milk than SR28, so they are no check here.
describe('milk, not further specified (FNDDS)', () => {
  const milk = [
    ['01077', 40],
    ['01079', 38],
    ['01082', 14],
    ['01085', 8],
  ] as const;

  it('has the 52 kcal that are published: 24.4 + 19.0 + 5.88 + 2.72 = 52.0 by the energies of SR28', () => {
    const energies = milk.map(([number]) => mixed([[number, 100]], 'energyKcal').value);
    expect(energies.map((each) => Math.round(each * 1e6) / 1e6)).toEqual([61, 50, 42, 34]);
    expect(mixed(milk, 'energyKcal').value).toBeCloseTo(52, 9);
  });

  it('has carbohydrate 4.83 as published, inside what the digits allow', () => {
    const { value, low, high } = mixed(milk, 'carbohydrate');
    expect(Math.abs(value - 4.83)).toBeLessThanOrEqual(0.05);
    expect(low).toBeLessThanOrEqual(4.835);
    expect(high).toBeGreaterThanOrEqual(4.825);
  });
});

// USDA SR28, footnote of 11657 "Potatoes, mashed, home-prepared, whole milk added": potatoes 84 %, whole milk 15 %,
// salt 1 %. Expected values are derived from the footnote and the parts (11367, 01077, 02047).
describe('mashed potatoes by their footnote (SR28 11657)', () => {
  const parts = [
    ['11367', 84],
    ['01077', 15],
    ['02047', 1],
  ] as const;

  it.each<[Nutrient, number, number]>([
    ['energyKcal', 81.4, 0.05],
    ['protein', 1.91, 0.005],
    ['fat', 0.57, 0.005],
    ['carbohydrate', 17.53, 0.005],
    ['fibre', 1.51, 0.005],
    ['sugars', 1.51, 0.005],
    ['calcium', 23.9, 0.05],
    ['potassium', 295.4, 0.05],
    ['vitaminC', 6.22, 0.005],
    ['water', 78.29, 0.005],
    ['sodium', 398, 0.5],
  ])('%s %d', (nutrient, expected, tolerance) => {
    const { value } = mixed(parts, nutrient);
    expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance + 1e-9);
  });

  // The shares of the footnote are whole percents: potatoes 83.5 to 84.5, milk 14.5 to 15.5, and the salt is known
  // to be 0.76 %, which the footnote rounds. So the table's own values are near, and sodium is not.
  it.each<[Nutrient, number]>([
    ['energyKcal', 83],
    ['protein', 1.91],
    ['fat', 0.57],
    ['carbohydrate', 17.57],
    ['calcium', 24],
    ['potassium', 296],
    ['vitaminC', 6.2],
    ['water', 78.48],
  ])('%s is within 2 %% of the %d that the table states for the dish', (nutrient, published) => {
    expect(mixed([['11657', 100]], nutrient).value).toBeCloseTo(published, 9);
    expect(Math.abs(mixed(parts, nutrient).value / published - 1)).toBeLessThan(0.02);
  });

  it('the salt of the footnote is rounded: 302 mg sodium are stated, which 0.76 % gives', () => {
    expect(mixed([['11657', 100]], 'sodium').value).toBe(302);
    const salted = [...parts.slice(0, 2), ['02047', 0.76]] as const;
    expect(Math.abs(mixed(salted, 'sodium').value - 302)).toBeLessThan(5);
  });
});
