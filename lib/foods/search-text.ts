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

/** Words in -ies whose singular ends in -ie. */
const KEPT_IE: ReadonlySet<string> = new Set(['cookies', 'brownies', 'smoothies', 'calories']);

/** Lower case without accents: 'Crème' → 'creme'. */
export function fold(text: string): string {
  return text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
}

/**
 * The singular of a folded English word, by rule of its ending; short words and words in -ss, -us and -is
 * stay. `singular('tomatoes')` → `'tomato'`, `singular('berries')` → `'berry'`, `singular('leaves')` → `'leaf'`.
 */
export function singular(word: string): string {
  if (word.length < 4 || !word.endsWith('s') || /(ss|us|is)$/.test(word)) return word;
  if (word === 'leaves' || word === 'loaves' || word === 'halves') {
    return `${word.slice(0, -3)}f`;
  }
  if (KEPT_IE.has(word)) return word.slice(0, -1);
  if (word.endsWith('ies') && word.length > 4) return `${word.slice(0, -3)}y`;
  if (/(oes|ches|shes|xes|sses|zes)$/.test(word)) return word.slice(0, -2);
  return word.slice(0, -1);
}

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
