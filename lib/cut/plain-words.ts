import { fold, singular } from '#lib/units/plain-words';

/** Words that stand in every title and say nothing of one (common practice, no source). */
const SMALL = new Set(
  'a an and are as at by for from how i in into is it its my of on one or our so that the this to up we what with you your'.split(
    ' ',
  ),
);

/**
 * The words of a text for finding it again elsewhere: lower case, without accents, plural ends and small words.
 * @example plainWords('The Crème pots, with a crumb') // ['creme', 'pot', 'crumb']
 */
export function plainWords(text: string): string[] {
  const words = fold(text).match(/[\p{L}\p{N}]+/gu) ?? [];
  return words.filter((word) => !SMALL.has(word)).map(singular);
}
