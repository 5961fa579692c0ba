import 'server-only';
import { fileWithMerged } from '#lib/episode/merge-in-file';
import { dishChanges, type DishChange } from '#lib/figures/dish-changes';
import type { Merge } from '#lib/store/merge-foods';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readEpisodesUsing, type EpisodeUsing } from '#lib/store/read-food-uses';

/** An episode whose dishes come out otherwise when two foods are one. */
export interface ForeseenEpisode {
  readonly episode: EpisodeUsing;
  readonly dishes: readonly DishChange[];
}

export interface Foreseen {
  readonly changed: readonly ForeseenEpisode[];
  /** Episodes that use one of the two and come out as they are. */
  readonly unchanged: number;
  /** Older episodes that use one of the two and were not worked out. */
  readonly notWorkedOut: readonly EpisodeUsing[];
}

/** Episodes that are worked out at most, the latest first. */
const MOST = 40;

/** What merging two foods does to the dishes that rest on either, before it is done. */
export async function foreseen({ from, into }: Merge, now: Date): Promise<Foreseen> {
  const using = await readEpisodesUsing([from.id, into.id]);
  const packs = [...from.packs, ...into.packs];
  const changed: ForeseenEpisode[] = [];
  for (const episode of using.slice(0, MOST)) {
    const file = await readEpisodeFile(episode.id, now.toISOString());
    if (!file) continue;
    const dishes = dishChanges(file, fileWithMerged(file, from.food, into.food, packs));
    if (dishes.length > 0) changed.push({ episode, dishes });
  }
  const notWorkedOut = using.slice(MOST);
  const unchanged = using.length - notWorkedOut.length - changed.length;
  return { changed, unchanged, notWorkedOut };
}
