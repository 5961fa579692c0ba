import 'server-only';
import { HISTORY_SHAPE } from '#lib/lock/lock-consistency';
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

const OF_AN_EPISODE = '"episode":{';

/** Whether a lock is of another episode's rows (a snapshot names its episode), or did not agree with itself. */
function isHistoryOnly(
  { snapshot, schemaVersion }: Pick<StoredLock, 'snapshot' | 'schemaVersion'>,
  episodeId: string,
): boolean {
  if (schemaVersion === HISTORY_SHAPE) return true;
  return snapshot.includes(OF_AN_EPISODE) && !snapshot.includes(`"id":"${episodeId}"`);
}

/** All locks but those that `isHistoryOnly` is true of, as a condition of a query, so that no snapshot is read for it. */
export function ownLocks(episodeId: string) {
  return {
    schemaVersion: { not: HISTORY_SHAPE },
    OR: [
      { NOT: { snapshot: { contains: OF_AN_EPISODE } } },
      { snapshot: { contains: `"id":"${episodeId}"` } },
    ],
  };
}

/** The last lock of an episode that is its own; null if none was taken of it here or came with its rows. */
export async function readLastLock(episodeId: string): Promise<StoredLock | null> {
  return database().numbersLock.findFirst({
    where: { episodeId, ...ALIVE, ...ownLocks(episodeId) },
    orderBy: [{ seq: 'desc' }, { id: 'desc' }],
    include: WITH_TEXTS,
  });
}

/** How many locks of an episode are history only, and why. */
export interface HistoryCount {
  /** They came with a zip whose rows got other ids here. */
  readonly otherRows: number;
  /** They came with a zip and do not agree with themselves, or another engine worked them out. */
  readonly unlike: number;
}

/** Counts the locks that hold nothing, without reading any. */
export async function countHistoryLocks(episodeId: string): Promise<HistoryCount> {
  const where = { episodeId, ...ALIVE };
  const db = database().numbersLock;
  const all = await db.count({ where });
  const unlike = await db.count({ where: { ...where, schemaVersion: HISTORY_SHAPE } });
  const own = await db.count({ where: { ...where, ...ownLocks(episodeId) } });
  return { otherRows: all - own - unlike, unlike };
}

/** A text that was copied, with the number of its lock. */
export interface CopiedText extends PublishedText {
  readonly seq: number;
  /** Its lock came as history: it was copied elsewhere, or with a lock that holds nothing. */
  readonly historyOnly: boolean;
}

/** Texts that were copied for an episode, those of the last lock first, without what the locks froze. */
export async function readCopied(episodeId: string, take = 100): Promise<readonly CopiedText[]> {
  const of = { episodeId, ...ALIVE };
  const found = await database().published.findMany({
    where: { ...ALIVE, lock: of },
    orderBy: [{ lock: { seq: 'desc' } }, { at: 'desc' }, { id: 'desc' }],
    take,
    select: { ...WITH_TEXTS.published.select, lock: { select: { id: true, seq: true } } },
  });
  if (found.length === 0) return [];
  const own = await database().numbersLock.findMany({
    where: { ...of, ...ownLocks(episodeId) },
    select: { id: true },
  });
  const ids = new Set(own.map(({ id }) => id));
  return found.map(({ lock, ...text }) => ({
    ...text,
    seq: lock.seq,
    historyOnly: !ids.has(lock.id),
  }));
}

/** What a lock froze, and whether it holds anything here. */
export interface FrozenLock extends Pick<StoredLock, 'snapshot'> {
  /**
   * It came with a zip whose rows got other ids here, so that it names nothing that is here; or it does not agree with
   * itself. It is kept as it came and holds nothing.
   */
  readonly historyOnly: boolean;
}

/** What locks of an episode froze, by their ids, without the texts copied with them. */
export async function readFrozen(
  episodeId: string,
  ids: readonly string[],
): Promise<ReadonlyMap<string, FrozenLock>> {
  const found = await database().numbersLock.findMany({
    where: { id: { in: [...ids] }, episodeId },
    select: { id: true, snapshot: true, schemaVersion: true },
  });
  return new Map(
    found.map((lock) => [
      lock.id,
      { snapshot: lock.snapshot, historyOnly: isHistoryOnly(lock, episodeId) },
    ]),
  );
}

/** The last text that was copied with a lock of its own for an episode, with that lock; null if none was. */
export async function readPublished(
  episodeId: string,
): Promise<(PublishedText & { readonly lock: StoredLock }) | null> {
  return database().published.findFirst({
    where: { ...ALIVE, lock: { episodeId, ...ALIVE, ...ownLocks(episodeId) } },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    select: { ...WITH_TEXTS.published.select, lock: { include: WITH_TEXTS } },
  });
}

/** The number of an episode's next lock; removed ones keep theirs. */
export async function nextLockSeq(episodeId: string): Promise<number> {
  const { _max } = await database().numbersLock.aggregate({
    where: { episodeId },
    _max: { seq: true },
  });
  return (_max.seq ?? 0) + 1;
}
