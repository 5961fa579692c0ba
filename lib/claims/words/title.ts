import type { Language } from '../language';
import { tokenize, type Token } from './tokens';

/** The words of a dish's title as they are compared with those of a text. */
export interface Title {
  readonly tokens: readonly Token[];
  /** Runs of letters in lower case. The last is empty where the title ends with another sign: 'Bars (vegan)'. */
  readonly words: readonly string[];
  /** The same in the singular. */
  readonly stems: readonly string[];
}

/**
 * A title cut into its words.
 * @example titleOf('Lentil Bowls', ENGLISH).stems // ['lentil', 'bowl']
 */
export function titleOf(title: string, { singular }: Pick<Language, 'singular'>): Title {
  const words = title.toLowerCase().split(/[^\p{L}]+/u);
  return { tokens: tokenize(title), words, stems: words.map((word) => singular(word)) };
}
