import { amountContext, dishesOf, recipesOf, recipeTitles } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';
import { ingredientText } from '#lib/publish/ingredient-text';

/** An ingredient of an episode that is of a food. */
export interface UseOfFood {
  /** Title of its dish. */
  readonly dish: string;
  /** As it stands in a description, grams and all. */
  readonly ingredient: string;
}

/** Where an episode uses a food, dish by dish, in viewing order. */
export function usesOfFood(file: EpisodeFile, foodId: string): readonly UseOfFood[] {
  const context = amountContext(file);
  const titles = new Map([
    ...recipeTitles(file),
    ...dishesOf(file.episode.segments).map(({ recipe, title }) => [recipe.id, title] as const),
  ]);
  return recipesOf(file).flatMap(({ id, title, lines, weighings }) =>
    lines
      .filter((line) => line.foodId === foodId || line.orFoodId === foodId)
      .map((line) => ({
        dish: titles.get(id) ?? title,
        ingredient: ingredientText(line, weighings, context, titles),
      })),
  );
}
