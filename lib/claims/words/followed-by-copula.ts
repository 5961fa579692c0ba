import { saysNumber } from './says-number';
import type { Text } from './text';

/** Whether the part is the subject of what follows: 'the whole tray is', 'per slice:'. */
export function followedByCopula({ marks, tokens, language }: Text, from: number): boolean {
  // 'for a plate of this you're at'
  const at = marks.at('ofThem', from)?.to ?? from;
  if (marks.at('copula', at)) return true;
  // 'a bowl of this at 290 calories'
  const said = at > from ? marks.at('at', at) : undefined;
  if (said && saysNumber(tokens[said.to], language)) return true;
  // 'all in, it comes to'
  const comma = tokens[at]?.text === ',' ? at + 1 : at;
  const word = tokens[comma]?.folded ?? '';
  // 'in a pot that was 610' goes on with the pot.
  const goesOn = comma === at && language.numbers.pointers.has(word);
  const subject = language.claims.subjects.has(word) && !goesOn;
  if (subject && marks.at('copula', comma + 1)) return true;
  const aside = behindAside(tokens, at, language);
  if (aside !== null && (marks.at('copula', aside) || saysNumber(tokens[aside], language)))
    return true;
  // 'a quarter's four ten calories'
  if (language.patterns.ownsOrIs.test(tokens[at - 1]?.text ?? '')) return true;
  return (
    tokens[at]?.text === ':' ||
    tokens[at]?.text === '?' ||
    marks.at('adds', at) !== undefined ||
    // 'Steak Bowl For Under £3'
    (marks.at('cost', at) !== undefined && marks.at('serveTitle', at) === undefined)
  );
}

/** Tokens of an aside between commas. */
const ASIDE = 10;

/** Token behind an aside without a number: 'a sixth, which is what you see, is'; null where none begins. */
function behindAside(tokens: Text['tokens'], at: number, { numbers }: Text['language']) {
  if (tokens[at]?.text !== ',') return null;
  for (let next = at + 1; next <= at + ASIDE; next += 1) {
    const token = tokens[next];
    if (token?.text === ',') return next > at + 1 ? next + 1 : null;
    if (token?.kind !== 'word' || numbers.cardinals.has(token.folded)) return null;
  }
  return null;
}
