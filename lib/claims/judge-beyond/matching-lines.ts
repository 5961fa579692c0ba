import { ENGLISH } from '#lib/claims/english/english';
import { stemsOf } from '#lib/claims/words/foods';
import {
  fitOf,
  ingredientNames,
  type IngredientNames,
} from '#lib/claims/judge-beyond/ingredient-names';
import type { AmountContext, Dish } from '#lib/episode/context';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import { onceFor } from '#lib/claims/once-for';

/** The ingredients that a food, as it is said, fits best; none where it fits none. */
export function matchingLines(
  food: string,
  { recipe }: Dish,
  context: AmountContext,
): readonly RecipeLine[] {
  const known = foundIn(recipe, context);
  const found = known.get(food) ?? bestLines(food, recipe, context);
  known.set(food, found);
  return found;
}

/** What each food that was asked for fits, for all statements that name it again. */
const foundIn = onceFor<Recipe, AmountContext, Map<string, readonly RecipeLine[]>>(() => new Map());

function bestLines(food: string, recipe: Recipe, context: AmountContext): readonly RecipeLine[] {
  const said = stemsOf(food, ENGLISH);
  const scored = recipe.lines.map((line) => ({ line, fit: fitOf(said, namesOf(line, context)) }));
  const best = scored.reduce((most, { fit }) => Math.max(most, fit), 0);
  return best === 0 ? [] : scored.filter(({ fit }) => fit === best).map(({ line }) => line);
}

/** The names of an ingredient, read once for all statements that are held against it. */
const namesOf = onceFor((line: RecipeLine, context: AmountContext): IngredientNames => {
  const own = [line.foodId, line.orFoodId].flatMap((id) => context.foods.get(id ?? '') ?? []);
  return ingredientNames(line, own, ENGLISH);
});
