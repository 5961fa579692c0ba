import type { SearchDocument } from '#lib/foods/search-document';

/**
 * The ranking of the search, apart from how foods are found: sums over the words of the query, so that an
 * index and a plain scan give the same numbers. All constants are ours, tuned on common kitchen words.
 */

/** A match earlier in the name counts more: by part between commas. */
const EARLY = [0.1, 0.08, 0.05, 0.02] as const;
/** Off per weight of the name's words that were not asked for, up to a limit. */
const PER_UNASKED = 0.035;
const MOST_UNASKED = 14;
const MISSING_WORD = 0.45;
const RAW_UNSAID = 0.1;
/** On for a food that the synonyms name for exactly this query. */
export const EXACT_NAME = 0.3;

const STATE_WORDS = new Set(
  'raw cooked boiled roasted baked fried grilled steamed braised canned frozen dried dry smoked pickled powder toasted'.split(
    ' ',
  ),
);

/** What the words of a query found in one food. */
export interface Found {
  /** Words of the query that the food matches. */
  readonly matched: number;
  /** Sum of their values. */
  readonly value: number;
  /** Sum of the weights of the name's words that they matched. */
  readonly weight: number;
}

/** The value of one matched word: its quality, a little more where it stands early. */
export function wordValue(quality: number, segment: number): number {
  return quality * (1 + (EARLY[segment] ?? 0));
}

/** How many words of a query a food may lack and still be shown. */
export function allowedMissing(asked: number): number {
  if (asked < 2) return 0;
  return asked < 4 ? 1 : 2;
}

/** Whether a query says in which state the food is. */
export function saysState(stems: readonly string[]): boolean {
  return stems.some((stem) => STATE_WORDS.has(stem));
}

/**
 * The score of a food for a query of `asked` words: about 1 for a plain food that is all that was asked,
 * less for words missing, words not asked for, and what the food is behind by; null if too much is missing.
 */
export function score(
  document: SearchDocument,
  found: Found,
  asked: number,
  stateSaid: boolean,
): number | null {
  const missing = asked - found.matched;
  if (found.matched === 0 || missing > allowedMissing(asked)) return null;
  const unasked = Math.min(MOST_UNASKED, Math.max(0, document.totalWeight - found.weight));
  return (
    found.value / asked -
    MISSING_WORD * missing -
    PER_UNASKED * unasked +
    (document.isRaw && !stateSaid ? RAW_UNSAID : 0) -
    document.prior
  );
}
