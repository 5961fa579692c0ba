import type { Token } from './tokens';
import { tokenize } from './tokens';

/** Phrases and what they stand for, found by their first two words. */
export interface Phrases<T> {
  readonly values: ReadonlyMap<string, T>;
  readonly starts: ReadonlyMap<string, Start>;
}

/** How many tokens the phrases have that begin with one word, by the word behind it, the longest first. */
interface Start {
  readonly alone: readonly number[];
  readonly behind: Map<string, readonly number[]>;
}

/** Puts phrases into a table; hyphens in them are free. Where one stands twice the first counts. */
export function phrases<T>(entries: Iterable<readonly [phrase: string, value: T]>): Phrases<T> {
  const values = new Map<string, T>();
  const starts = new Map<string, { alone: number[]; behind: Map<string, readonly number[]> }>();
  for (const [phrase, value] of entries) {
    const words = tokenize(phrase).map(({ folded }) => folded);
    const key = words.join(' ');
    const [first, second] = words;
    if (first === undefined || values.has(key)) continue;
    values.set(key, value);
    const start = starts.get(first) ?? { alone: [], behind: new Map() };
    starts.set(first, start);
    if (second === undefined) start.alone = [1];
    else start.behind.set(second, [...(start.behind.get(second) ?? []), words.length]);
  }
  for (const { alone, behind } of starts.values()) {
    for (const [second, lengths] of behind) {
      behind.set(second, [...new Set(lengths)].sort((a, b) => b - a).concat(alone));
    }
  }
  return { values, starts };
}

const NONE: readonly number[] = [];

/** How many tokens the phrases may have that begin at a token, the longest first. */
export function lengthsAt<T>(
  { starts }: Phrases<T>,
  tokens: readonly Token[],
  at: number,
): readonly number[] {
  const start = starts.get(tokens[at]?.folded ?? '');
  if (start === undefined) return NONE;
  return start.behind.get(tokens[at + 1]?.folded ?? '') ?? start.alone;
}

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
