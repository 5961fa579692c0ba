import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import type { Food } from '#lib/foods/food';
import { aDish, aFile, aFood, aLine, aRecipe, grams } from '../support/build';

/** Half of the scale's resolution divides by 2 three times and stays whole milligrams. */
const RESOLUTION = 16_000;

interface Own {
  readonly kind: 'food';
  readonly food: number;
  readonly sixteens: number;
}
interface Taken {
  readonly kind: 'recipe';
  readonly halves: number;
  readonly which: number;
}

/**
 * A few recipes, each of foods and of recipes that stand before it, any of them taken more than once; the last one
 * is the dish.
 */
const kitchen = fc.record({
  foods: fc.array(fc.tuple(fc.integer({ min: 1, max: 9000 }), fc.integer({ min: 10, max: 900 })), {
    minLength: 1,
    maxLength: 3,
  }),
  recipes: fc.array(
    fc.array(
      fc.oneof(
        fc.record({
          kind: fc.constant('food' as const),
          food: fc.nat(2),
          sixteens: fc.integer({ min: 1, max: 20 }),
        }),
        fc.record({
          kind: fc.constant('recipe' as const),
          halves: fc.integer({ min: 1, max: 5 }),
          which: fc.nat(3),
        }),
      ),
      { minLength: 1, maxLength: 4 },
    ),
    { minLength: 2, maxLength: 4 },
  ),
});

const nth = <T>(items: readonly T[], n: number): T => {
  const item = items[n % items.length];
  if (item === undefined) throw new Error('none to take');
  return item;
};

function nestedFile(
  recipes: readonly (readonly (Own | Taken)[])[],
  foods: readonly Food[],
): EpisodeFile {
  const made = recipes.map((parts, r): Recipe => {
    const lines = parts.map((part, n): RecipeLine => {
      // The first recipe has none before it.
      if (part.kind === 'food' || r === 0) {
        const g = 16 * (part.kind === 'food' ? part.sixteens : part.halves);
        return grams(`r${r}l${n}`, nth(foods, part.kind === 'food' ? part.food : 0).id, g);
      }
      const quantity = { num: part.halves, den: 2 };
      return aLine(`r${r}l${n}`, null, {
        madeFrom: { recipeId: `r${part.which % r}`, rev: 1 },
        quantity: { low: quantity, high: quantity },
        unit: 'batch',
      });
    });
    return aRecipe(`r${r}`, lines);
  });
  const dish = nth(made, made.length - 1);
  const file = aFile([aDish('d', dish)], [...foods], { resolutionMg: RESOLUTION });
  return { ...file, recipes: made.slice(0, -1) };
}

/** The same dish with every ingredient of a food written out once, by how many times it is taken in all. */
function flattened(file: EpisodeFile): EpisodeFile {
  const [segment] = file.episode.segments;
  const dish = segment?.recipe;
  if (!dish) throw new Error('a dish');
  const taken = new Map<RecipeLine, number>();
  const walk = (recipe: Recipe, times: number) => {
    for (const line of recipe.lines) {
      const nested = file.recipes.find(({ id }) => id === line.madeFrom?.recipeId);
      const { num, den } = line.quantity?.low ?? { num: 1, den: 1 };
      if (nested) walk(nested, (times * num) / den);
      else taken.set(line, (taken.get(line) ?? 0) + times);
    }
  };
  walk(dish, 1);
  const lines = [...taken].map(([line, times]) => {
    const mg = line.planned?.valueMg ?? NaN;
    const half = RESOLUTION / 2;
    return {
      ...line,
      planned: { lowMg: (mg - half) * times, valueMg: mg * times, highMg: (mg + half) * times },
    };
  });
  return {
    ...file,
    recipes: [],
    episode: { ...file.episode, segments: [aDish('d', aRecipe('flat', lines))] },
  };
}

describe('a recipe in a recipe', () => {
  it('equals its ingredients written out, bounds and all: nested recipes carry sources, not intervals', () => {
    fc.assert(
      fc.property(kitchen, ({ foods: made, recipes }) => {
        const foods = made.map(([protein, energy], n) =>
          aFood(`f${n}`, { protein: (protein / 100).toFixed(2), energyKcal: String(energy) }),
        );
        const file = nestedFile(recipes, foods);
        const of = (each: EpisodeFile) =>
          episodeFigures(each, ['protein', 'energyKcal']).dishes[0]?.whole;
        const [nested, flat] = [of(file), of(flattened(file))];
        for (const nutrient of ['protein', 'energyKcal'] as const) {
          for (const end of ['value', 'low', 'high', 'likelyLow', 'likelyHigh'] as const) {
            const [a, b] = [nested?.[nutrient]?.[end] ?? NaN, flat?.[nutrient]?.[end] ?? NaN];
            expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-9 * Math.max(1, b));
          }
        }
      }),
      { numRuns: 300 },
    );
  });
});
