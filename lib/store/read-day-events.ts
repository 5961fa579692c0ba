import 'server-only';
import { dayEventSchema } from '#lib/shoot/day-event-schema';
import type { DayEvent } from '#lib/shoot/day-log';
import { database, inTransaction } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { newsAfter, type News } from '#lib/store/journal-news';
import { ALIVE } from '#lib/store/load';

/** A day's events as a device hears of them. */
export type DayNews = News<DayEvent>;

/** Whether a filming day is one of this episode's. */
export async function isDayOf(
  episodeId: string,
  dayId: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<boolean> {
  const mine = { ...ALIVE, creatorId };
  const found = await database().dayEpisode.findFirst({
    where: { ...mine, episodeId, dayId, day: mine, episode: mine },
  });
  return found !== null;
}

/** A day's events after a place in the journal, see `newsAfter`. */
export async function readDayEvents(
  dayId: string,
  after = 0,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<DayNews> {
  return inTransaction((tx) =>
    newsAfter(
      tx,
      { entity: 'DayEvent', after, creatorId },
      (ids: readonly string[] | null) =>
        tx.dayEvent.findMany({
          where: { dayId, creatorId, ...(ids === null ? ALIVE : { id: { in: [...ids] } }) },
          orderBy: [{ at: 'asc' }, { id: 'asc' }],
        }),
      eventFrom,
    ),
  );
}

/** An event as the table keeps it; throws where it is none. */
export function eventFrom(row: {
  id: string;
  deviceId: string;
  deviceSeq: number;
  at: Date;
  kind: string;
  refs: unknown;
  payload: unknown;
}): DayEvent {
  const { id, deviceId, deviceSeq, at, kind, refs, payload } = row;
  return dayEventSchema.parse({
    id,
    deviceId,
    deviceSeq,
    at: at.toISOString(),
    kind,
    refs,
    payload,
  });
}
