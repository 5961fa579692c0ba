import type { NumberWords } from '../language';
import { runOn, speltAt } from './number-run-on';
import type { Token } from '../words/tokens';

/** A number as it was read from words or digits: the tokens up to, without, `next`. */
export interface NumberAt {
  readonly value: number;
  readonly next: number;
  readonly digits: boolean;
  readonly words: boolean;
  readonly fraction: boolean;
  /** Two groups said one after the other, which may be two numbers, and money: 'two twenty five' is 2.25 of money. */
  readonly parts?: readonly Part[];
  readonly money?: number;
  readonly unsure?: true;
}

export interface Part {
  readonly value: number;
  readonly from: number;
  readonly next: number;
}

/** A whole number in words. */
export const plain = (value: number, next: number): NumberAt => ({
  value,
  next,
  digits: false,
  words: true,
  fraction: false,
});

export const folded = (tokens: readonly Token[], at: number): string => tokens[at]?.folded ?? '';

/** A number below a hundred in words: 'twelve', 'forty-six'. */
export function groupAt(
  tokens: readonly Token[],
  at: number,
  words: NumberWords,
): { readonly value: number; readonly next: number } | null {
  const value = words.cardinals.get(folded(tokens, at));
  if (value === undefined) return null;
  if (value < 20) return { value, next: at + 1 };
  const ones = words.cardinals.get(folded(tokens, at + 1));
  return ones !== undefined && ones > 0 && ones < 10
    ? { value: value + ones, next: at + 2 }
    : { value, next: at + 1 };
}

/**
 * A whole number or one with a decimal point in words, in every manner of speaking: 'a hundred and twelve',
 * 'fourteen hundred', 'one-twelve', 'one oh five', 'forty-nine point six'. Null where none begins.
 */
export function wordsAt(tokens: readonly Token[], at: number, words: NumberWords): NumberAt | null {
  if (words.point.has(folded(tokens, at))) return pointAt(tokens, at, plain(0, at), words);
  const spelt = speltAt(tokens, at, words);
  if (spelt) return spelt;
  const article = words.article.has(folded(tokens, at));
  const first = article
    ? { value: 1, next: at + 1 }
    : (groupAt(tokens, at, words) ?? bareHundred(tokens, at, words));
  if (!first) return null;
  const after = folded(tokens, first.next);
  if (words.hundred.has(after) || words.thousand.has(after)) {
    const read = scaledAt(tokens, first, words);
    return pointAt(tokens, read.next, read, words);
  }
  if (article) return null;
  const run = runOn(tokens, at, first, words);
  return pointAt(tokens, run.next, run, words);
}

/** 'hundred and fifty' without its one; not of 'a few hundred and fifty'. */
function bareHundred(
  tokens: readonly Token[],
  at: number,
  words: NumberWords,
): { readonly value: number; readonly next: number } | null {
  if (!words.hundred.has(folded(tokens, at)) || words.vague.has(folded(tokens, at - 1)))
    return null;
  if (tokens[at - 1]?.kind === 'number') return null;
  return { value: 1, next: at };
}

/** Hundreds and thousands behind a first group. */
function scaledAt(
  tokens: readonly Token[],
  first: { readonly value: number; readonly next: number },
  words: NumberWords,
): NumberAt {
  let { value, next } = first;
  let thousands = 0;
  if (words.hundred.has(folded(tokens, next))) {
    value *= 100;
    next += 1;
    const rest = restAt(tokens, next, words);
    if (rest) ({ value, next } = { value: value + rest.value, next: rest.next });
  }
  if (words.thousand.has(folded(tokens, next))) {
    thousands = value * 1000;
    next += 1;
    const and = words.and.has(folded(tokens, next)) ? next + 1 : next;
    const more = groupAt(tokens, and, words) ?? articleOne(tokens, and, words);
    value = 0;
    if (more && words.hundred.has(folded(tokens, more.next))) {
      const below = scaledAt(tokens, more, words);
      ({ value, next } = below);
    } else if (more && !articleOne(tokens, and, words)) {
      ({ value, next } = runOn(tokens, and, more, words));
    }
  }
  return plain(thousands + value, next);
}

function articleOne(
  tokens: readonly Token[],
  at: number,
  words: NumberWords,
): { readonly value: number; readonly next: number } | null {
  return words.article.has(folded(tokens, at)) ? { value: 1, next: at + 1 } : null;
}

/** What follows a hundred: 'and twelve', 'sixty eight'. */
export function restAt(
  tokens: readonly Token[],
  at: number,
  words: NumberWords,
): { readonly value: number; readonly next: number } | null {
  const and = words.and.has(folded(tokens, at)) ? at + 1 : at;
  const digits = tokens[and]?.text ?? '';
  // 'a hundred and 12', as captions mix them.
  if (/^[1-9]\d?$/.test(digits)) return { value: Number(digits), next: and + 1 };
  const rest = groupAt(tokens, and, words);
  if (!rest || words.hundred.has(folded(tokens, rest.next))) return null;
  // 'five hundred and five fifty' are two numbers.
  const more = rest.value < 10 ? groupAt(tokens, rest.next, words) : null;
  return more && more.value > 9 ? null : rest;
}

/** 'point six', 'point two five', 'point twenty-five' behind a number or alone. */
function pointAt(
  tokens: readonly Token[],
  at: number,
  whole: NumberAt,
  words: NumberWords,
): NumberAt {
  if (!words.point.has(folded(tokens, at))) return whole;
  let next = at + 1;
  let digits = '';
  for (;;) {
    const nought = words.nought.has(folded(tokens, next)) && digits !== '';
    const group = nought ? { value: 0, next: next + 1 } : groupAt(tokens, next, words);
    if (!group) break;
    digits += String(group.value);
    next = group.next;
    if (group.value > 9) break;
  }
  if (digits === '') return whole;
  return plain(Number(`${whole.value}.${digits}`), next);
}
