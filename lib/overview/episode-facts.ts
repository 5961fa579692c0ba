import { dishesOf } from '#lib/episode/context';
import type { EpisodeFile, Segment } from '#lib/episode/schema';
import type { EpisodeFigures } from '#lib/figures/episode-figures';
import type { StageFacts } from '#lib/overview/stage';

/** The planned length of a cut in seconds: the sum of its segments. `plannedLengthS([])` → `0`. */
export function plannedLengthS(segments: readonly Pick<Segment, 'plannedS'>[]): number {
  return segments.reduce((sum, segment) => sum + segment.plannedS, 0);
}

/**
 * The facts of one episode that its stage follows from. An ingredient is open where its grams are unknown
 * or it has no food.
 * @param published whether a description was copied or marked as out
 */
export function stageFacts(
  file: Pick<EpisodeFile, 'episode' | 'day'>,
  figures: Pick<EpisodeFigures, 'dishes'>,
  published: boolean,
): StageFacts {
  const { segments } = file.episode;
  const dishes = dishesOf(segments);
  return {
    dishes: dishes.length,
    lines: dishes.reduce((sum, dish) => sum + dish.recipe.lines.length, 0),
    openLines: figures.dishes.reduce(
      (sum, dish) => sum + dish.lines.filter((line) => line.gap !== null).length,
      0,
    ),
    segments: segments.length,
    timedSegments: segments.filter((segment) => segment.inFrame !== null).length,
    filmingDate: file.day?.date ?? null,
    published,
  };
}
