import type { Token } from './tokens';
import { tokenize } from './tokens';

/** Phrases and what they stand for, found by their first two words. */
export interface Phrases<T> {
  readonly values: ReadonlyMap<string, T>;
  /** By first word, and by the first two: how many tokens the phrases have that begin so, the longest first. */
  readonly lengths: ReadonlyMap<string, readonly number[]>;
}

/** Puts phrases into a table; hyphens in them are free. Where one stands twice the first counts. */
export function phrases<T>(entries: Iterable<readonly [phrase: string, value: T]>): Phrases<T> {
  const values = new Map<string, T>();
  const lengths = new Map<string, Set<number>>();
  for (const [phrase, value] of entries) {
    const words = tokenize(phrase).map(({ folded }) => folded);
    const key = words.join(' ');
    if (words[0] === undefined || values.has(key)) continue;
    values.set(key, value);
    const start = words.slice(0, 2).join(' ');
    const known = lengths.get(start) ?? new Set();
    lengths.set(start, known.add(words.length));
  }
  return {
    values,
    lengths: new Map([...lengths].map(([word, all]) => [word, [...all].sort((a, b) => b - a)])),
  };
}

/** How many tokens the phrases may have that begin at a token, the longest first. */
export function lengthsAt<T>(
  { lengths }: Phrases<T>,
  tokens: readonly Token[],
  at: number,
): readonly number[] {
  const first = tokens[at]?.folded ?? '';
  const one = lengths.get(first);
  const second = tokens[at + 1]?.folded;
  const more = second === undefined ? undefined : lengths.get(`${first} ${second}`);
  if (more === undefined || one === undefined) return more ?? one ?? NONE;
  return [...more, ...one];
}

const NONE: readonly number[] = [];

/** The longest phrase that begins at a token, and the token behind it; null where none does. */
export function phraseAt<T>(
  phrases: Phrases<T>,
  tokens: readonly Token[],
  at: number,
): { readonly value: T; readonly next: number } | null {
  const first = tokens[at]?.folded;
  if (first === undefined) return null;
  for (const length of lengthsAt(phrases, tokens, at)) {
    if (at + length > tokens.length) continue;
    let key = first;
    for (let more = 1; more < length; more += 1) key += ` ${tokens[at + more]?.folded ?? ''}`;
    const value = phrases.values.get(key);
    if (value !== undefined) return { value, next: at + length };
  }
  return null;
}
