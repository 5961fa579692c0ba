import { dishesOf } from '#lib/episode/context';
import type { EpisodeFile, Target } from '#lib/episode/schema';
import { LIMIT_WORDS } from '#lib/figures/limit-words';
import { nutrientWords } from '#lib/swap/amount-words';

/** A target in words: 'at least 110 g protein, the whole dish'. */
export function goalWords({ episode }: EpisodeFile, target: Target): string {
  const { nutrient, relation, amount } = target;
  const what = nutrientWords(nutrient, episode.region);
  return `${LIMIT_WORDS[relation]} ${amount} ${what}, ${partWords(episode, target)}`;
}

/** Of what a target is: 'all dishes', 'the whole dish', 'one of 3'. */
function partWords({ segments }: EpisodeFile['episode'], { segmentId, portionId }: Target): string {
  if (segmentId === null) return 'all dishes';
  const dish = dishesOf(segments).find(({ id }) => id === segmentId);
  const portion = dish?.recipe.portions.find(({ id }) => id === portionId);
  if (!portion) return 'the whole dish';
  return portion.kind === 'count' ? `one of ${portion.of}` : portion.name || 'a portion';
}
