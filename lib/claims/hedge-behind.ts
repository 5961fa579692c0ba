import { phraseAt } from './phrases';
import type { Hedge } from './statement';
import type { Text } from './text';

/** A hedge behind a number, and the token behind it. */
export interface HedgeBehind {
  readonly value: Hedge;
  readonly next: number;
}

/**
 * The hedge that begins at a token and softens the number before it: 'or so', 'give or take'; behind a comma only one of
 * several words that ends there: 'five forty, give or take.'
 */
export function hedgeBehind({ tokens, language }: Text, at: number): HedgeBehind | null {
  const said = phraseAt(language.hedgesBehind, tokens, at);
  if (said || tokens[at]?.text !== ',') return said;
  const apart = phraseAt(language.hedgesBehind, tokens, at + 1);
  if (!apart || apart.next - at <= 2) return null;
  const stop = tokens[apart.next];
  return stop === undefined || stop.kind === 'line' || /^[.,;!?)]$/.test(stop.text) ? apart : null;
}

/**
 * Whether a hedge that may stand on either side belongs to the number before it, right behind whose unit or noun it
 * stands: 'four hundred calories give or take thirty one grams of protein'.
 */
export function isOfNumberBefore(
  { tokens, language, marks }: Text,
  { from, to }: { readonly from: number; readonly to: number },
): boolean {
  if (phraseAt(language.hedgesBehind, tokens, from)?.next !== to) return false;
  if (!tokens.slice(from, to).some(({ folded }) => language.numbers.or.has(folded))) return false;
  return marks.before('noun', from) !== undefined || marks.before('unit', from) !== undefined;
}
