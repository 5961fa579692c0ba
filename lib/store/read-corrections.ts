import 'server-only';
import type { EpisodeFile } from '#lib/episode/schema';
import { locksOut, type LockOut } from '#lib/publish/correction/went-out';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { ALIVE, byIds } from '#lib/store/load';
import { ownLocks } from '#lib/store/read-locks';
import { pageOf, wanted, type Page, type PageOf } from '#lib/store/page';
import { localDate } from '#lib/units/local-date';

/** A lock that a correction stands at; what it froze is read by `readSnapshotText`. */
export interface LockOfCorrection {
  readonly id: string;
  readonly seq: number;
  readonly sha256: string;
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

const LOCK = { select: { id: true, seq: true, sha256: true, episodeId: true } };

/** Corrections without what their locks froze, the last made first: of one episode, or of all. `after` is the last id of the page before. */
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

function lockOf({ id, seq, sha256 }: LockOfCorrection): LockOfCorrection {
  return { id, seq, sha256 };
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

/** A lock that viewers know the numbers of. */
export interface WentOut extends LockOfCorrection, LockOut {
  /** Canonical JSON as `takeLock` made it. */
  readonly snapshot: string;
  readonly at: Date;
  /** When a text was first copied with it; null where none was. */
  readonly copiedAt: Date | null;
  /** Whether a text with it was copied or a correction was made; else it is only the last one taken. */
  readonly told: boolean;
}

/** The episode of which it is asked what went out. */
type OutOf = {
  readonly episode: Pick<EpisodeFile['episode'], 'id' | 'publishOn'>;
  readonly kitchen: Pick<EpisodeFile['kitchen'], 'zone'>;
};

/**
 * The locks whose numbers viewers know, as `locksOut` has them, the first first. Where no text was copied and nothing
 * corrected, the last lock taken, of which the episode's date says whether it is out; none where nothing was locked
 * here. A lock that came as history alone is none of them.
 */
export async function readWentOut({ episode, kitchen }: OutOf): Promise<readonly WentOut[]> {
  const where = { episodeId: episode.id, ...ALIVE, ...ownLocks(episode.id) };
  const found = await database().numbersLock.findMany({
    where: {
      ...where,
      AND: { OR: [{ published: { some: ALIVE } }, { correctionsTo: { some: ALIVE } }] },
    },
    select: {
      ...{ id: true, seq: true },
      published: { where: ALIVE, orderBy: { at: 'asc' }, take: 1, select: { at: true } },
      correctionsTo: { where: ALIVE, take: 1, select: { id: true } },
    },
  });
  const told = found.map(({ id, seq, published: [first], correctionsTo }) => ({
    ...{ id, seq, copiedAt: first?.at ?? null, correctedTo: correctionsTo.length > 0 },
    copiedOn: first ? localDate(first.at, kitchen.zone) : null,
  }));
  const out = locksOut(told, episode.publishOn);
  const select = { ...LOCK.select, snapshot: true, at: true };
  if (out.length > 0) {
    const rows = await byIds(
      out.map(({ id }) => id),
      (some) => database().numbersLock.findMany({ where: { id: { in: some } }, select }),
    );
    const locks = new Map(rows.map((row) => [row.id, row]));
    return out.flatMap((each): WentOut[] => {
      const row = locks.get(each.id);
      if (!row) return [];
      const { snapshot, at } = row;
      return [{ ...each, ...lockOf(row), snapshot, at, told: true }];
    });
  }
  const last = await database().numbersLock.findFirst({
    ...{ where, select },
    orderBy: [{ seq: 'desc' }, { id: 'desc' }],
  });
  if (!last) return [];
  const nobody = { copiedOn: null, copiedAt: null, correctedTo: false, told: false };
  return [{ ...nobody, ...lockOf(last), snapshot: last.snapshot, at: last.at }];
}

/** A copy that went out, with the number of its lock. */
export interface CopyOut {
  readonly id: string;
  readonly form: string;
  readonly seq: number;
  readonly at: Date;
}

/** The copies that went out of an episode with locks of its own, the last first, without their texts. */
export async function readCopiesOut(episodeId: string, take = 100): Promise<readonly CopyOut[]> {
  const rows = await database().published.findMany({
    where: { ...ALIVE, lock: { episodeId, ...ALIVE, ...ownLocks(episodeId) } },
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
