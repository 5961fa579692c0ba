import type { TextLength } from '#lib/publish/document/render';
import { printCount } from '#lib/units/print';

/** `4,322 of 5,000 characters`; the count in UTF-16 units beside it where some counters count otherwise. */
export function lengthWords(length: TextLength, limit: number): string {
  const words = `${printCount(length.codePoints)} of ${printCount(limit)} characters`;
  if (length.utf16Units === length.codePoints) return `${words}.`;
  return `${words}, ${printCount(length.utf16Units)} as some counters count.`;
}
