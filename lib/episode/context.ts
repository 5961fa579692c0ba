import type { EpisodeFile, Kitchen, Pack, Segment, Recipe } from '#lib/episode/schema';
import type { Food } from '#lib/foods/food';

/** What an ingredient's amount is read against: foods, packs, scales and spreads by id. */
export interface AmountContext {
  readonly foods: ReadonlyMap<string, Food>;
  readonly packs: ReadonlyMap<string, readonly Pack[]>;
  readonly kitchen: Kitchen;
}

/** Looks up a file's foods, packs and kitchen once, for all that reads amounts from it. */
export function amountContext(
  file: Pick<EpisodeFile, 'foods' | 'packs' | 'kitchen'>,
): AmountContext {
  const packs = new Map<string, Pack[]>();
  const byId = [...file.packs].sort((a, b) => (a.id < b.id ? -1 : 1));
  for (const pack of byId) packs.set(pack.foodId, [...(packs.get(pack.foodId) ?? []), pack]);
  return {
    foods: new Map(file.foods.map((food) => [food.id, food])),
    packs,
    kitchen: file.kitchen,
  };
}

/** A segment that has a recipe. */
export type Dish = Segment & { readonly recipe: Recipe };

/** The dishes of an episode in viewing order. */
export function dishesOf(segments: readonly Segment[]): Dish[] {
  return segments.filter((segment): segment is Dish => segment.recipe !== null);
}

/** Ids of all foods that the ingredients name, both where one could be either of two. */
export function usedFoodIds(segments: readonly Segment[]): ReadonlySet<string> {
  const ids = dishesOf(segments).flatMap((dish) =>
    dish.recipe.lines.flatMap(({ foodId, orFoodId }) => [foodId, orFoodId]),
  );
  return new Set(ids.filter((id) => id !== null));
}
