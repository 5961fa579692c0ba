import 'server-only';
import type { ListEvent, ListScope } from '#lib/shopping/list-events';
import { database, inTransaction } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { listEventFrom } from '#lib/store/list-events';
import { ALIVE } from '#lib/store/load';

/** What was entered on a list as a device hears of it. */
export interface ListNews {
  /** The place in the journal up to which this tells; ask for what comes after it. */
  readonly cursor: number;
  /** Whether `events` are all there are, and not only those since the asked place. */
  readonly whole: boolean;
  readonly events: readonly ListEvent[];
  /** Ids of entries that were undone. */
  readonly gone: readonly string[];
}

/** Changes told one by one at most; after more, the whole list is told. */
const MOST_CHANGES = 500;

/**
 * The entries of a shopping list after a place in the journal, which counts what arrived, not when it was made; from 0
 * all of them. A place that the journal has not reached (it was put back from a copy) is answered by all.
 */
export async function readListEvents(
  scope: ListScope,
  after = 0,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<ListNews> {
  return inTransaction(async (tx) => {
    const newest = await tx.change.findFirst({
      where: { creatorId },
      orderBy: { seq: 'desc' },
      select: { seq: true },
    });
    const cursor = newest?.seq ?? 0;
    const changed =
      after === 0 || after > cursor
        ? null
        : await tx.change.findMany({
            where: { creatorId, entity: 'Tick', seq: { gt: after } },
            orderBy: { seq: 'asc' },
            take: MOST_CHANGES + 1,
            select: { entityId: true },
          });
    const some = changed !== null && changed.length <= MOST_CHANGES ? changed : null;
    const ids = some?.map(({ entityId }) => entityId);
    const rows = await tx.tick.findMany({
      where: { scope, creatorId, ...(ids === undefined ? ALIVE : { id: { in: ids } }) },
      orderBy: [{ at: 'asc' }, { id: 'asc' }],
    });
    return {
      cursor,
      whole: some === null,
      events: rows.filter(({ deletedAt }) => deletedAt === null).map(listEventFrom),
      gone: rows.flatMap(({ id, deletedAt }) => (deletedAt === null ? [] : [id])),
    };
  });
}

/** Whether a list's episode is there; a span of dates always is. */
export async function isListThere(
  scope: ListScope,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<boolean> {
  if (!scope.startsWith('episode:')) return true;
  const id = scope.slice('episode:'.length);
  return (await database().episode.findFirst({ where: { ...ALIVE, creatorId, id } })) !== null;
}
