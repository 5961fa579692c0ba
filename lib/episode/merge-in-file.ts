import type { Recipe } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import type { Pack } from '#lib/episode/stock-schema';
import { mergedFood } from '#lib/foods/merge-foods';
import type { Food } from '#lib/foods/food';

/**
 * An episode as it would be with one food as part of another: its ingredients, packs and stock name the other,
 * which has the measures, cooked weights and allergens of both. Nothing is written.
 * @param from the food that becomes part of the other
 * @param into the food that remains, as it stands now
 * @param packs all packs of both: "a pack" of an ingredient may become another
 * @example fileWithMerged(file, oats, rolledOats, []) // every ingredient of oats is of rolled oats
 */
export function fileWithMerged(
  file: EpisodeFile,
  from: Food,
  into: Food,
  packs: readonly Pack[],
): EpisodeFile {
  const of = (id: string) => (id === from.id ? into.id : id);
  const maybe = (id: string | null) => (id === null ? null : of(id));
  const recipe = (each: Recipe): Recipe => ({
    ...each,
    lines: each.lines.map((line) => {
      const foodId = maybe(line.foodId);
      const orFoodId = maybe(line.orFoodId);
      // One that could be either of two which are one is that one.
      return { ...line, foodId, orFoodId: orFoodId === foodId ? null : orFoodId };
    }),
  });
  const others = file.foods
    .filter(({ id }) => id !== from.id && id !== into.id)
    .map((food) => ({ ...food, witnessId: maybe(food.witnessId) }));
  return {
    ...file,
    foods: [...others, mergedFood(from, into)],
    episode: {
      ...file.episode,
      segments: file.episode.segments.map((segment) => ({
        ...segment,
        recipe: segment.recipe && recipe(segment.recipe),
      })),
    },
    recipes: file.recipes.map(recipe),
    stock: file.stock.map((lot) => ({ ...lot, foodId: of(lot.foodId) })),
    packs: [
      ...file.packs.filter(({ foodId }) => foodId !== from.id && foodId !== into.id),
      ...packs.map((pack) => ({ ...pack, foodId: into.id })),
    ],
  };
}
