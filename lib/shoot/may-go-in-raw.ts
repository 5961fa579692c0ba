import type { DayFile } from '#lib/episode/also-filmed';
import { recipesOf } from '#lib/episode/context';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import type { Segment } from '#lib/episode/schema';
import type { Food } from '#lib/foods/food';
import { byStrictness, chartClasses } from '#lib/safety/food-class';
import { isMeatless } from '#lib/safety/food-words';
import type { FoodClass } from '#lib/safety/safe-temperatures';

/** The parts of a file in which a dish's ingredients are looked up. */
export type FoodsAndRecipes = Pick<DayFile, 'foods' | 'recipes' | 'episode'>;

/** An ingredient by its words and by what its foods and the dish that it is made from are called. */
export interface NamedIngredient {
  readonly text: string;
  readonly foods: readonly string[];
}

/** Ingredients of a dish that fall under one row of the safe-temperature chart. */
export interface MayGoInRaw {
  readonly foodClass: FoodClass;
  readonly ingredients: readonly NamedIngredient[];
}

/**
 * What may go into a dish raw, by rows of the published chart (`lib/safety/safe-temperatures.ts`), the strictest first:
 * by the words of each ingredient and the names of its food and of the other that it may be, through the dishes that
 * it is made from. A state says how something was weighed or sold, and only 'dry' that it never was raw. Steps that
 * reach an inside temperature name foods too, and the dish itself does where nothing else says what is in it.
 * @example mayGoInRaw(file, stew) // [{ foodClass: 'poultry', ingredients: [{ text: '500 g thighs', foods: [] }] }]
 */
export function mayGoInRaw(
  file: FoodsAndRecipes,
  { title, recipe, steps }: Pick<Segment, 'title' | 'recipe' | 'steps'>,
): MayGoInRaw[] {
  const foods = new Map(file.foods.map((food) => [food.id, food]));
  const recipes = new Map(recipesOf(file).map((each) => [each.id, each]));
  const found = new Map<FoodClass, NamedIngredient[]>();
  const add = (ingredient: NamedIngredient, classes: readonly FoodClass[]): void => {
    for (const each of classes) found.set(each, [...(found.get(each) ?? []), ingredient]);
  };

  const lineOf = (line: RecipeLine, above: readonly string[]): FoodClass[] => {
    const nested = line.madeFrom ? recipes.get(line.madeFrom.recipeId) : undefined;
    if (nested && !above.includes(nested.id)) return madeOf(line, nested, above);
    const own = [line.foodId, line.orFoodId].flatMap((id) => foods.get(id ?? '') ?? []);
    const classes = classesOf(line, own);
    add({ text: line.text, foods: own.map(({ name }) => name) }, classes);
    return classes;
  };
  // 'the meatballs' of a dish may be called so, or by what is in them.
  const madeOf = (line: RecipeLine, nested: Recipe, above: readonly string[]): FoodClass[] => {
    const within = nested.lines.flatMap((each) => lineOf(each, [...above, nested.id]));
    const classes = [...new Set(within)];
    add({ text: line.text, foods: [nested.title] }, classes);
    return classes;
  };

  if (recipe) for (const line of recipe.lines) lineOf(line, [recipe.id]);
  for (const step of steps) {
    if (step.coreMilliC === null) continue;
    add({ text: step.title, foods: [] }, chartClasses(step.title, 'asIs'));
  }
  if (found.size === 0) add({ text: title, foods: [] }, chartClasses(title, 'asIs'));
  return [...found]
    .map(([foodClass, ingredients]) => ({ foodClass, ingredients }))
    .sort((a, b) => byStrictness(a.foodClass, b.foodClass));
}

/** By the foods of an ingredient and by its words; a food that is confirmed to be meatless wins over these. */
function classesOf({ text, state, match }: RecipeLine, foods: readonly Food[]): FoodClass[] {
  const meatless = match === 'confirmed' && foods.some(({ name }) => isMeatless(name));
  const texts = [...foods.map(({ name }) => name), ...(meatless ? [] : [text])];
  return [...new Set(texts.flatMap((each) => chartClasses(each, state)))];
}
