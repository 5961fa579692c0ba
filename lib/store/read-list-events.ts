import 'server-only';
import type { ListEvent, ListScope } from '#lib/shopping/list-events';
import { database, inTransaction } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { newsAfter, type News } from '#lib/store/journal-news';
import { listEventFrom } from '#lib/store/list-events';
import { ALIVE } from '#lib/store/load';

/** What was entered on a list as a device hears of it. */
export type ListNews = News<ListEvent>;

/** The entries of a shopping list after a place in the journal, see `newsAfter`. */
export async function readListEvents(
  scope: ListScope,
  after = 0,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<ListNews> {
  return inTransaction((tx) =>
    newsAfter(
      tx,
      { entity: 'Tick', after, creatorId },
      (ids: readonly string[] | null) =>
        tx.tick.findMany({
          where: { scope, creatorId, ...(ids === null ? ALIVE : { id: { in: [...ids] } }) },
          orderBy: [{ at: 'asc' }, { id: 'asc' }],
        }),
      listEventFrom,
    ),
  );
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
