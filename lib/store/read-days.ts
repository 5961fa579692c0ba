import 'server-only';
import type { DayPlace } from '#lib/shoot/day-place';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { ALIVE, BY_POSITION } from '#lib/store/load';

/** An episode on a filming day, by the row that puts it there. */
export interface EpisodeOnDay {
  readonly id: string;
  readonly title: string;
  readonly rowId: string;
  readonly rev: number;
}

/** A filming day with all that is filmed on it, of every episode. */
export interface DayOfEpisode {
  readonly id: string;
  readonly rev: number;
  readonly date: string;
  readonly kitchenId: string;
  readonly places: readonly (DayPlace & {
    readonly id: string;
    readonly rev: number;
    readonly episodeId: string;
  })[];
  /** In the order in which they came to it. */
  readonly episodes: readonly EpisodeOnDay[];
}

/** The filming days of an episode by date. */
export async function readDays(
  episodeId: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<readonly DayOfEpisode[]> {
  const mine = { ...ALIVE, creatorId };
  const rows = await database().filmingDay.findMany({
    where: { ...mine, episodes: { some: { ...mine, episodeId, episode: mine } } },
    orderBy: [{ date: 'asc' }, { id: 'asc' }],
    include: {
      episodes: {
        where: { ...mine, episode: mine },
        orderBy: { id: 'asc' },
        include: { episode: { select: { title: true } } },
      },
      segments: {
        ...BY_POSITION,
        where: { ...mine, segment: { ...mine, episode: mine } },
        include: { segment: { select: { title: true, episodeId: true } } },
      },
    },
  });
  return rows.map(({ id, rev, date, kitchenId, episodes, segments }) => {
    return {
      ...{ id, rev, date, kitchenId },
      places: segments.map(({ segment, segmentId, part, pickup, ...row }) => ({
        ...{ id: row.id, rev: row.rev, segmentId, pickup },
        title: segment.title,
        episodeId: segment.episodeId,
        part: part === 'cook' || part === 'film' ? part : 'all',
      })),
      episodes: episodes.map((row) => {
        return { id: row.episodeId, title: row.episode.title, rowId: row.id, rev: row.rev };
      }),
    };
  });
}
