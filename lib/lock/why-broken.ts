import type { EpisodeFile } from '#lib/episode/schema';
import { ENGINE_VERSION, lockHolds, type NumbersLock } from '#lib/lock/numbers-lock';

/**
 * Why a lock does not hold any more, in words; null while it holds.
 * `whyBroken(lock, file)` → `'an ingredient, food, portion or answer under it has changed since'`.
 */
export function whyBroken(
  lock: Pick<NumbersLock, 'inputsSha256' | 'engineVersion'>,
  file: EpisodeFile,
): string | null {
  if (lockHolds(lock, file)) return null;
  return lock.engineVersion === ENGINE_VERSION
    ? 'an ingredient, food, portion or answer under it has changed since'
    : 'the calculation itself has changed with a newer version of the program';
}
