import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import type { Food } from '#lib/foods/food';
import type { Nutrient } from '#lib/foods/nutrients';
import { trueAmounts } from './true-amount';
import { drawing } from './true-draw';
import { trueRange } from './true-range';

/**
 * One kitchen as it may really have been behind what an episode file states: each uncertain thing is drawn once,
 * uniformly between its ends, and everything that rests on it sees the same truth. Plain arithmetic in grams,
 * written a second time: nothing of how figures are bounded is used here.
 */
export interface TrueKitchen {
  /** Of the whole dish, in the nutrient's unit. */
  readonly whole: (segmentId: string, nutrient: Nutrient) => number;
  readonly per100g: (segmentId: string, nutrient: Nutrient) => number;
  readonly portion: (segmentId: string, portionId: string, nutrient: Nutrient) => number;
  readonly day: (nutrient: Nutrient) => number;
}

/** kJ a gram: Regulation (EU) 1169/2011, Annex XIV. */
const KJ = { protein: 17, fat: 37, carbohydrate: 17, fibre: 8 } as const;
/** kcal in a gram of fat that runs out: USDA Agriculture Handbook 74, milk to meat. */
const FAT_KCAL = [8.79, 9.02] as const;

/** Percent kept: USDA Table of Nutrient Retention Factors, Release 6 (2007), read in a copy; printed in steps of 5. */
const KEPT: Readonly<Record<string, Partial<Record<Nutrient, number>>>> = {
  '151': {
    calcium: 95,
    iron: 100,
    potassium: 90,
    vitaminC: 80,
    thiamin: 80,
    vitaminB6: 95,
    folate: 60,
  },
  '431': {
    calcium: 95,
    iron: 90,
    potassium: 85,
    vitaminC: 75,
    thiamin: 75,
    vitaminB6: 90,
    folate: 60,
  },
};

export function trueKitchen(file: EpisodeFile, random: () => number): TrueKitchen {
  const chance = drawing(random);
  const { draw, once } = chance;
  const amounts = trueAmounts(file, chance);
  const foods = new Map(file.foods.map((food) => [food.id, food]));
  const recipes = [
    ...file.recipes,
    ...file.episode.segments.flatMap(({ recipe }) => (recipe ? [recipe] : [])),
  ];

  /** What the food's source states it for: 100 g, or a serving. */
  function timesBasis(line: RecipeLine, food: Food, recipe: Recipe): number {
    if (food.version.basis === 'per100g') return amounts.eaten(line, food, recipe) / 100;
    if (line.unit === 'serving' && !line.planned) return amounts.count(line);
    return amounts.eaten(line, food, recipe) / amounts.serving(food);
  }

  function perBasis(food: Food, nutrient: Nutrient): number {
    const { values, rule, id } = food.version;
    const [low, high] = trueRange(rule, nutrient, values[nutrient] ?? { kind: 'missing' });
    return draw(`food ${id} ${nutrient}`, low, high);
  }

  function ofFood(food: Food, nutrient: Nutrient): number {
    if (nutrient === 'carbohydrate') {
      return carbohydrate(food, file.episode.region === 'US' ? 'total' : 'available');
    }
    if (nutrient !== 'energyKj' || food.version.values.energyKj) return perBasis(food, nutrient);
    return (
      KJ.protein * perBasis(food, 'protein') +
      KJ.fat * perBasis(food, 'fat') +
      KJ.carbohydrate * carbohydrate(food, 'available') +
      KJ.fibre * perBasis(food, 'fibre')
    );
  }

  function carbohydrate(food: Food, wanted: 'total' | 'available'): number {
    const said = perBasis(food, 'carbohydrate');
    if (food.version.carbBasis === wanted) return said;
    const fibre = perBasis(food, 'fibre');
    return wanted === 'total' ? said + fibre : said - fibre;
  }

  /** The share of a nutrient that cooking leaves, by half a step of the table to either side. */
  function kept({ retention }: RecipeLine, nutrient: Nutrient): number {
    const percent = retention === null ? undefined : KEPT[retention]?.[nutrient];
    if (percent === undefined) return 1;
    const [low, high] = [percent - 2.5, Math.min(100, percent + 2.5)];
    return draw(`kept ${retention} ${nutrient}`, low, high) / 100;
  }

  /** What so many grams of fat that ran out took with them. */
  function inFat(g: number, nutrient: Nutrient): number {
    if (nutrient === 'fat') return g;
    if (nutrient === 'energyKcal') return g * draw('kcal of fat', ...FAT_KCAL);
    return nutrient === 'energyKj' ? g * KJ.fat : 0;
  }

  function ofLine(line: RecipeLine, recipe: Recipe, nutrient: Nutrient): number {
    if (line.madeFrom) return batches(line, recipe) * ofRecipe(nested(line), nutrient);
    const food = foods.get(line.foodId ?? '');
    if (!food) throw new Error(`${line.text} has no food`);
    const times = once(`times ${recipe.id} ${line.id}`, () => timesBasis(line, food, recipe));
    const all = times * ofFood(food, nutrient) * kept(line, nutrient);
    const { leftBehind } = line;
    if (leftBehind.kind === 'none' || leftBehind.made !== 'fat') return all;
    return all - inFat(amounts.left(line, recipe), nutrient);
  }

  function ofRecipe(recipe: Recipe, nutrient: Nutrient): number {
    return once(`total ${recipe.id} ${nutrient}`, () => {
      const sum = recipe.lines.reduce((all, line) => all + ofLine(line, recipe, nutrient), 0);
      const change = recipe.cooking?.fatPermille ?? 0;
      if (change === 0) return sum;
      // Changes of fat are published in whole percent.
      const share = draw(
        `fat ${recipe.id}`,
        Math.abs(change) / 10 - 0.5,
        Math.abs(change) / 10 + 0.5,
      );
      return sum + Math.sign(change) * inFat((raw(recipe) * share) / 100, nutrient);
    });
  }

  function nested(line: RecipeLine): Recipe {
    const found = recipes.find(({ id }) => id === line.madeFrom?.recipeId);
    if (!found) throw new Error(`${line.text} is made from a recipe`);
    return found;
  }

  /** How many times the whole recipe an ingredient takes that is made from one. */
  function batches(line: RecipeLine, recipe: Recipe): number {
    const from = nested(line);
    if (line.planned || amounts.read(line, recipe, 'raw') !== null) {
      return gramsOfNested(line, recipe) / finished(from);
    }
    if (line.unit === 'batch') return amounts.count(line);
    const portion = from.portions.find(({ name }) => name === line.measureName);
    if (!portion) throw new Error(`${line.text} takes a portion`);
    return amounts.count(line) * shareOf(portion, from);
  }

  function gramsOfNested(line: RecipeLine, recipe: Recipe): number {
    const weighed = amounts.read(line, recipe, 'raw');
    if (weighed !== null) return weighed;
    const half = (file.kitchen.scales[0]?.resolutionMg ?? 1000) / 2000;
    const g = (line.planned?.valueMg ?? NaN) / 1000;
    return draw(`grams ${line.id}`, g - half, g + half);
  }

  function shareOf(portion: Recipe['portions'][number], recipe: Recipe): number {
    if (portion.kind === 'count') return 1 / portion.of;
    if (portion.kind === 'mass') return portion.massMg / 1000 / finished(recipe);
    return byEye(`portion ${portion.id}`, portion.share, portion.permille);
  }

  function byEye(what: string, { num, den }: { num: number; den: number }, permille: number) {
    const spread = permille / 1000;
    return (num / den) * draw(what, 1 - spread, 1 + spread);
  }

  /** All that goes in. */
  function raw(recipe: Recipe): number {
    return recipe.lines.reduce((sum, line) => {
      const food = foods.get(line.foodId ?? '');
      if (food) return sum + amounts.eaten(line, food, recipe);
      return sum + batches(line, recipe) * finished(nested(line));
    }, 0);
  }

  function finished(recipe: Recipe): number {
    const [last] = recipe.weighings.filter(({ kind }) => kind === 'finished').slice(-1);
    if (last) return amounts.net(last, recipe);
    const { cooking } = recipe;
    if (!cooking) throw new Error(`${recipe.title} was not weighed`);
    const left = 1000 + cooking.moisturePermille + cooking.fatPermille;
    const { spreadPermille } = cooking;
    const share = draw(`cooking ${recipe.id}`, left - spreadPermille, left + spreadPermille) / 1000;
    return raw(recipe) * share;
  }

  function segment(segmentId: string) {
    const found = file.episode.segments.find(({ id }) => id === segmentId);
    if (!found?.recipe) throw new Error(`${segmentId} is a dish`);
    return { ...found, recipe: found.recipe };
  }

  return {
    whole: (segmentId, nutrient) => ofRecipe(segment(segmentId).recipe, nutrient),
    per100g: (segmentId, nutrient) => {
      const { recipe } = segment(segmentId);
      return (ofRecipe(recipe, nutrient) * 100) / finished(recipe);
    },
    portion: (segmentId, portionId, nutrient) => {
      const { recipe } = segment(segmentId);
      const portion = recipe.portions.find(({ id }) => id === portionId);
      if (!portion) throw new Error(`${portionId} is a portion`);
      return ofRecipe(recipe, nutrient) * shareOf(portion, recipe);
    },
    day: (nutrient) =>
      file.episode.segments.reduce((sum, { id, recipe, eaten, ate }) => {
        if (!recipe) return sum;
        const all = ofRecipe(recipe, nutrient);
        if (ate.kind === 'share') return sum + (all * eaten.num) / eaten.den;
        if (ate.kind === 'byEye') return sum + all * byEye(`ate ${id}`, eaten, ate.permille);
        return sum + (all * draw(`ate ${id}`, ate.lowMg, ate.highMg)) / 1000 / finished(recipe);
      }, 0),
  };
}
