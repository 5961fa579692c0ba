import { describe, expect, it } from 'vitest';
import { episodeFileText, parseEpisodeFile } from '#lib/episode/file';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import type { Nutrient } from '#lib/foods/nutrients';
import { aDish, aFile, aFood, aLine, aRecipe } from '../support/build';
import { printPanel } from '../support/print-panel';
import { trueRange } from '../support/true-range';
import { uniform, whole } from '../support/uniform';
import * as kitchens from './simulation-kitchens';
import { COOKING_CASES } from './simulation-cooking';
import { coverage, type Coverage, type Instead } from './simulation-measure';

/**
 * The bounds against simulated truth. Of each kind of kitchen so many files are made, and so many true kitchens are
 * drawn behind each, every uncertain thing uniform between its ends (JCGM 100:2008, 4.3.7 [from memory]: rectangular
 * errors) and their totals worked out by plain arithmetic. Seeds are fixed, so the coverage in the names is the same
 * every time.
 */
const FILES = 8;
const KITCHENS = 1000;
const SEED = 20_261_125;

const two: readonly Nutrient[] = ['energyKcal', 'protein'];
const CASES: readonly [string, kitchens.MakeKitchen, readonly Nutrient[]][] = [
  ['plain lines, per 100 g and portions', kitchens.plainLines, ['energyKcal', 'protein', 'fat']],
  ['one label in six lines', kitchens.sixLinesOfOneLabel, two],
  ['one reading shared by two lines and one by three', kitchens.sharedReadings, two],
  ['labels turned round by rule', kitchens.labelsByRule, [...two, 'fat', 'sodium']],
  ['yields, both ways', kitchens.throughYields, two],
  ['scales that are off', kitchens.scalesOff, two],
  ['measures by eye, peel, pan', kitchens.byEye, two],
  ['carbohydrate of two kinds, kJ', kitchens.carbohydrateOfTwoKinds, ['carbohydrate', 'energyKj']],
  ['a day of two dishes', kitchens.dayOfTwoDishes, two],
  ...COOKING_CASES,
];

function files(make: kitchens.MakeKitchen): EpisodeFile[] {
  const random = uniform(SEED);
  return Array.from({ length: FILES }, () => {
    const parsed = parseEpisodeFile(episodeFileText(make(random)));
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
    return parsed.value;
  });
}

const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
const measured = CASES.map(([name, make, nutrients]): [string, string, Coverage] => {
  const found = coverage(files(make), nutrients, KITCHENS, SEED);
  const worst = `${percent(found.likely)} (worst figure ${percent(found.worst)})`;
  return [name, `${found.truths} truths, likely ${worst}`, found];
});

describe('the truth lies inside the hard bound always, inside the likely bound 95 times in 100', () => {
  it.each(measured)('%s: %s', (_name, _words, found) => {
    expect(found.truths).toBeGreaterThan(40_000);
    expect(found.hard).toBe(1);
    expect(found.likely).toBeGreaterThanOrEqual(0.95);
    // A figure alone: of a thousand draws three standard errors are two points.
    expect(found.worst).toBeGreaterThanOrEqual(0.93);
    // The hard bound is no wider than it need be: some figure was seen over most of it.
    expect(found.reached).toBeGreaterThan(0.6);
  });
});

/**
 * What somebody might take who treats each use of a value as an error of its own: the half-widths of all products in
 * all lines, as if none was shared, added as squares, times so many.
 */
function apart(factor: number): Instead {
  return ({ episode, foods }, nutrient) => {
    let [centre, squares] = [0, 0];
    for (const { foodId, planned } of episode.segments[0]?.recipe?.lines ?? []) {
      const { version } = foods.find(({ id }) => id === foodId) ?? {};
      const cell = version?.values[nutrient];
      if (!version || !cell || !planned) throw new Error('grams of a food per 100 g');
      const [low, high] = trueRange(version.rule, nutrient, cell);
      const g = planned.valueMg / 1000;
      const middle = (low + high) / 2;
      centre += (g * middle) / 100;
      squares += ((g * (high - low)) / 200) ** 2 + ((0.5 * middle) / 100) ** 2;
    }
    const half = factor * Math.sqrt(squares);
    return [centre - half, centre + half];
  };
}

// What the likely bound is held against: so the check above could fail, and does for these.
describe('bounds that are taken otherwise do not hold', () => {
  const of = (make: kitchens.MakeKitchen, factor: number) =>
    coverage(files(make), ['protein'], KITCHENS, SEED, apart(factor));
  const plain = of(kitchens.plainLines, 1);
  const six = of(kitchens.sixLinesOfOneLabel, 1);
  // Twice the standard deviation of rectangular errors, 1/√3 of their half-width each.
  const sixWide = of(kitchens.sixLinesOfOneLabel, 2 / Math.sqrt(3));

  it(`half-widths added as squares hold ${percent(plain.instead ?? 0)} of plain dishes, not 95 %`, () => {
    expect(plain.hard).toBe(1);
    expect(plain.instead).toBeLessThan(0.93);
    expect(plain.likely).toBeGreaterThanOrEqual(0.95);
  });

  it(`six lines of one label taken apart: ${percent(six.instead ?? 0)}, widened to twice the standard deviation ${percent(sixWide.instead ?? 0)}; taken as one error ${percent(six.likely)}`, () => {
    expect(six.instead).toBeLessThan(0.55);
    expect(sixWide.instead).toBeLessThan(0.65);
    expect(six.likely).toBeGreaterThanOrEqual(0.95);
  });
});

// The other way round: true foods first, their panels printed by the rule, and the dish made from the panels.
describe('true foods behind panels that were printed by the rule', () => {
  const NUTRIENTS = ['energyKcal', 'fat', 'protein', 'sodium'] as const;
  const DISHES = 2500;

  function dish(rule: 'us' | 'eu', random: () => number) {
    const truth = Array.from({ length: 3 }, () => ({
      energyKcal: random() * 200,
      fat: random() * 15,
      protein: random() * 25,
      sodium: random() * 300,
    }));
    const foods = truth.map((amounts, n) =>
      aFood(
        `label${n}`,
        Object.fromEntries(
          NUTRIENTS.map((each) => [each, printPanel(rule, each, amounts[each], random)]),
        ),
        { kind: 'label' },
        { rule, basis: 'serving' },
      ),
    );
    const servings = foods.map(() => whole(random, 1, 4));
    const lines = foods.map(({ id }, n) => {
      const quantity = { num: servings[n] ?? 1, den: 2 };
      return aLine(`l${n}`, id, { quantity: { low: quantity, high: quantity }, unit: 'serving' });
    });
    const serving = { massMg: null, volumeMl: null, decimals: 0, text: 'piece', perPack: null };
    const file = aFile(
      [aDish('d', aRecipe('r', lines))],
      foods.map((food) => ({ ...food, version: { ...food.version, serving } })),
    );
    const total = (each: (typeof NUTRIENTS)[number]) =>
      truth.reduce((sum, amounts, n) => sum + (amounts[each] * (servings[n] ?? 1)) / 2, 0);
    return { figures: episodeFigures(file, NUTRIENTS).dishes[0]?.whole, total };
  }

  const counted = (['us', 'eu'] as const).map((rule): [string, number, number] => {
    const random = uniform(SEED);
    let [hard, likely] = [0, 0];
    for (let n = 0; n < DISHES; n += 1) {
      const { figures, total } = dish(rule, random);
      for (const nutrient of NUTRIENTS) {
        const { low, high, likelyLow, likelyHigh } = figures?.[nutrient] ?? {};
        const value = total(nutrient);
        if (value >= (low ?? Infinity) && value <= (high ?? -Infinity)) hard += 1;
        if (value >= (likelyLow ?? Infinity) && value <= (likelyHigh ?? -Infinity)) likely += 1;
      }
    }
    const all = DISHES * NUTRIENTS.length;
    return [`${rule.toUpperCase()}, likely ${percent(likely / all)}`, hard / all, likely / all];
  });

  it.each(counted)('%s', (_name, hard, likely) => {
    expect(hard).toBe(1);
    expect(likely).toBeGreaterThanOrEqual(0.95);
  });
});
