import type { Token } from './tokens';
import { tokenize } from './tokens';

/** Phrases and what they stand for, as a tree of their words: each word leads on to those that may follow it. */
export interface Phrases<T> {
  /** What the words up to here stand for, where they are a phrase. */
  readonly value: T | undefined;
  readonly next: ReadonlyMap<string, Phrases<T>>;
}

interface Growing<T> {
  value: T | undefined;
  readonly next: Map<string, Growing<T>>;
}

/** Puts phrases into a tree; hyphens in them are free. Where one stands twice the first counts. */
export function phrases<T>(entries: Iterable<readonly [phrase: string, value: T]>): Phrases<T> {
  const root: Growing<T> = { value: undefined, next: new Map() };
  for (const [phrase, value] of entries) {
    let node = root;
    for (const { folded } of tokenize(phrase)) {
      let next = node.next.get(folded);
      if (next === undefined) node.next.set(folded, (next = { value: undefined, next: new Map() }));
      node = next;
    }
    if (node !== root) node.value ??= value;
  }
  return root;
}

/** The longest phrase that begins at a token, and the token behind it; null where none does. */
export function phraseAt<T>(
  phrases: Phrases<T>,
  tokens: readonly Token[],
  at: number,
): { readonly value: T; readonly next: number } | null {
  let found: { readonly value: T; readonly next: number } | null = null;
  let node: Phrases<T> | undefined = phrases;
  for (let next = at; next < tokens.length; next += 1) {
    node = node.next.get(tokens[next]?.folded ?? '');
    if (node === undefined) break;
    if (node.value !== undefined) found = { value: node.value, next: next + 1 };
  }
  return found;
}
