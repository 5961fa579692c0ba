import type { Language } from '../language';
import type { Text } from './text';

/** Whether a food has the last word of a dish's title, and no word that the title has not. */
export function isDish({ titles, language }: Text, name: string): boolean {
  const words = name.split(/[ -]/).map(language.singular);
  const { and } = language.numbers;
  return titles.some(({ stems }) => {
    // 'steak and eggs': one of two foods that it names.
    if (words.length === 1 && and.has(stems.at(-2) ?? '')) return false;
    return words.at(-1) === stems.at(-1) && words.every((word) => stems.includes(word));
  });
}

/** Whether a word is a kind of dish, also in the plural: soup, dinners. */
export const isDishWord = (
  word: string,
  { claims, singular }: Pick<Language, 'claims' | 'singular'>,
): boolean => word !== '' && (claims.dishes.has(word) || claims.dishes.has(singular(word)));
