import { readIngredient } from '#lib/episode/read-ingredient';
import {
  ADJECTIVES,
  ADVERBS,
  NOTE_STARTS,
  PREPARATION,
  STATES,
} from '#lib/episode/read-ingredient-words';
import { fold } from '#lib/units/plain-words';
import { isNumbersRow } from './numbers-row';

const DIVIDER = /[;•·|]|,\s|\s\+\s|\s(?:and|&)\s(?=(?:\d|[½¼¾⅓⅔]|an?\s))/giu;

/**
 * The ingredients of a list that is written on one line, each as it stands there. What is done to one stays with it:
 * '2 onions, finely chopped' is one piece.
 * @example listPieces('80 g oats, 250 ml milk and 1 banana') // ['80 g oats', '250 ml milk', '1 banana']
 */
export function listPieces(text: string): string[] {
  const cuts: { start: number; end: number }[] = [];
  let start = 0;
  for (const match of text.matchAll(DIVIDER)) {
    if (isInBrackets(text, start, match.index)) continue;
    cuts.push({ start, end: match.index });
    start = match.index + match[0].length;
  }
  cuts.push({ start, end: text.length });
  const pieces: { start: number; end: number }[] = [];
  for (const piece of cuts) {
    const words = text.slice(piece.start, piece.end).trim();
    if (words === '') continue;
    const last = pieces.at(-1);
    if (last && isAside(words)) last.end = piece.end;
    else pieces.push({ ...piece });
  }
  return pieces
    .map((piece) => text.slice(piece.start, piece.end).trim())
    .map((piece) => piece.replace(/^(?:and|plus|&)\s+/i, '').replace(/[\s.;,]+$/, ''))
    .filter((piece) => piece !== '');
}

function isInBrackets(text: string, from: number, at: number): boolean {
  const piece = text.slice(from, at);
  const open = Math.max(piece.lastIndexOf('('), piece.lastIndexOf('['));
  return open >= 0 && open > Math.max(piece.lastIndexOf(')'), piece.lastIndexOf(']'));
}

/** Words of what is done to a food, remarks and numbers of it, that are no food themselves. */
function isAside(words: string): boolean {
  if (isNumbersRow(fold(words))) return true;
  const [first = ''] = words
    .toLowerCase()
    .split(/[^\p{L}-]+/u)
    .filter(Boolean);
  if (/^[\d½¼¾⅓⅔]/u.test(words)) return false;
  const known = PREPARATION.has(first) || ADVERBS.has(first) || STATES.has(first);
  const alone = /^[\p{L}-]+$/u.test(words) && ADJECTIVES.has(first);
  return (
    known || alone || NOTE_STARTS.has(first) || /^(?:to|for|or|in|at|about|approx|per)$/.test(first)
  );
}

/** Whether each of several pieces begins with an amount; one without is let pass where three have one. */
export function isList(pieces: readonly string[]): boolean {
  if (pieces.length < 2) return false;
  const amounts = pieces.filter((piece) => hasAmount(piece)).length;
  return amounts >= 2 && amounts * 2 >= pieces.length && hasAmount(pieces[0] ?? '');
}

export function hasAmount(piece: string): boolean {
  const [part] = readIngredient(piece);
  return part !== undefined && part.quantity !== null && part.food !== '';
}
