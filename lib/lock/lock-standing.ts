import { z } from 'zod';
import type { EpisodeFile } from '#lib/episode/schema';
import { ENGINE_VERSION, lockHolds } from '#lib/lock/numbers-lock';

/** Where an episode's numbers stand: never locked, locked, or locked and then changed underneath. */
export type LockStanding = 'draft' | 'locked' | 'broken';

export const STANDING_WORDS: Readonly<Record<LockStanding, string>> = {
  draft: 'draft',
  locked: 'locked',
  broken: 'lock broken',
};

const frozen = z.object({ inputsSha256: z.string(), engineVersion: z.string() });

/**
 * Holds the last lock's snapshot against the episode as it is now.
 * @param snapshot canonical JSON as `takeLock` made it, or null where none was taken
 * @example lockStanding(takeLock(file).snapshot, file) // 'locked'
 */
export function lockStanding(snapshot: string | null, file: EpisodeFile): LockStanding {
  if (snapshot === null) return 'draft';
  return lockHolds(frozen.parse(JSON.parse(snapshot)), file) ? 'locked' : 'broken';
}

/**
 * Why a kept lock does not hold any more, in words; null while it holds.
 * @param snapshot canonical JSON as `takeLock` made it
 * @example whyBroken(takeLock(file).snapshot, file) // null
 */
export function whyBroken(snapshot: string, file: EpisodeFile): string | null {
  const lock = frozen.parse(JSON.parse(snapshot));
  if (lockHolds(lock, file)) return null;
  return lock.engineVersion === ENGINE_VERSION
    ? 'an ingredient, food, portion or answer under it has changed since'
    : 'the calculation itself has changed with a newer version of the program';
}
