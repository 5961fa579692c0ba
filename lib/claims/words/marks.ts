import type { Role } from '../language';
import type { Phrases } from './phrases';
import type { Token } from './tokens';

export type Category = Role['cat'];
type Of<C extends Category> = Extract<Role, { readonly cat: C }>;

/** A phrase of the language that was found: the tokens from `from` up to, without, `to`. */
export interface Mark<C extends Category = Category> {
  readonly role: Of<C>;
  readonly from: number;
  readonly to: number;
}

/** Tokens before the last one that a part with its verb in one has at most. */
const LONGEST = 4;

/** Where phrases of each category begin and end in a text; the longest at each place. */
export class Marks {
  /** Few phrases begin or end at a token, so that looking through them is quicker than a map. */
  readonly #starts: (Mark[] | undefined)[];
  readonly #ends: (Mark[] | undefined)[];
  /** The marks of each category in order, gathered when they are first asked for. */
  #all: ReadonlyMap<Category, readonly Mark[]> | null = null;

  constructor(
    tokens: readonly Token[],
    lexicons: readonly Phrases<readonly Role[]>[],
    adjectives: ReadonlySet<string>,
  ) {
    this.#starts = new Array<undefined>(tokens.length + 1).fill(undefined);
    this.#ends = new Array<undefined>(tokens.length + 1).fill(undefined);
    for (let from = 0; from < tokens.length; from += 1) {
      for (const lexicon of lexicons) this.#find(tokens, lexicon, from);
    }
    for (let at = 0; at < tokens.length; at += 1) {
      const { text = '', folded = '' } = tokens[at] ?? {};
      const withVerb = text.endsWith("'s") || text.endsWith('’s');
      const without = adjectives.has(folded);
      if (!withVerb && !without) continue;
      for (const lexicon of lexicons) {
        if (withVerb) this.#findWithVerb(tokens, lexicon, at);
        if (without) this.#findWithout(tokens, lexicon, adjectives, at);
      }
    }
  }

  /** The mark of a category that begins at a token. */
  at<C extends Category>(category: C, from: number): Mark<C> | undefined {
    return of(this.#starts[from], category);
  }

  /** Whether any phrase begins at a token. */
  any(from: number): boolean {
    return this.#starts[from] !== undefined;
  }

  /** The mark of a category that ends before a token. */
  before<C extends Category>(category: C, to: number): Mark<C> | undefined {
    return of(this.#ends[to], category);
  }

  /** The last mark of a category that ends in a stretch, nearest to its end. */
  lastIn<C extends Category>(category: C, from: number, to: number): Mark<C> | undefined {
    for (let end = to; end > from; end -= 1) {
      const mark = this.before(category, end);
      if (mark && mark.from >= from) return mark;
    }
    return undefined;
  }

  /** The first mark of a category that begins in a stretch. */
  firstIn<C extends Category>(category: C, from: number, to: number): Mark<C> | undefined {
    for (let at = Math.max(0, from); at < to; at += 1) {
      const mark = this.at(category, at);
      if (mark) return mark;
    }
    return undefined;
  }

  /** All marks of a category in order. */
  all<C extends Category>(category: C): readonly Mark<C>[] {
    const found = (this.#all ??= byCategory(this.#starts)).get(category) ?? [];
    return found as unknown as readonly Mark<C>[];
  }

  /** All phrases that begin at a token, the longest first. */
  #find(tokens: readonly Token[], lexicon: Phrases<readonly Role[]>, from: number): void {
    let node = lexicon.next.get(tokens[from]?.folded ?? '');
    if (node === undefined) return;
    const ways: (readonly Role[] | undefined)[] = [];
    for (let to = from + 1; node !== undefined; to += 1) {
      ways.push(node.value);
      node = to < tokens.length ? node.next.get(tokens[to]?.folded ?? '') : undefined;
    }
    for (let length = ways.length; length > 0; length -= 1) {
      for (const role of ways[length - 1] ?? []) this.#put({ role, from, to: from + length });
    }
  }

  /** Parts whose last word has its verb in one: 'each one’s four hundred', 'mine’s less'. */
  #findWithVerb(tokens: readonly Token[], lexicon: Phrases<readonly Role[]>, at: number): void {
    const last = (tokens[at]?.folded ?? '').slice(0, -1);
    for (let from = Math.max(0, at - LONGEST); from <= at; from += 1) {
      let node: Phrases<readonly Role[]> | undefined = lexicon;
      for (let next = from; next <= at && node; next += 1)
        node = node.next.get(next < at ? (tokens[next]?.folded ?? '') : last);
      this.#putParts(node?.value, from, at + 1);
    }
  }

  /** Parts with words for how big they are: 'the whole enormous pot'; `at`: the first of these words. */
  #findWithout(
    tokens: readonly Token[],
    lexicon: Phrases<readonly Role[]>,
    adjectives: ReadonlySet<string>,
    at: number,
  ): void {
    if (adjectives.has(tokens[at - 1]?.folded ?? '')) return;
    for (let from = Math.max(0, at - LONGEST); from < at; from += 1) {
      let node: Phrases<readonly Role[]> | undefined = lexicon;
      for (let next = from; next < Math.min(tokens.length, at + LONGEST) && node; next += 1) {
        const word = tokens[next]?.folded ?? '';
        if (adjectives.has(word)) continue;
        node = node.next.get(word);
        if (next > at) this.#putParts(node?.value, from, next + 1);
      }
    }
  }

  #putParts(roles: readonly Role[] | undefined, from: number, to: number): void {
    for (const role of roles ?? [])
      if (role.cat === 'scope' || role.cat === 'times') this.#put({ role, from, to });
  }

  /** From left to right and the longest first, so that the one that is there already is the longest. */
  #put(mark: Mark): void {
    const starts = (this.#starts[mark.from] ??= []);
    if (!of(starts, mark.role.cat)) starts.push(mark);
    const ends = (this.#ends[mark.to] ??= []);
    if (!of(ends, mark.role.cat)) ends.push(mark);
  }
}

/** Of each place at most one of a category, which is how they are put there. */
function byCategory(starts: readonly (readonly Mark[] | undefined)[]): Map<Category, Mark[]> {
  const all = new Map<Category, Mark[]>();
  for (const marks of starts) {
    if (marks === undefined) continue;
    for (const mark of marks) {
      const known = all.get(mark.role.cat);
      if (known) known.push(mark);
      else all.set(mark.role.cat, [mark]);
    }
  }
  return all;
}

function of<C extends Category>(
  marks: readonly Mark[] | undefined,
  category: C,
): Mark<C> | undefined {
  if (marks === undefined) return undefined;
  for (const mark of marks) if (mark.role.cat === category) return mark as unknown as Mark<C>;
  return undefined;
}
