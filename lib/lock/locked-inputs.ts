import { z } from 'zod';
import type { NumbersLock } from '#lib/lock/numbers-lock';

const snapshotSchema = z.object({ inputsSha256: z.string() });

/**
 * The hash of the inputs that a kept lock's numbers rest on, read from its snapshot. Throws for a snapshot
 * that is none: a lock is written once and never changed.
 */
export function lockedInputs(
  lock: Pick<NumbersLock, 'snapshot' | 'engineVersion'>,
): Pick<NumbersLock, 'inputsSha256' | 'engineVersion'> {
  const { inputsSha256 } = snapshotSchema.parse(JSON.parse(lock.snapshot));
  return { inputsSha256, engineVersion: lock.engineVersion };
}
