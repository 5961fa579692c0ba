import type { NumberWords } from '../language';
import { digitsAt, type Apart } from './number-digits';
import { isRange, scaledLow } from './number-ranges';
import { groupAt, wordsAt, type NumberAt, type Part } from './number-words';
import type { Token } from '../words/tokens';

/** A number or range in a text: the tokens from `from` up to, without, `to`. */
export interface NumberSpan {
  readonly from: number;
  readonly to: number;
  readonly low: number;
  readonly high: number;
  readonly digits: boolean;
  readonly words: boolean;
  readonly fraction: boolean;
  readonly parts?: readonly Part[];
  readonly money?: number;
  readonly unsure?: true;
}

/** What the numbers ask of the text around them. */
export interface NumberContext extends Apart {
  readonly words: NumberWords;
  /** Whether something that can be halved, or had one of, begins at a token: a unit, a food. */
  readonly divisible: (at: number) => boolean;
  /** Whether an article before this is a one: a measure or a container. */
  readonly countable: (at: number) => boolean;
  /** Whether 'another' before this is one more: an hour. */
  readonly more?: (at: number) => boolean;
  /** Whether 'grams of protein' or the like begins here, so that what sounds alike is a number. */
  readonly needsNumber: (at: number) => boolean;
}

const folded = (tokens: readonly Token[], at: number): string => tokens[at]?.folded ?? '';

/** The number or range that begins at a token; null where none does. */
export function numberAt(
  tokens: readonly Token[],
  at: number,
  context: NumberContext,
): NumberSpan | null {
  const { words } = context;
  const between = words.between.has(folded(tokens, at));
  const first = oneAt(tokens, between ? at + 1 : at, context);
  if (!first) return null;
  const { next, value, ...rest } = first;
  const link = folded(tokens, next);
  const dash = /^[-–—]$/.test(link);
  if (words.to.has(link) || words.or.has(link)) {
    const second = oneAt(tokens, next + 1, context);
    const low = second ? scaledLow(value, second, tokens, words) : value;
    if (second && second.value > low && isRange(link, between, low, second, first, words, dash)) {
      return {
        from: at,
        to: second.next,
        low,
        high: second.value,
        digits: first.digits || second.digits,
        words: first.words || second.words,
        fraction: first.fraction || second.fraction,
        ...(first.unsure || second.unsure ? { unsure: true } : {}),
      };
    }
  }
  return between ? null : { from: at, to: next, low: value, high: value, ...rest };
}

/** One number: digits, words, parts of one, dozens, with 'and a half' behind it. */
function oneAt(tokens: readonly Token[], at: number, context: NumberContext): NumberAt | null {
  const { words } = context;
  const read =
    digitsAt(tokens, at, words, context) ??
    fractionAt(tokens, at, context) ??
    countAt(tokens, at, words) ??
    wordsAt(tokens, at, words) ??
    articleAt(tokens, at, context) ??
    soundAt(tokens, at, context);
  if (!read) return null;
  // 'point four of a gram', '3/4 of an hour'
  const of =
    words.of.has(folded(tokens, read.next)) && words.article.has(folded(tokens, read.next + 1));
  const part = read.value < 1 && (!read.fraction || read.digits);
  if (of && part && context.divisible(read.next + 2)) {
    return { ...read, next: read.next + 2 };
  }
  const dozens = words.counts.get(folded(tokens, read.next));
  if (dozens === 12 && !read.fraction)
    return { ...read, value: read.value * 12, next: read.next + 1, words: true };
  return withPart(tokens, read, words);
}

/** 'seven and a half', '2 and three quarters': a part of one that is added. */
export function withPart(tokens: readonly Token[], read: NumberAt, words: NumberWords): NumberAt {
  if (!words.and.has(folded(tokens, read.next)) || read.fraction) return read;
  const part = partAt(tokens, read.next + 1, words);
  if (!part) return read;
  const { parts: _, money: __, ...rest } = read;
  return { ...rest, value: read.value + part.value, next: part.next, fraction: true };
}

/** 'a half', 'three quarters', 'a third': a part of one, not followed by what it is a part of. */
export function partAt(
  tokens: readonly Token[],
  at: number,
  words: NumberWords,
): { readonly value: number; readonly next: number } | null {
  const article = words.article.has(folded(tokens, at));
  const count = article ? { value: 1, next: at + 1 } : groupAt(tokens, at, words);
  const bare = !count && words.half.has(folded(tokens, at)) ? { value: 1, next: at } : count;
  const divisor = bare && words.fractions.get(folded(tokens, bare.next));
  return divisor && bare.value < divisor
    ? { value: bare.value / divisor, next: bare.next + 1 }
    : null;
}

/** Part of a measure: 'half an hour', 'three quarters of a pound', 'quarter cup', 'half a lemon'. */
function fractionAt(
  tokens: readonly Token[],
  at: number,
  { words, divisible }: NumberContext,
): NumberAt | null {
  const single = words.fractions.get(folded(tokens, at));
  const part = partAt(tokens, at, words) ?? (single ? { value: 1 / single, next: at + 1 } : null);
  if (!part) return null;
  let next = part.next;
  const counted = words.counts.get(
    folded(tokens, words.article.has(folded(tokens, next)) ? next + 1 : next),
  );
  if (counted === 12) {
    next += words.article.has(folded(tokens, next)) ? 2 : 1;
    return { value: part.value * 12, next, digits: false, words: true, fraction: true };
  }
  const of = words.of.has(folded(tokens, next));
  if (of) next += 1;
  // 'half an onion', 'half of one onion'
  const one = words.cardinals.get(folded(tokens, next)) === 1;
  const article = one || words.article.has(folded(tokens, next));
  if (article) next += 1;
  if (of && !article) return null;
  if (!divisible(next)) return null;
  return { value: part.value, next, digits: false, words: true, fraction: true };
}

/** 'a dozen', 'a couple of', 'a pair of', 'dozen'. */
function countAt(tokens: readonly Token[], at: number, words: NumberWords): NumberAt | null {
  const article = words.article.has(folded(tokens, at));
  const value = words.counts.get(folded(tokens, article ? at + 1 : at));
  if (value === undefined || (!article && value !== 12)) return null;
  let next = at + (article ? 2 : 1);
  if (value < 12 && words.of.has(folded(tokens, next))) next += 1;
  return { value, next, digits: false, words: true, fraction: false };
}

function articleAt(
  tokens: readonly Token[],
  at: number,
  { words, countable, more }: NumberContext,
): NumberAt | null {
  const one = words.article.has(folded(tokens, at)) && countable(at + 1);
  return one || (words.another.has(folded(tokens, at)) && more?.(at + 1) === true)
    ? { value: 1, next: at + 1, digits: false, words: true, fraction: false }
    : null;
}

function soundAt(
  tokens: readonly Token[],
  at: number,
  { words, spoken, needsNumber }: NumberContext,
): NumberAt | null {
  const value = spoken ? words.soundAlikes.get(folded(tokens, at)) : undefined;
  // 'I ate 200 g': what is eaten, and no eight.
  const number = tokens[at + 1]?.kind === 'number';
  return value !== undefined && !number && needsNumber(at + 1)
    ? { value, next: at + 1, digits: false, words: true, fraction: false }
    : null;
}
