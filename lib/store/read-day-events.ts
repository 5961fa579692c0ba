import 'server-only';
import { dayEventSchema } from '#lib/shoot/day-event-schema';
import type { DayEvent } from '#lib/shoot/day-log';
import { database, inTransaction, type Tx } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { ALIVE } from '#lib/store/load';

/** A day's events as a device hears of them. */
export interface DayNews {
  /** The place in the journal up to which this tells; ask for what comes after it. */
  readonly cursor: number;
  /** Whether `events` are all there are, and not only those since the asked place. */
  readonly whole: boolean;
  readonly events: readonly DayEvent[];
  /** Ids of events that were undone. */
  readonly gone: readonly string[];
}

/** Changes told one by one at most; after more, the whole day is told. */
const MOST_CHANGES = 500;

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

/**
 * A day's events after a place in the journal, which counts what arrived, not when it was made; from 0
 * all of them. A place that the journal has not reached (it was put back from a copy) is answered by all.
 */
export async function readDayEvents(
  dayId: string,
  after = 0,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<DayNews> {
  return inTransaction(async (tx) => {
    const newest = await tx.change.findFirst({
      where: { creatorId },
      orderBy: { seq: 'desc' },
      select: { seq: true },
    });
    const cursor = newest?.seq ?? 0;
    const since = after === 0 || after > cursor ? null : await changedSince(tx, after, creatorId);
    const rows = await tx.dayEvent.findMany({
      where: { dayId, creatorId, ...(since === null ? ALIVE : { id: { in: since } }) },
      orderBy: [{ at: 'asc' }, { id: 'asc' }],
    });
    const alive = rows.filter(({ deletedAt }) => deletedAt === null);
    return {
      cursor,
      whole: since === null,
      events: alive.map(eventFrom),
      gone: rows.filter(({ deletedAt }) => deletedAt !== null).map(({ id }) => id),
    };
  });
}

/** Ids of the events that the journal names after a place; null where they are too many to name. */
async function changedSince(tx: Tx, after: number, creatorId: string): Promise<string[] | null> {
  const changes = await tx.change.findMany({
    where: { creatorId, entity: 'DayEvent', seq: { gt: after } },
    select: { entityId: true },
    take: MOST_CHANGES + 1,
  });
  return changes.length > MOST_CHANGES
    ? null
    : [...new Set(changes.map(({ entityId }) => entityId))];
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
