import { fold } from '#lib/units/plain-words';
import type { Language } from '../language';
import type { Token } from './tokens';

/** A food as a text names it: the tokens of its name, and the name as one of it. */
export interface FoodSpan {
  readonly from: number;
  readonly to: number;
  /** The name without what is done to the food, in lower case, in the singular. */
  readonly name: string;
}

/** Tokens that a food's name has at most, with what stands before it. */
const LONGEST = 8;

/**
 * The food whose name, or the words before it, begin at a token: a run of words that belong to names of foods and
 * ends in one that is a food by itself. Null where there is none.
 * @example foodAt(tokenize('toasted pine nuts on top'), 0, ENGLISH)?.name // 'pine nut'
 */
export function foodAt(tokens: readonly Token[], at: number, language: Language): FoodSpan | null {
  const kinds = kindsOf(language);
  let begin: number | null = null;
  let end: number | null = null;
  for (let next = at; next < Math.min(tokens.length, at + LONGEST); next += 1) {
    const token = tokens[next];
    if (token?.kind !== 'word') break;
    const { head, modifier, plain } = kinds(token.folded);
    const named = head || modifier;
    if (!named && !plain) break;
    if (!named && end !== null) break;
    if (named) begin ??= next;
    else if (begin !== null) begin = null;
    if (head) end = next + 1;
    // 'salt pepper cumin' are three.
    if (head && !modifier) break;
  }
  if (begin === null || end === null || begin >= end) return null;
  const tail = tokens[end];
  if (tail?.kind === 'word' && language.foods.tails.has(language.singular(tail.folded))) end += 1;
  return { from: begin, to: end, name: nameOf(tokens, begin, end, language.singular) };
}

/** What a folded word is in a food’s name. */
interface WordKind {
  readonly head: boolean;
  readonly modifier: boolean;
  readonly plain: boolean;
}

const NONE: WordKind = { head: false, modifier: false, plain: false };
/** Words that are kept: as many as a long text has. */
const MOST_KEPT = 50_000;
const kept = new WeakMap<Language, (folded: string) => WordKind>();

/** What each word is in a food’s name, looked up once for all places at which it stands. */
function kindsOf(language: Language): (folded: string) => WordKind {
  const known = kept.get(language);
  if (known) return known;
  const { foods, singular } = language;
  const words = new Map<string, WordKind>();
  const made = (folded: string): WordKind => {
    const before = words.get(folded);
    if (before) return before;
    const one = singular(folded);
    const head = foods.heads.has(one) || foods.heads.has(folded);
    const modifier = foods.modifiers.has(folded) || foods.modifiers.has(one);
    const plain = foods.plain.has(folded);
    const kind = head || modifier || plain ? { head, modifier, plain } : NONE;
    if (words.size < MOST_KEPT) words.set(folded, kind);
    return kind;
  };
  kept.set(language, made);
  return made;
}

/** The name of a stretch of tokens: in lower case, the last word in the singular. */
export function nameOf(
  tokens: readonly Token[],
  from: number,
  to: number,
  singular: (word: string) => string,
): string {
  return tokens
    .slice(from, to)
    .map(({ text, folded, hyphened }, index, all) => {
      const lower = text.toLowerCase();
      const last = index === all.length - 1;
      const one = last ? singular(folded) : folded;
      const word =
        last && one !== folded ? lower.slice(0, lower.length) && oneOf(lower, folded, one) : lower;
      return hyphened && index > 0 ? `-${word}` : index > 0 ? ` ${word}` : word;
    })
    .join('');
}

/** The singular with the accents of what was written. */
function oneOf(lower: string, folded: string, one: string): string {
  return folded.startsWith(one) && lower.length === folded.length
    ? lower.slice(0, one.length)
    : one;
}

/** Words that a name of several words has at most. */
const LONGEST_SYNONYM = 3;

/** The words of a food's name as they are compared: folded singulars, by their usual name. */
export function stemsOf(name: string, { foods, singular }: Language): string[] {
  const words = fold(name).match(/[\p{L}\d]+/gu) ?? [];
  const ones = words.map((word) => singular(word));
  const stems: string[] = [];
  for (let at = 0; at < words.length;) {
    const long = longSynonymAt(ones, at, foods);
    const one = ones[at] ?? '';
    const usual =
      long?.name ?? foods.synonyms.get(one) ?? foods.synonyms.get(words[at] ?? '') ?? one;
    stems.push(...usual.split(' '));
    at += long?.length ?? 1;
  }
  return stems;
}

function longSynonymAt(
  words: readonly string[],
  at: number,
  { longSynonyms }: Language['foods'],
): { readonly name: string; readonly length: number } | null {
  for (let length = LONGEST_SYNONYM; length > 1; length -= 1) {
    const name = longSynonyms.get(words.slice(at, at + length).join(' '));
    if (name !== undefined) return { name, length };
  }
  return null;
}

/**
 * A name's words, and shorter ones by which cooks call the same food: without last words that are left out behind others.
 * @example shortNames(['vanilla', 'extract'], ENGLISH) // [['vanilla', 'extract'], ['vanilla']]
 */
export function shortNames(
  words: readonly string[],
  { foods }: Pick<Language, 'foods'>,
): readonly (readonly string[])[] {
  const names = [words];
  let left = words;
  while (foods.leftOut.get(left.at(-1) ?? '')?.has(left.at(-2) ?? '')) {
    left = left.slice(0, -1);
    names.push(left);
  }
  return names;
}

/** Whether a name is that of an ingredient: all words of the one are in the other, the last one among them. */
export function sameFood(name: readonly string[], ingredient: readonly string[]): boolean {
  const [small, large] = name.length <= ingredient.length ? [name, ingredient] : [ingredient, name];
  if (!small.every((word) => large.includes(word))) return false;
  return small.at(-1) === large.at(-1) || small.length > 1 || large[0] === small[0];
}
