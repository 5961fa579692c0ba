import type { LockStanding } from '#lib/lock/lock-standing';
import type { NumbersToPublish } from '#lib/publish/from-lock';
import { localMoment } from '#lib/units/local-date';

/** How numbers that are shown stand to the episode's last lock. */
export interface LockTold {
  readonly standing: LockStanding;
  /** Whether the numbers that are shown are the lock's; see `NumbersToPublish`. */
  readonly ofLock: boolean;
  /** The lock's moment as it is read, "Sat 12 Dec, 18:02"; null where nobody knows it. */
  readonly at: string | null;
  /** Why it is broken, without a full stop; null where that is told beside it, or it is not broken. */
  readonly reason: string | null;
}

/** Of an episode, or a dish, that no lock has. */
export const UNLOCKED: LockTold = { standing: 'draft', ofLock: false, at: null, reason: null };

/** How the numbers that go out stand to their lock, its moment in the kitchen's time zone. */
export function toldLock({
  standing,
  ofLock,
  lockedAt,
  changed,
  file,
}: Pick<NumbersToPublish, 'standing' | 'ofLock' | 'lockedAt' | 'changed' | 'file'>): LockTold {
  const at = lockedAt === null ? null : localMoment(new Date(lockedAt), file.kitchen.zone);
  return { standing, ofLock, at, reason: changed?.reason ?? null };
}

/**
 * The one owner of how a lock is told: whether it holds, why not, and whose numbers are shown. Numbers of now are never
 * told as locked, as where the lock cannot be read.
 * @example lockWords({ standing: 'broken', ofLock: true, at: 'Sat 12 Dec, 18:02', reason: 'Loaf is gone' })
 * // 'Lock of Sat 12 Dec, 18:02 broken: Loaf is gone. The numbers stay those of the lock.'
 */
export function lockWords({ standing, ofLock, at, reason }: LockTold): string {
  if (standing === 'draft') return 'Not locked: a draft with the numbers of now.';
  if (standing === 'locked') {
    const since = at === null ? '' : ` ${at}`;
    return `Numbers locked${since}, nothing under them has changed.`;
  }
  const whose = ofLock
    ? 'The numbers stay those of the lock.'
    : 'The numbers are those of now, not locked.';
  return `Lock${at === null ? '' : ` of ${at}`} broken${reason === null ? '' : `: ${reason}`}. ${whose}`;
}
