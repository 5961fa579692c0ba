import type { AmountContext, Dish } from '#lib/episode/context';
import { nestedRecipe } from '#lib/episode/made-from';
import { readIngredient } from '#lib/episode/read-ingredient';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import { animalFoodsIn, type AnimalFood } from '#lib/foods/animal-foods';
import { allergenStanding } from '#lib/foods/allergen-standing';
import type { Allergen, Food } from '#lib/foods/food';
import { proposeAllergens } from '#lib/foods/propose-allergens';

/** An ingredient of a dish or of what it is made from, with the foods that it is or may be. */
export interface HeldIngredient {
  /** In the dish itself. */
  readonly lineId: string;
  readonly text: string;
  readonly name: string;
  /** Of none it is not known what it is; of two nobody has said which. */
  readonly foods: readonly Food[];
  readonly confirmed: boolean;
}

/** What a dish may be held against: an allergen, or a food of animals. */
export type Held = Allergen | AnimalFood;

/**
 * How surely an ingredient has something: `has` by a label, the person or a food that they chose; `named` by its own
 * words and its food's, which nobody has confirmed; `may` by one of these, as a trace, or as one of two foods;
 * `unchecked` where nobody has said anything of it. `none` is no more than that nothing says that it has it.
 */
export type Holding = 'has' | 'named' | 'may' | 'unchecked' | 'none';

/** Recipes that ingredients are made from are looked into so deep. */
const DEEPEST = 4;

/** All ingredients of a dish, through the recipes that it is made from. */
export function heldIngredients({ recipe }: Dish, context: AmountContext): HeldIngredient[] {
  const of = (line: RecipeLine, lineId: string, depth: number): HeldIngredient[] => {
    const nested: Recipe | null = depth < DEEPEST ? nestedRecipe(line, context) : null;
    if (nested) return nested.lines.flatMap((each) => of(each, lineId, depth + 1));
    const foods = [line.foodId, line.orFoodId].flatMap((id) => context.foods.get(id ?? '') ?? []);
    const name = readIngredient(line.text)
      .map(({ food }) => food)
      .filter((food) => food !== '')
      .join(' and ');
    const { text, match } = line;
    return [{ lineId, text, name: name || text, foods, confirmed: match === 'confirmed' }];
  };
  return recipe.lines.flatMap((line) => of(line, line.id, 0));
}

/** 'gluten free oats': words of an ingredient by which a rule over names says nothing. */
const SAYS_FREE = /\b(?:free|vegan|plant[- ]based|non[- ]?dairy|eggless|tamari)\b/i;

/**
 * How an ingredient stands to what a dish is said to be free of.
 * @example holdingOf(walnuts, 'treeNuts') // 'named': its words and its food's say so, and nobody has confirmed it
 */
export function holdingOf({ text, foods, confirmed }: HeldIngredient, held: Held): Holding {
  const worded = !SAYS_FREE.test(text) && isInWords(text, held);
  if (foods.length === 0) return worded ? 'may' : 'unchecked';
  const each = foods.map((food) => ofFood(food, held));
  if (each.every((one) => one === 'has')) return confirmed ? 'has' : worded ? 'named' : 'may';
  if (each.every((one) => one === 'has' || one === 'named')) return worded ? 'named' : 'may';
  if (each.some((one) => one === 'has' || one === 'named' || one === 'may')) return 'may';
  return worded && !each.includes('denied')
    ? 'may'
    : each.includes('unchecked')
      ? 'unchecked'
      : 'none';
}

function ofFood(food: Food, held: Held): Holding | 'denied' {
  if (isAnimal(held)) return animalFoodsIn(food.name).includes(held) ? 'has' : 'none';
  const standing = allergenStanding(food, held);
  if (standing === 'contains') return 'has';
  if (standing === 'mayContain') return 'may';
  if (standing === 'proposed') return isCertainGrain(food, held) ? 'named' : 'may';
  if (food.allergens.some(({ allergen }) => allergen === held)) return 'denied';
  return food.allergens.length === 0 ? 'unchecked' : 'none';
}

/** Oats may be gluten free by law (Regulation (EU) No 828/2014; 21 CFR 101.91): by its name only wheat is not. */
function isCertainGrain(food: Food, held: Allergen): boolean {
  return held !== 'glutenCereals' || allergenStanding(food, 'wheat') !== null;
}

function isInWords(text: string, held: Held): boolean {
  if (isAnimal(held)) return animalFoodsIn(text).includes(held);
  return proposeAllergens(text, null).some(({ allergen }) => allergen === held);
}

const isAnimal = (held: Held): held is AnimalFood =>
  held === 'meat' || held === 'gelatine' || held === 'honey';
