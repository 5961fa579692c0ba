import { phraseAt } from '../words/phrases';
import type { Hedge } from '../statement';
import type { Text } from '../words/text';
import { saysNumber } from '../words/says-number';

/** A hedge behind a number, and the token behind it. */
interface HedgeBehind {
  readonly value: Hedge;
  readonly next: number;
}

/**
 * The hedge that begins at a token and softens the number before it: 'or so', 'give or take'; behind a comma only one of
 * several words that ends there: 'five forty, give or take.' Null where it softens the number that follows: 'a cup,
 * roughly two cups'.
 */
export function hedgeBehind(text: Text, at: number): HedgeBehind | null {
  const { tokens, language } = text;
  const said = phraseAt(language.hedgesBehind, tokens, at);
  if (said && isSum(text, at, said.next)) return null;
  if (said) return isAhead(text, at, said) ? null : said;
  if (tokens[at]?.text !== ',') return null;
  const apart = phraseAt(language.hedgesBehind, tokens, at + 1);
  if (!apart || apart.next - at <= 2) return null;
  const stop = tokens[apart.next];
  return stop === undefined || stop.kind === 'line' || /^[.,;!?)]$/.test(stop.text) ? apart : null;
}

/** Whether a hedge that may stand on either side stands before a number. */
function isAhead(text: Text, from: number, { value, next }: HedgeBehind): boolean {
  const { tokens, language, marks } = text;
  const { numbers } = language;
  const follows = tokens[tokens[next]?.kind === 'line' ? next + 1 : next];
  const word = follows?.folded ?? '';
  const number = saysNumber(follows, language) || numbers.article.has(word);
  // 'or so', 'give or take' stand behind a number alone, 'roughly' before one as well.
  const hedge = marks.at('hedge', from);
  if (number && hedge && !isOfNumberBefore(text, hedge)) return true;
  // 'and upwards of twenty five'
  const ahead = marks.at('hedge', from + 1);
  if (ahead && ahead.to > next) return true;
  return value === 'under' || (value === 'justOver' && numbers.of.has(word));
}

/** 'four ten plus eighty', 'thirty one plus another ten': a word that joins the next number softens none. */
function isSum({ tokens, marks, language }: Text, at: number, next: number): boolean {
  if (!marks.at('joiner', at) || tokens[at]?.kind !== 'word') return false;
  const number = tokens[marks.at('filler', next)?.to ?? next];
  return number?.kind === 'number' || language.numbers.cardinals.has(number?.folded ?? '');
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
