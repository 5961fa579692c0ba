import { z } from 'zod';
import type { EpisodeFile } from '#lib/episode/schema';
import { ENGINE_VERSION, lockHolds } from '#lib/lock/numbers-lock';

const frozen = z.object({ inputsSha256: z.string(), engineVersion: z.string() });

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
