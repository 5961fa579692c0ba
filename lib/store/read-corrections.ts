import 'server-only';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { ALIVE, byIds } from '#lib/store/load';
import { isHistoryOnly } from '#lib/store/read-locks';
import { pageOf, wanted, type Page, type PageOf } from '#lib/store/page';

/** A lock that a correction stands at, as it was taken. */
export interface LockOfCorrection {
  readonly id: string;
  readonly seq: number;
  readonly sha256: string;
  /** Canonical JSON as `takeLock` made it. */
  readonly snapshot: string;
}

/** A correction with the two locks that it stands between. */
export interface StoredCorrection {
  readonly id: string;
  readonly rev: number;
  readonly reason: string;
  /** Local date, `YYYY-MM-DD`. */
  readonly on: string;
  readonly episodeId: string;
  readonly before: LockOfCorrection;
  readonly after: LockOfCorrection;
}

const LOCK = { select: { id: true, seq: true, sha256: true, snapshot: true, episodeId: true } };

/** Corrections, the last made first: of one episode, or of all. `after` is the last id of the page before. */
export async function readCorrections(
  { episodeId, ...of }: PageOf & { readonly episodeId?: string } = {},
  creatorId = DEFAULT_CREATOR_ID,
): Promise<Page<StoredCorrection>> {
  const found = await database().correction.findMany({
    where: {
      creatorId,
      ...ALIVE,
      ...(episodeId === undefined ? {} : { newLock: { episodeId } }),
      ...(of.after ? { id: { lt: of.after } } : {}),
    },
    orderBy: { id: 'desc' },
    take: wanted(of),
    select: { id: true, rev: true, reason: true, on: true, oldLock: LOCK, newLock: LOCK },
  });
  const page = pageOf(found, of);
  return {
    ...page,
    rows: page.rows.map(({ oldLock, newLock, ...row }) => ({
      ...row,
      episodeId: newLock.episodeId,
      before: lockOf(oldLock),
      after: lockOf(newLock),
    })),
  };
}

function lockOf({ id, seq, sha256, snapshot }: LockOfCorrection): LockOfCorrection {
  return { id, seq, sha256, snapshot };
}

/** Titles of episodes by id; one that is no longer there has none. */
export async function readEpisodeTitles(
  ids: readonly string[],
): Promise<ReadonlyMap<string, string>> {
  const rows = await byIds([...new Set(ids)], (some) =>
    database().episode.findMany({
      where: { ...ALIVE, id: { in: some } },
      select: { id: true, title: true },
    }),
  );
  return new Map(rows.map(({ id, title }) => [id, title]));
}

/** The lock that viewers know the numbers of. */
export interface WentOut extends LockOfCorrection {
  readonly at: Date;
  /** Whether a text with it was copied or a correction was made; else it is only the last one taken. */
  readonly told: boolean;
}

/**
 * The lock whose numbers viewers know: the newest of those that a text was copied with and those that a correction led
 * to. Where there is none of either, the last lock taken, of which the episode's date says whether it is out; null
 * where nothing was ever locked.
 */
export async function readWentOut(episodeId: string): Promise<WentOut | null> {
  const select = { ...LOCK.select, at: true };
  const orderBy = [{ seq: 'desc' as const }, { id: 'desc' as const }];
  const told = await database().numbersLock.findFirst({
    where: {
      ...{ episodeId, ...ALIVE },
      OR: [{ published: { some: ALIVE } }, { correctionsTo: { some: ALIVE } }],
    },
    ...{ select, orderBy },
  });
  const last =
    told ??
    (await database().numbersLock.findFirst({ where: { episodeId, ...ALIVE }, select, orderBy }));
  if (!last || isHistoryOnly(last.snapshot, episodeId)) return null;
  return { ...lockOf(last), at: last.at, told: told !== null };
}

/** A copy that went out, with the number of its lock. */
export interface CopyOut {
  readonly id: string;
  readonly form: string;
  readonly seq: number;
  readonly at: Date;
}

/** The copies that went out of an episode, the last first, without their texts. */
export async function readCopiesOut(episodeId: string, take = 100): Promise<readonly CopyOut[]> {
  const rows = await database().published.findMany({
    where: { ...ALIVE, lock: { episodeId, ...ALIVE } },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    take,
    select: { id: true, form: true, at: true, lock: { select: { seq: true } } },
  });
  return rows.map(({ lock, ...row }) => ({ ...row, seq: lock.seq }));
}

/** Most locks that are looked through for a food which no ingredient has any more. */
const LOOKED_THROUGH = 200;

/**
 * Episodes of which a lock keeps a food, also where no ingredient is of it any more, the last made first. It looks into
 * the locks themselves, so it is asked only where a food's value has changed under what went out.
 */
export async function readEpisodesLockedWith(
  foodId: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<readonly string[]> {
  const rows = await database().numbersLock.findMany({
    where: { creatorId, ...ALIVE, snapshot: { contains: `"${foodId}"` } },
    distinct: ['episodeId'],
    orderBy: { id: 'desc' },
    take: LOOKED_THROUGH,
    select: { episodeId: true },
  });
  return rows.map(({ episodeId }) => episodeId);
}
