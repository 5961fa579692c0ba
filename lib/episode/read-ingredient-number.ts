import Fraction from 'fraction.js';
import type { Problem } from '#lib/result';
import { readQuantity } from '#lib/units/read-quantity';
import type { Token } from '#lib/episode/read-ingredient-tokens';
import { unitAt } from '#lib/episode/read-ingredient-unit';
import {
  CARDINALS,
  COUNTING,
  FRACTIONS,
  LENGTHS,
  UNCLEAR_UNITS,
  UNITS,
} from '#lib/episode/read-ingredient-words';

/** A number or range with the place after it; `fault` says why there is none where one seems written. */
export interface NumberRead {
  readonly low: Fraction | null;
  readonly high: Fraction | null;
  readonly next: number;
  readonly fault: Problem | null;
}

const ONE = new Fraction(1);
/** Above this a fraction as '93/7' is no amount but how lean a meat is. */
const MOST_PARTS = 20;

/** A remark of the reader. */
export function remark(code: string, message: string, facts: Problem['facts'] = {}): Problem {
  return { path: '', code, message, facts };
}

/**
 * The number that begins at a token: digits, fractions, mixed numbers, words ('half a', 'two thirds of a',
 * 'a dozen'). Null where none begins there. An article counts as one.
 * `numberAt(tokenize('1 1/2 cups'), 0)` → 3/2, next 2.
 */
export function numberAt(tokens: readonly Token[], at: number): NumberRead | null {
  const token = tokens[at];
  if (!token) return null;
  if (token.kind === 'number') return isPartOfName(tokens, at) ? null : digitsAt(tokens, at, token);
  return token.kind === 'word' ? wordsAt(tokens, at, token) : null;
}

/** '2% milk', '5-spice powder': the number belongs to the name that follows. */
function isPartOfName(tokens: readonly Token[], at: number): boolean {
  const [sign, word] = [tokens[at + 1], tokens[at + 2]];
  if (sign?.text === '%') return true;
  const joined = sign?.text === '-' && !sign.spaced && word?.kind === 'word' && !word.spaced;
  return joined === true && unitAt(tokens, at + 1) === null;
}

function read(value: Fraction, next: number): NumberRead {
  return { low: value, high: value, next, fault: null };
}

function digitsAt(tokens: readonly Token[], at: number, token: Token): NumberRead {
  const fault = faultOf(token, tokens[at + 1]);
  const value = fault ? null : single(token.text);
  if (value === null) {
    return { low: null, high: null, next: at + 1, fault: fault ?? notRead(token.text) };
  }
  const mixed = value.d === 1n && value.n > 0n ? mixedAt(tokens, at + 1) : null;
  if (mixed) return read(value.add(mixed.value), mixed.next);
  const next = tokens[at + 1];
  if (next?.folded === 'dozen') return read(value.mul(12), skipOf(tokens, at + 2));
  const parts = next && /s$/.test(next.folded) ? FRACTIONS.get(next.folded) : undefined;
  if (parts !== undefined && next?.folded !== 'halves' && tokens[at + 2]?.folded === 'of') {
    return read(value.div(parts), skipArticle(tokens, at + 2));
  }
  return read(value, value.compare(1) < 0 ? skipArticle(tokens, at + 1) : at + 1);
}

function notRead(typed: string): Problem {
  return remark(
    'number-not-read',
    `“${typed}” is no number that can be read here. Write it as 2, 2.5, 1/2 or 1 1/2.`,
    { typed },
  );
}

function faultOf(token: Token, after: Token | undefined): Problem | null {
  const typed = token.text;
  // '2OO g', '20O g': letters where digits should be.
  const joined = after?.kind === 'word' && !after.spaced ? after : null;
  const isWord =
    joined !== null && (/^[a-z'-]{3,}$/.test(joined.folded) || /^[x]$/.test(joined.folded));
  if (joined && !isWord && !UNITS.has(joined.folded) && !isKnownShort(joined.folded)) {
    return notRead(typed + joined.text);
  }
  const unclear = /^[1-9]\d{0,2}(?:,\d{3})+$/.test(typed);
  const point =
    /^[1-9]\d{0,2}\.\d{3}$/.test(typed) && /^(?:g|ml|grams?|mg)$/.test(after?.folded ?? '');
  if (unclear || point) {
    return remark(
      'thousands-or-decimal',
      `“${typed}” may be a whole number or one with decimals. Write it without the ${unclear ? 'comma' : 'point'}, as ${typed.replace(/[.,]/g, '')}, or with one or two decimals.`,
      { typed },
    );
  }
  if (/\/0+$/.test(typed)) {
    return remark('divided-by-zero', `“${typed}” divides by nothing. Write the fraction as 1/2.`, {
      typed,
    });
  }
  if (/^\d+$/.test(typed) && Number(typed) > 1_000_000_000) {
    return remark('number-too-large', `“${typed}” is more than fits in a recipe.`, { typed });
  }
  const ratio = /^(\d+)\/(\d+)$/.exec(typed);
  if (ratio && Number(ratio[1]) > Number(ratio[2]) && Number(ratio[1]) >= MOST_PARTS) {
    return notRead(typed);
  }
  return null;
}

function isKnownShort(word: string): boolean {
  return LENGTHS.has(word) || UNCLEAR_UNITS.has(word) || COUNTING.has(word) || word === 'fl';
}

/** One number as the token has it, exact; null where it is none. */
function single(text: string): Fraction | null {
  if (/^\d{1,9}$/.test(text)) return new Fraction(Number(text));
  const quantity = readQuantity(text);
  if (!quantity || quantity.low !== quantity.high) return null;
  return new Fraction(quantity.low.num, quantity.low.den);
}

/** The fraction of a mixed number: '1 1/2', '1-1/2', '1 and 1/2', '2 and a half'. */
function mixedAt(tokens: readonly Token[], at: number): { value: Fraction; next: number } | null {
  const joined = tokens[at];
  const dashed = joined?.text === '-' && !joined.spaced && tokens[at + 1]?.spaced === false;
  const and = joined?.folded === 'and' || joined?.text === '&';
  const place = dashed || and ? at + 1 : at;
  const token = tokens[place];
  if (token?.kind === 'number' && /[/\u2044½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]/.test(token.text)) {
    const value = single(token.text);
    return value && value.compare(ONE) < 0 ? { value, next: place + 1 } : null;
  }
  if (!and) return null;
  const article = token?.folded === 'a' || token?.folded === 'one';
  const count = article ? 1 : CARDINALS.get(token?.folded ?? '');
  const parts = FRACTIONS.get(tokens[place + 1]?.folded ?? '');
  if (count === undefined || parts === undefined || count >= parts) return null;
  return { value: new Fraction(count, parts), next: place + 2 };
}

/** Rows of words that begin like a number and are the name of a food. */
const NAMES = /^(?:half (?:and|&) half|half-and-half|half-fat|half fat|quarter pounders?)$/;

function wordsAt(tokens: readonly Token[], at: number, token: Token): NumberRead | null {
  const three = [0, 1, 2].map((step) => tokens[at + step]?.folded ?? '');
  if (NAMES.test(three.join(' ')) || NAMES.test(three.slice(0, 2).join(' '))) return null;
  const word = token.folded;
  const [whole = '', parts = ''] = word.split('-');
  const joined = CARDINALS.get(whole);
  if (word.includes('-')) {
    if (joined === undefined) return null;
    const divisor = FRACTIONS.get(parts);
    if (divisor !== undefined)
      return read(new Fraction(joined, divisor), skipArticle(tokens, at + 1));
    const ones = CARDINALS.get(parts);
    return ones !== undefined && joined >= 20 && ones < 10
      ? read(new Fraction(joined + ones), at + 1)
      : null;
  }
  if (word === 'half' || word === 'quarter') {
    const value = new Fraction(1, word === 'half' ? 2 : 4);
    const after = skipArticle(tokens, at + 1);
    if (tokens[after]?.folded === 'dozen') return read(value.mul(12), skipOf(tokens, after + 1));
    return tokens[after] ? read(value, after) : null;
  }
  if (word === 'dozen') return read(new Fraction(12), skipOf(tokens, at + 1));
  const count = word === 'a' || word === 'an' ? 1 : joined;
  if (count === undefined) return null;
  return countedAt(tokens, at + 1, count);
}

/** What follows a number in words: 'third of a', 'dozen', 'hundred and fifty', 'and a half'. */
function countedAt(tokens: readonly Token[], at: number, count: number): NumberRead {
  const after = tokens[at]?.folded ?? '';
  const parts = FRACTIONS.get(after);
  if (parts !== undefined) return read(new Fraction(count, parts), skipArticle(tokens, at + 1));
  if (after === 'dozen') return read(new Fraction(12 * count), skipOf(tokens, at + 1));
  if (after === 'hundred') {
    const and = tokens[at + 1]?.folded === 'and' ? at + 2 : at + 1;
    const more = CARDINALS.get(tokens[and]?.folded ?? '');
    return more === undefined
      ? read(new Fraction(100 * count), at + 1)
      : read(new Fraction(100 * count + more), and + 1);
  }
  const mixed = mixedAt(tokens, at);
  return mixed
    ? read(new Fraction(count).add(mixed.value), mixed.next)
    : read(new Fraction(count), at);
}

function skipOf(tokens: readonly Token[], at: number): number {
  return tokens[at]?.folded === 'of' ? at + 1 : at;
}

/** After a part of one: 'of a', 'of one', 'a'. "of the" stays: it speaks of something said before. */
function skipArticle(tokens: readonly Token[], at: number): number {
  const of = skipOf(tokens, at);
  const article = (of > at ? /^(?:a|an|one|1)$/ : /^(?:a|an)$/).test(tokens[of]?.folded ?? '');
  return article ? of + 1 : of;
}

/** Whether a token stands between the ends of a range. */
export function dividesRange(token: Token | undefined): boolean {
  return token !== undefined && /^(?:-|–|—|−|~|to|or)$/.test(token.folded);
}

/** A number or a range of two: '2–3', '2 to 3', '1 or 2'. The ends must be in order. */
export function rangeAt(tokens: readonly Token[], at: number): NumberRead | null {
  const first = numberAt(tokens, at);
  if (!first || first.fault || !dividesRange(tokens[first.next])) return first;
  const second = numberAt(tokens, first.next + 1);
  if (!second || /^(?:a|an)$/.test(tokens[first.next + 1]?.folded ?? '')) return first;
  if (second.fault) return { ...second, low: null, high: null };
  const typed = tokens
    .slice(at, second.next)
    .map(({ text }) => text)
    .join(' ');
  if (first.low && second.low && first.low.compare(second.low) > 0) {
    return { ...second, low: null, high: null, fault: outOfOrder(typed) };
  }
  if (tokens[second.next]?.kind === 'sign' && dividesRange(tokens[second.next])) {
    const third = numberAt(tokens, second.next + 1);
    if (third) return { low: null, high: null, next: third.next, fault: notRead(typed) };
  }
  return { low: first.low, high: second.high, next: second.next, fault: null };
}

/** The remark of a range whose larger end comes first. */
export function outOfOrder(typed: string): Problem {
  return remark('range-order', `“${typed}” goes down. Write the smaller number first, as 2–3.`, {
    typed,
  });
}
