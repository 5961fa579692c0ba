import { createHash, timingSafeEqual } from 'node:crypto';

/** SHA-256 of a text, as 64 hexadecimal digits. */
export function sha256Hex(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('hex');
}

/**
 * Whether two secrets are the same. The time it takes tells nothing of where they differ, nor of how long
 * either is: their hashes are compared. Two empty texts are no secret, and not the same.
 */
export function sameSecret(one: string, other: string): boolean {
  const digest = (text: string) => createHash('sha256').update(text, 'utf8').digest();
  return timingSafeEqual(digest(one), digest(other)) && one !== '';
}
