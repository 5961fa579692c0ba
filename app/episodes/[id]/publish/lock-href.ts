/** The heading of the numbers lock on Publish. */
export const LOCK_ID = 'numbers-lock';

/** Where the numbers of an episode are locked, and what has changed under the lock is told. */
export function lockHref(episodeId: string): string {
  return `/episodes/${episodeId}/publish#${LOCK_ID}`;
}
