import type { Language } from '../language';
import { phraseAt } from './phrases';
import type { Token } from './tokens';
import { saysNumber } from './says-number';

/** Tokens of one piece between full stops, and pieces on each side of a full stop that are looked at. */
const LONGEST = 9;
const MOST = 12;
/** Pieces that make a chain; fewer say not what leads. */
const LEAST = 4;

type Piece = 'number' | 'noun' | null;

/**
 * What leads in a chain of numbers and nouns that captions part by full stops: nouns in 'calories. Four ten. Protein.
 * Thirty one.', numbers in 'four ten. Calories. Thirty one. Protein.'; null where a full stop is in no such chain, and
 * 'open' where nobody can say which noun is whose.
 */
export function chainLead(
  tokens: readonly Token[],
  stop: number,
  language: Language,
): 'number' | 'noun' | 'open' | null {
  const pieces: Piece[] = [];
  let end = stop;
  while (pieces.length < MOST) {
    const from = startOf(tokens, end);
    const piece = pieceOf(tokens, from, end, language);
    const next = pieces[0];
    const last = piece ?? endOf(tokens, from, end, language);
    if (last === null || last === next) break;
    pieces.unshift(last);
    if (piece === null || tokens[from - 1]?.text !== '.') break;
    end = from - 1;
  }
  if (pieces.length === 0) return null;
  for (let from = stop + 1; pieces.length < 2 * MOST;) {
    const to = stopOf(tokens, from);
    const piece = pieceOf(tokens, from, to, language);
    if (piece === null || piece === pieces.at(-1)) break;
    pieces.push(piece);
    if (tokens[to]?.text !== '.') break;
    from = to + 1;
  }
  if (pieces.length < 3) return null;
  if (pieces[0] === pieces.at(-1) || pieces.length < LEAST) return 'open';
  return pieces[0] ?? null;
}

/** First token of the piece that ends before a full stop. */
function startOf(tokens: readonly Token[], end: number): number {
  let from = end;
  while (from > 0 && end - from < LONGEST && tokens[from - 1]?.text !== '.') from -= 1;
  return from;
}

function stopOf(tokens: readonly Token[], from: number): number {
  let to = from;
  while (to < tokens.length && to - from < LONGEST && tokens[to]?.text !== '.') to += 1;
  return to;
}

/** What a piece is, where it is nothing else. */
function pieceOf(tokens: readonly Token[], from: number, to: number, language: Language): Piece {
  if (from >= to) return null;
  const noun = phraseAt(language.lexicon, tokens, from);
  if (noun?.next === to && noun.value.some(({ cat }) => cat === 'noun')) return 'noun';
  const start = behindLead(tokens, from, to, language);
  let at = start;
  while (at < to && isNumber(tokens, at, language)) at += 1;
  if (at === start) return null;
  if (at === to) return 'number';
  const unit = phraseAt(language.lexicon, tokens, at);
  const gram = unit?.value.some((role) => role.cat === 'unit' && role.of === 'mass');
  return gram && unit?.next === to ? 'number' : null;
}

/** First token behind the words that lead to a number: 'it's', 'it's about'. */
function behindLead(
  tokens: readonly Token[],
  from: number,
  to: number,
  language: Language,
): number {
  let at = from;
  while (at < to) {
    const lead = phraseAt(language.lexicon, tokens, at);
    if (!lead?.value.some(({ cat }) => cat === 'copula' || cat === 'hedge')) break;
    at = lead.next;
  }
  return at;
}

/** What a piece ends with that says more: 'right the protein', 'it has got thirty one'. */
function endOf(tokens: readonly Token[], from: number, to: number, language: Language): Piece {
  if (isNumber(tokens, to - 1, language)) return 'number';
  for (let at = Math.max(from, to - 3); at < to; at += 1) {
    const noun = phraseAt(language.lexicon, tokens, at);
    if (noun?.next === to && noun.value.some(({ cat }) => cat === 'noun'))
      return isNumber(tokens, at - 1, language) ? null : 'noun';
  }
  return null;
}

function isNumber(tokens: readonly Token[], at: number, language: Language): boolean {
  const { numbers } = language;
  const [word, before] = [tokens[at]?.folded ?? '', tokens[at - 1]?.folded ?? ''];
  const scales = [numbers.hundred, numbers.thousand];
  const and = numbers.and.has(word) && scales.some((scale) => scale.has(before));
  const scale = [...scales, numbers.nought].some((words) => words.has(word));
  return saysNumber(tokens[at], language) || scale || and;
}
