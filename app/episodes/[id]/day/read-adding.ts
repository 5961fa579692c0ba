import 'server-only';
import type { EpisodeFile } from '#lib/episode/schema';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readSeason } from '#lib/store/read-season';
import type { Adding } from './_components/view';

/** Episodes to choose from: the latest of the season; an older one can take this day's episode on a day of its own. */
const MOST_OFFERED = 100;

/**
 * What another episode on the day is chosen from: the episodes that are not on it, or the segments of the one asked
 * for; null where that is not there, or on the day already.
 */
export async function readAdding(file: EpisodeFile, asked: string | null): Promise<Adding | null> {
  const there = new Set([file.episode.id, ...(file.also ?? []).map(({ id }) => id)]);
  if (asked !== null) {
    const other = there.has(asked) ? null : await readEpisodeFile(asked, file.savedAt);
    if (!other) return null;
    const { id, title, segments } = other.episode;
    return {
      kind: 'what',
      episode: { id, title },
      segments: segments.map((segment) => ({ id: segment.id, title: segment.title })),
    };
  }
  const { rows } = await readSeason({ take: MOST_OFFERED });
  const episodes = rows.filter(({ id }) => !there.has(id));
  return { kind: 'which', episodes: episodes.map(({ id, title }) => ({ id, title })) };
}
