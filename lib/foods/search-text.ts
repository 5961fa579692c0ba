import { fold, singular } from '#lib/units/plain-words';

/** A word of a food's name or of a query, folded, with its singular. */
export interface Word {
  /** Folded as written: 'tomatoes'. */
  readonly written: string;
  /** Its singular by rule: 'tomato'. */
  readonly stem: string;
}

/** Words that say nothing about which food is meant. */
const STOP_WORDS: ReadonlySet<string> = new Set(
  'a an and as at by for from if in includes including into is not of on or the to type with'.split(
    ' ',
  ),
);

/**
 * The words of a text in order, without stop words. Letters and digits make words; an apostrophe inside a
 * word is dropped; all else divides. `words('Egg whites, 93%')` → egg, white(s), 93.
 */
export function words(text: string): Word[] {
  const found: Word[] = [];
  const folded = fold(text).replace(/['’]/g, '');
  for (const written of folded.match(/[a-z0-9]+/g) ?? []) {
    if (!STOP_WORDS.has(written)) found.push({ written, stem: singular(written) });
  }
  return found;
}
