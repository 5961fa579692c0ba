import { dishesOf, type Dish } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';

/**
 * Whether anybody has said how much was eaten: a part of any dish, or what else there was that day. Until then each dish
 * counts whole, and its numbers are of what was made.
 * @example isEatenSaid({ episode: { anythingElse: null, segments: [wholeDish] } }) // false
 */
export function isEatenSaid({
  episode,
}: {
  readonly episode: Pick<EpisodeFile['episode'], 'anythingElse' | 'segments'>;
}): boolean {
  return episode.anythingElse !== null || dishesOf(episode.segments).some(hasOwnPart);
}

/** Whether a dish counts otherwise than a new one does, which is whole. */
function hasOwnPart({ ate, eaten }: Pick<Dish, 'ate' | 'eaten'>): boolean {
  return ate.kind !== 'share' || eaten.num !== eaten.den;
}
