import { dishesOf } from '#lib/episode/context';
import type { EpisodeFile, Segment } from '#lib/episode/schema';
import type { StageFacts } from '#lib/overview/stage';

/** The planned length of a cut in seconds: the sum of its segments. `plannedLengthS([])` → `0`. */
export function plannedLengthS(segments: readonly Pick<Segment, 'plannedS'>[]): number {
  return segments.reduce((sum, segment) => sum + segment.plannedS, 0);
}

/**
 * Whether an ingredient asks for something still: it is of no food or dish, or has no amount typed or weighed. One
 * rule for the list of the season, which counts rows, and for the episode itself.
 */
export function isLineOpen(line: {
  readonly hasFood: boolean;
  readonly hasAmount: boolean;
  readonly isWeighed: boolean;
}): boolean {
  return !line.hasFood || !(line.hasAmount || line.isWeighed);
}

/**
 * The facts of one episode that its stage follows from.
 * @param copied whether a description was copied
 */
export function stageFacts(
  file: Pick<EpisodeFile, 'episode' | 'day'>,
  copied: boolean,
): StageFacts {
  const { publishOn, segments } = file.episode;
  const dishes = dishesOf(segments);
  const open = dishes.flatMap(({ recipe }) => {
    const weighed = new Set(
      recipe.weighings.flatMap(({ shares }) => shares.map(({ lineId }) => lineId)),
    );
    return recipe.lines.filter((line) =>
      isLineOpen({
        hasFood: line.foodId !== null || line.madeFrom !== null,
        hasAmount: line.planned !== null || line.quantity !== null,
        isWeighed: weighed.has(line.id),
      }),
    );
  });
  return {
    dishes: dishes.length,
    lines: dishes.reduce((sum, dish) => sum + dish.recipe.lines.length, 0),
    openLines: open.length,
    segments: segments.length,
    timedSegments: segments.filter((segment) => segment.inFrame !== null).length,
    filmingDate: file.day?.date ?? null,
    copied,
    publishOn,
  };
}
