import type { Token } from '#lib/episode/read-ingredient-tokens';

/** The word, number or sign at a place, folded; empty before the first and after the last. */
export const word = (tokens: readonly Token[], at: number): string => tokens[at]?.folded ?? '';

/** The words of some tokens, folded, with a blank between. `phrase(tokenize('In total.'), 0, 2)` → `'in total'`. */
export const phrase = (tokens: readonly Token[], from: number, next: number): string =>
  tokens
    .slice(Math.max(0, from), next)
    .map(({ folded }) => folded)
    .join(' ');
