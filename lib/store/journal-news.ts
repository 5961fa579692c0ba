import type { Tx } from '#lib/store/client';

/** What a device hears of entries: those after a place in the journal, or all. */
export interface News<E> {
  /** The place in the journal up to which this tells; ask for what comes after it. */
  readonly cursor: number;
  /** Whether `events` are all there are, and not only those since the asked place. */
  readonly whole: boolean;
  readonly events: readonly E[];
  /** Ids of entries that were undone. */
  readonly gone: readonly string[];
}

/** Changes told one by one at most; after more, all entries are told. */
const MOST_CHANGES = 500;

/**
 * Entries after a place in the journal, which counts what arrived, not when it was made; from 0 all of them. A place
 * that the journal has not reached (it was put back from a copy) is answered by all.
 * @param rowsOf the rows of the ids, those taken back among them; of null all that are there
 */
export async function newsAfter<
  R extends { readonly id: string; readonly deletedAt: Date | null },
  E,
>(
  tx: Tx,
  { entity, after, creatorId }: { entity: 'DayEvent' | 'Tick'; after: number; creatorId: string },
  rowsOf: (ids: readonly string[] | null) => Promise<readonly R[]>,
  eventOf: (row: R) => E,
): Promise<News<E>> {
  const newest = await tx.change.findFirst({
    where: { creatorId },
    orderBy: { seq: 'desc' },
    select: { seq: true },
  });
  const cursor = newest?.seq ?? 0;
  const isKnown = after > 0 && after <= cursor;
  const changes = isKnown
    ? await tx.change.findMany({
        where: { creatorId, entity, seq: { gt: after } },
        select: { entityId: true },
        take: MOST_CHANGES + 1,
      })
    : [];
  const some = isKnown && changes.length <= MOST_CHANGES;
  const ids = some ? [...new Set(changes.map(({ entityId }) => entityId))] : null;
  const rows = await rowsOf(ids);
  return {
    cursor,
    whole: ids === null,
    events: rows.filter(({ deletedAt }) => deletedAt === null).map(eventOf),
    gone: rows.filter(({ deletedAt }) => deletedAt !== null).map(({ id }) => id),
  };
}
