/** Where the numbers of an episode are locked, and what has changed under the lock is told. */
export function lockHref(episodeId: string): string {
  return `/episodes/${episodeId}/publish#numbers-lock`;
}
