import { ENGLISH } from '#lib/claims/english/english';
import { stemsOf } from '#lib/claims/foods';
import {
  fitOf,
  ingredientNames,
  type IngredientNames,
} from '#lib/claims/judge-beyond/ingredient-names';
import type { AmountContext, Dish } from '#lib/episode/context';
import type { RecipeLine } from '#lib/episode/schema';

const kept = new WeakMap<AmountContext, Map<RecipeLine, IngredientNames>>();

/** The ingredients that a food, as it is said, fits best; none where it fits none. */
export function matchingLines(
  food: string,
  { recipe }: Dish,
  context: AmountContext,
): RecipeLine[] {
  const said = stemsOf(food, ENGLISH);
  const scored = recipe.lines.map((line) => ({ line, fit: fitOf(said, namesOf(line, context)) }));
  const best = scored.reduce((most, { fit }) => Math.max(most, fit), 0);
  return best === 0 ? [] : scored.filter(({ fit }) => fit === best).map(({ line }) => line);
}

/** The names of an ingredient, read once for all statements that are held against it. */
function namesOf(line: RecipeLine, context: AmountContext): IngredientNames {
  const names = kept.get(context) ?? new Map<RecipeLine, IngredientNames>();
  kept.set(context, names);
  const known = names.get(line);
  if (known) return known;
  const own = [line.foodId, line.orFoodId].flatMap((id) => context.foods.get(id ?? '') ?? []);
  const read = ingredientNames(line, own, ENGLISH);
  names.set(line, read);
  return read;
}
