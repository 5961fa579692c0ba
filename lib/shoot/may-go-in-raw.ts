import type { DayFile } from '#lib/episode/also-filmed';
import { recipesOf } from '#lib/episode/context';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import type { Segment } from '#lib/episode/schema';
import type { Food } from '#lib/foods/food';
import { byStrictness, chartClasses } from '#lib/safety/food-class';
import { isMeatless, withTins } from '#lib/safety/food-words';
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

/** An ingredient of a dish, and whether it may go in raw. */
export interface AnimalFood extends NamedIngredient {
  readonly id: string;
  /** False where it is cooked or eaten as it is bought; null where no row of the chart has such a food. */
  readonly raw: boolean | null;
}

interface FoundIngredient extends NamedIngredient {
  readonly id: string;
  readonly classes: readonly FoodClass[];
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
  const found = new Map<FoodClass, NamedIngredient[]>();
  const add = (ingredient: NamedIngredient, classes: readonly FoodClass[]): void => {
    for (const each of classes) found.set(each, [...(found.get(each) ?? []), ingredient]);
  };
  for (const { text, foods, classes } of ingredientsOf(file, recipe)) add({ text, foods }, classes);
  for (const step of steps) {
    if (step.coreMilliC === null) continue;
    add({ text: step.title, foods: [] }, chartClasses(step.title, 'asIs'));
  }
  if (found.size === 0) add({ text: title, foods: [] }, chartClasses(title, 'asIs'));
  return [...found]
    .map(([foodClass, ingredients]) => ({ foodClass, ingredients }))
    .sort((a, b) => byStrictness(a.foodClass, b.foodClass));
}

/**
 * The ingredients of a dish, each with whether it may go in raw, so that "the thighs" of its method are found to be
 * the chicken and "the tuna" to be out of a tin. Null where nobody has said what is in the dish.
 * @example animalFoods(file, recipe) // [{ id, text: '1 tinned tuna', foods: [], raw: false }]
 */
export function animalFoods(file: FoodsAndRecipes, recipe: Segment['recipe']): AnimalFood[] | null {
  if (!recipe || recipe.lines.length === 0) return null;
  return ingredientsOf(file, recipe).map(({ id, text, foods, classes }) => {
    const raw = classes.some((each) => each !== 'precookedHam');
    const known = raw || [text, ...foods].some((name) => chartClasses(name, 'raw').length > 0);
    return { id, text: withTins(text), foods, raw: known ? raw : null };
  });
}

/** Every ingredient by its words and foods, those of the dishes that it is made from before what is made of them. */
function ingredientsOf(file: FoodsAndRecipes, recipe: Segment['recipe']): FoundIngredient[] {
  const foods = new Map(file.foods.map((food) => [food.id, food]));
  const recipes = new Map(recipesOf(file).map((each) => [each.id, each]));
  const found: FoundIngredient[] = [];
  const lineOf = (line: RecipeLine, above: readonly string[]): readonly FoodClass[] => {
    const nested = line.madeFrom ? recipes.get(line.madeFrom.recipeId) : undefined;
    const isMade = nested !== undefined && !above.includes(nested.id);
    const own = [line.foodId, line.orFoodId].flatMap((id) => foods.get(id ?? '') ?? []);
    // 'the meatballs' of a dish may be called so, or by what is in them.
    const classes = isMade ? madeOf(nested, above) : classesOf(line, own);
    const names = isMade ? [nested.title] : own.map(({ name }) => name);
    found.push({ id: line.id, text: line.text, foods: names, classes });
    return classes;
  };
  const madeOf = (nested: Recipe, above: readonly string[]): FoodClass[] => [
    ...new Set(nested.lines.flatMap((each) => lineOf(each, [...above, nested.id]))),
  ];
  for (const line of recipe?.lines ?? []) lineOf(line, [recipe?.id ?? '']);
  return found;
}

/**
 * By the foods of an ingredient and by its words. A food that is confirmed to be meatless wins over these, and so does
 * one that is tinned, where its words leave open that it is.
 */
function classesOf({ text, state, match }: RecipeLine, foods: readonly Food[]): FoodClass[] {
  const names = foods.map(({ name }) => name);
  const sure = match === 'confirmed';
  const meatless = sure && names.some(isMeatless);
  const tinned = sure && names.length > 0 && names.every(isTinned) && !SAYS_RAW.test(text);
  const texts = [...names, ...(meatless || tinned ? [] : [text])];
  return [...new Set(texts.flatMap((each) => chartClasses(each, state)))];
}

const isTinned = (name: string): boolean => /\b(?:canned|tinned)\b/i.test(name);
const SAYS_RAW = /\b(?:raw|fresh|frozen|fillets?|steaks?|thighs?|breasts?|whole|mince|ground)\b/i;
