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
}

export interface PublishedText {
  readonly id: string;
  readonly text: string;
  readonly at: Date;
}

const WITH_TEXTS = {
  published: {
    where: ALIVE,
    orderBy: [{ at: 'desc' as const }, { id: 'desc' as const }],
    select: { id: true, text: true, at: true },
  },
};
const NEWEST_FIRST = [{ seq: 'desc' as const }, { id: 'desc' as const }];

/** The last lock of an episode; null if none was taken. */
export async function readLastLock(episodeId: string): Promise<StoredLock | null> {
  return database().numbersLock.findFirst({
    where: { episodeId, ...ALIVE },
    orderBy: NEWEST_FIRST,
    include: WITH_TEXTS,
  });
}

/** An episode's locks, the last first, in pages by number: those taken before lock `before`. */
export async function readLocks(
  episodeId: string,
  { before, take = 20 }: { readonly before?: number; readonly take?: number } = {},
): Promise<readonly StoredLock[]> {
  return database().numbersLock.findMany({
    where: { episodeId, ...ALIVE, ...(before === undefined ? {} : { seq: { lt: before } }) },
    orderBy: NEWEST_FIRST,
    take,
    include: WITH_TEXTS,
  });
}

/** The last text that was copied for an episode, with its lock; null if none was. */
export async function readPublished(
  episodeId: string,
): Promise<(PublishedText & { readonly lock: StoredLock }) | null> {
  const found = await database().published.findFirst({
    where: { ...ALIVE, lock: { episodeId, ...ALIVE } },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    select: { id: true, text: true, at: true, lock: { include: WITH_TEXTS } },
  });
  return found;
}

/** The number of an episode's next lock; removed ones keep theirs. */
export async function nextLockSeq(episodeId: string): Promise<number> {
  const { _max } = await database().numbersLock.aggregate({
    where: { episodeId },
    _max: { seq: true },
  });
  return (_max.seq ?? 0) + 1;
}
