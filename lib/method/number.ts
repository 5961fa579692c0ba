import { CARDINALS, FRACTIONS } from '#lib/episode/read-ingredient-words';
import type { Token } from '#lib/episode/read-ingredient-tokens';
import { readQuantity } from '#lib/units/read-quantity';

/** A number of a text and the token after it. */
export interface NumberAt {
  readonly value: number;
  readonly next: number;
}

/** The number of digits and fractions written together: '20', '1½', '1/2', '2,5'. Null where it is none. */
export function digits(text: string): number | null {
  const read = readQuantity(text);
  return read && read.low === read.high ? read.low.num / read.low.den : null;
}

/** What may stand after a half or a quarter: 'of an', 'an', 'a'. */
function afterPart(tokens: readonly Token[], at: number): number {
  const of = tokens[at]?.folded === 'of' ? at + 1 : at;
  return /^an?$/.test(tokens[of]?.folded ?? '') ? of + 1 : at;
}

function tens(tokens: readonly Token[], at: number): NumberAt | null {
  const word = tokens[at]?.folded ?? '';
  const [whole = '', ones = ''] = word.split('-');
  const value = CARDINALS.get(whole);
  if (value === undefined) return null;
  if (ones !== '') {
    const more = CARDINALS.get(ones);
    return more !== undefined && value >= 20 && more < 10
      ? { value: value + more, next: at + 1 }
      : null;
  }
  const more = value >= 20 ? CARDINALS.get(tokens[at + 1]?.folded ?? '') : undefined;
  return more !== undefined && more < 10
    ? { value: value + more, next: at + 2 }
    : { value, next: at + 1 };
}

function inWords(tokens: readonly Token[], at: number): NumberAt | null {
  const word = tokens[at]?.folded ?? '';
  const after = tokens[at + 1]?.folded ?? '';
  if (word === 'half' || word === 'quarter') {
    return { value: word === 'half' ? 1 / 2 : 1 / 4, next: afterPart(tokens, at + 1) };
  }
  const article = word === 'a' || word === 'an';
  if (article && after === 'couple') {
    return { value: 2, next: tokens[at + 2]?.folded === 'of' ? at + 3 : at + 2 };
  }
  if (article && after === 'hundred') return hundreds(tokens, at + 2, 1);
  // 'a further minute', 'a good hour'
  const skipped = article && /^(?:further|full|whole|good|single|solid|bare|scant)$/.test(after);
  const count = article ? { value: 1, next: skipped ? at + 2 : at + 1 } : tens(tokens, at);
  if (!count) return null;
  const parts = FRACTIONS.get(tokens[count.next]?.folded ?? '');
  if (parts !== undefined) {
    return { value: count.value / parts, next: afterPart(tokens, count.next + 1) };
  }
  if (tokens[count.next]?.folded === 'hundred') {
    return hundreds(tokens, count.next + 1, count.value);
  }
  return count;
}

function hundreds(tokens: readonly Token[], at: number, count: number): NumberAt {
  const rest = tens(tokens, tokens[at]?.folded === 'and' ? at + 1 : at);
  return rest
    ? { value: count * 100 + rest.value, next: rest.next }
    : { value: count * 100, next: at };
}

/**
 * The number that begins at a token, in digits or words, mixed ones too; null where none begins there. An article
 * counts as one. `numberAt(tokenize('1 1/2 hours'), 0)` → 1.5, next 2; of 'three quarters of an hour' 0.75, next 4.
 */
export function numberAt(tokens: readonly Token[], at: number): NumberAt | null {
  const token = tokens[at];
  if (token?.kind !== 'number') return and(tokens, inWords(tokens, at));
  const value = digits(token.text);
  if (value === null) return null;
  const next = tokens[at + 1];
  const part = next?.kind === 'number' && Number.isInteger(value) ? digits(next.text) : null;
  if (part !== null && part > 0 && part < 1) return { value: value + part, next: at + 2 };
  return and(tokens, { value, next: at + 1 });
}

/** 'one and a half', '2 and a quarter': a part that is added before the unit. */
function and(tokens: readonly Token[], read: NumberAt | null): NumberAt | null {
  if (!read || tokens[read.next]?.folded !== 'and') return read;
  const part = partAt(tokens, read.next + 1);
  return part ? { value: read.value + part.value, next: part.next } : read;
}

/** 'a half', 'three quarters': a part of one in words. `partAt(tokenize('a half'), 0)` → 0.5, next 2. */
export function partAt(tokens: readonly Token[], at: number): NumberAt | null {
  const word = tokens[at]?.folded ?? '';
  const count = /^an?$/.test(word) ? 1 : CARDINALS.get(word);
  const parts = FRACTIONS.get(tokens[at + 1]?.folded ?? '');
  return count !== undefined && parts !== undefined && count < parts
    ? { value: count / parts, next: at + 2 }
    : null;
}
