import { words } from '#lib/foods/search-text';

/** Where foods of one kind stand before any query: their ranks begin here. */
export const TOKEN_RANKS = { table: 0, product: 200 } as const;

const MOST_TOKENS = 24;
const LONGEST = 40;

/** A barcode number in fourteen digits as a word of the index, which no typed word can be. */
export function gtinToken(gtin14: string): string {
  return `~${gtin14}`;
}

/** The words under which a food is filed, each once, and its one rank among all foods of a word. */
export interface SearchTokens {
  readonly tokens: readonly string[];
  readonly rank: number;
}

/**
 * The words of a name as an inverted index files them: singulars without stop words. The rank is the same under
 * every word of a food, so that the foods of two words come in one order: foods of the tables before products,
 * short names before long ones. A right barcode number is one more word.
 * `searchTokens('Oats, rolled', 'table', null)` → `{ tokens: ['oat', 'rolled'], rank: 2 }`.
 */
export function searchTokens(
  name: string,
  kind: keyof typeof TOKEN_RANKS,
  gtin14: string | null,
): SearchTokens {
  const stems = [...new Set(words(name).map(({ stem }) => stem.slice(0, LONGEST)))];
  const rank = TOKEN_RANKS[kind] + Math.min(199, stems.length);
  const kept = stems.slice(0, MOST_TOKENS);
  return { tokens: gtin14 === null ? kept : [...kept, gtinToken(gtin14)], rank };
}
