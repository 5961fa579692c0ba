import type { Recipe } from '#lib/episode/recipe-schema';
import type { AlsoFilmed, EpisodeFile } from '#lib/episode/schema';
import type { Edit } from '#lib/store/command';
import { importEpisode, mintSegments } from '#lib/store/import-episode';
import { importRecipes, mintRecipe } from '#lib/store/import-recipe';
import type { ImportIds } from '#lib/store/import-ids';

/** New ids for all that other episodes of a file's day have, before anything names it. */
export function mintOthers(also: readonly AlsoFilmed[], ids: ImportIds): void {
  for (const { segments, recipes } of also) {
    mintSegments(segments, ids);
    for (const recipe of recipes) mintRecipe(recipe, ids);
  }
}

/** The recipes that ingredients of a file are made from, without those that come as a dish of another of its episodes. */
export function recipesOfNoOther({ recipes, also = [] }: EpisodeFile): readonly Recipe[] {
  const dishes = also.flatMap(({ segments }) => segments.flatMap(({ recipe }) => recipe?.id ?? []));
  return recipes.filter(({ id }) => !dishes.includes(id));
}

/**
 * Other episodes of a file's day as new rows, each an episode of the segments that the file has of it. What the day is
 * not about (hook, dates, targets) the file does not say.
 * @param others with the ids of their rows
 */
export function importOthers(
  others: readonly AlsoFilmed[],
  kitchenId: string,
  ids: ImportIds,
): Edit[] {
  return others.flatMap((other) => {
    const { id, title, region, segments, links } = other;
    const episode = {
      ...{ id, title, region, segments, links },
      ...{ hook: '', publishOn: null, rate: { num: 25, den: 1 }, dropFrame: false, targets: [] },
      ...{ energyStep: 1 as const, anythingElse: null, webLinks: [], disclosure: '' },
    };
    return [...importRecipes(other.recipes, ids), ...importEpisode(episode, id, kitchenId, ids)];
  });
}
