import type { Kitchen } from '#lib/episode/kitchen-schema';
import type { Recipe } from '#lib/episode/recipe-schema';
import type { EpisodeFile, Segment } from '#lib/episode/schema';
import type { Pack } from '#lib/episode/stock-schema';
import type { Food } from '#lib/foods/food';

/** What an ingredient's amount is read against: foods, recipes, packs, scales and spreads by id. */
export interface AmountContext {
  /** Recipes that an ingredient may be made from: the episode's own and those that came with it. */
  readonly recipes: ReadonlyMap<string, Recipe>;
  readonly foods: ReadonlyMap<string, Food>;
  readonly packs: ReadonlyMap<string, readonly Pack[]>;
  readonly kitchen: Kitchen;
}

/** Looks up a file's foods, packs and kitchen once, for all that reads amounts from it. */
export function amountContext(
  file: Pick<EpisodeFile, 'foods' | 'packs' | 'kitchen' | 'episode' | 'recipes'>,
): AmountContext {
  const packs = new Map<string, Pack[]>();
  const byId = [...file.packs].sort((a, b) => (a.id < b.id ? -1 : 1));
  for (const pack of byId) packs.set(pack.foodId, [...(packs.get(pack.foodId) ?? []), pack]);
  return {
    recipes: new Map(recipesOf(file).map((recipe) => [recipe.id, recipe])),
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

interface WithSegments {
  readonly episode: Pick<EpisodeFile['episode'], 'segments'>;
}

/** The recipes of an episode's own dishes in viewing order. */
export function ownRecipesOf({ episode }: WithSegments): Recipe[] {
  return dishesOf(episode.segments).map(({ recipe }) => recipe);
}

/** All recipes of a file: those of its segments in viewing order, then those that ingredients are made from. */
export function recipesOf(file: WithSegments & Pick<EpisodeFile, 'recipes'>): readonly Recipe[] {
  return [...ownRecipesOf(file), ...file.recipes];
}

/** What each recipe is called, by its id: as its dish in the running order, else by its own title. */
export function recipeTitles(
  file: Pick<EpisodeFile, 'episode' | 'recipes'>,
): ReadonlyMap<string, string> {
  return new Map([
    ...file.recipes.map(({ id, title }) => [id, title] as const),
    ...dishesOf(file.episode.segments).map(({ recipe, title }) => [recipe.id, title] as const),
  ]);
}

/** Ids of all foods that the ingredients of recipes name, both where one could be either of two. */
export function usedFoodIds(recipes: readonly Recipe[]): ReadonlySet<string> {
  const ids = recipes.flatMap(({ lines }) =>
    lines.flatMap(({ foodId, orFoodId }) => [foodId, orFoodId]),
  );
  return new Set(ids.filter((id) => id !== null));
}
