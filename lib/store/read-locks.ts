import 'server-only';
import { database } from '#lib/store/client';
import { ALIVE } from '#lib/store/load';

/** A numbers lock as it was taken, and the texts that were copied with it. */
export interface StoredLock {
  readonly id: string;
  readonly seq: number;
  /** Canonical JSON (RFC 8785) of the episode file, figures and working. */
  readonly snapshot: string;
  readonly sha256: string;
  readonly schemaVersion: number;
  readonly engineVersion: string;
  readonly at: Date;
  readonly published: readonly PublishedText[];
  /**
   * It came with a bundle whose rows got other ids here: it is kept as it was taken, names nothing that is here, and so
   * holds nothing.
   */
  readonly historyOnly: boolean;
}

export interface PublishedText {
  readonly id: string;
  readonly text: string;
  /** "plain", "markdown" or "html". */
  readonly form: string;
  readonly at: Date;
}

const WITH_TEXTS = {
  published: {
    where: ALIVE,
    orderBy: [{ at: 'desc' as const }, { id: 'desc' as const }],
    select: { id: true, text: true, form: true, at: true },
  },
};
const NEWEST_FIRST = [{ seq: 'desc' as const }, { id: 'desc' as const }];

const OF_AN_EPISODE = '"episode":{';

/** Whether a lock is of another episode's rows: a snapshot names the episode that it was taken of. */
function isHistoryOnly(snapshot: string, episodeId: string): boolean {
  return snapshot.includes(OF_AN_EPISODE) && !snapshot.includes(`"id":"${episodeId}"`);
}

/** All locks but those that `isHistoryOnly` is true of, as a condition of a query, so that no snapshot is read for it. */
export function ownLocks(episodeId: string) {
  return {
    OR: [
      { NOT: { snapshot: { contains: OF_AN_EPISODE } } },
      { snapshot: { contains: `"id":"${episodeId}"` } },
    ],
  };
}

/** The last lock of an episode; null if none was taken of it here or came with its rows. */
export async function readLastLock(episodeId: string): Promise<StoredLock | null> {
  const found = await database().numbersLock.findFirst({
    where: { episodeId, ...ALIVE },
    orderBy: NEWEST_FIRST,
    include: WITH_TEXTS,
  });
  // What came as history came before any other lock: where the last is history, all are.
  if (!found || isHistoryOnly(found.snapshot, episodeId)) return null;
  return { ...found, historyOnly: false };
}

/** An episode's locks, the last first, in pages by number: those taken before lock `before`. */
export async function readLocks(
  episodeId: string,
  { before, take = 20 }: { readonly before?: number; readonly take?: number } = {},
): Promise<readonly StoredLock[]> {
  const found = await database().numbersLock.findMany({
    where: { episodeId, ...ALIVE, ...(before === undefined ? {} : { seq: { lt: before } }) },
    orderBy: NEWEST_FIRST,
    take,
    include: WITH_TEXTS,
  });
  return found.map((lock) => ({
    ...lock,
    historyOnly: isHistoryOnly(lock.snapshot, episodeId),
  }));
}

/** The last text that was copied for an episode, with its lock; null if none was. */
export async function readPublished(
  episodeId: string,
): Promise<(PublishedText & { readonly lock: StoredLock }) | null> {
  const found = await database().published.findFirst({
    where: { ...ALIVE, lock: { episodeId, ...ALIVE } },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    select: { id: true, text: true, form: true, at: true, lock: { include: WITH_TEXTS } },
  });
  if (!found) return null;
  const historyOnly = isHistoryOnly(found.lock.snapshot, episodeId);
  return { ...found, lock: { ...found.lock, historyOnly } };
}

/** The number of an episode's next lock; removed ones keep theirs. */
export async function nextLockSeq(episodeId: string): Promise<number> {
  const { _max } = await database().numbersLock.aggregate({
    where: { episodeId },
    _max: { seq: true },
  });
  return (_max.seq ?? 0) + 1;
}
