import { z } from 'zod';
import type { EpisodeFile } from '#lib/episode/schema';
import { lockHolds } from '#lib/lock/numbers-lock';

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
