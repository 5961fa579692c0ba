import { fold } from '#lib/units/plain-words';
import type { Language } from './language';
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
export function foodAt(
  tokens: readonly Token[],
  at: number,
  { foods, singular }: Language,
): FoodSpan | null {
  let begin: number | null = null;
  let end: number | null = null;
  for (let next = at; next < Math.min(tokens.length, at + LONGEST); next += 1) {
    const token = tokens[next];
    if (token?.kind !== 'word') break;
    const word = singular(token.folded);
    const head = foods.heads.has(word) || foods.heads.has(token.folded);
    const named = head || foods.modifiers.has(token.folded) || foods.modifiers.has(word);
    if (!named && !foods.plain.has(token.folded)) break;
    if (!named && end !== null) break;
    if (named) begin ??= next;
    else if (begin !== null) begin = null;
    if (head) end = next + 1;
    // 'salt pepper cumin' are three.
    if (head && !foods.modifiers.has(token.folded) && !foods.modifiers.has(word)) break;
  }
  if (begin === null || end === null || begin >= end) return null;
  return { from: begin, to: end, name: nameOf(tokens, begin, end, singular) };
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

/** The words of a food's name as they are compared: folded singulars, by their usual name. */
export function stemsOf(name: string, { foods, singular }: Language): string[] {
  const words = fold(name).match(/[\p{L}\d]+/gu);
  return (words ?? []).flatMap((word) => {
    const one = singular(word);
    return (foods.synonyms.get(one) ?? foods.synonyms.get(word) ?? one).split(' ');
  });
}

/** Whether a name is that of an ingredient: all words of the one are in the other, the last one among them. */
export function sameFood(name: readonly string[], ingredient: readonly string[]): boolean {
  const [small, large] = name.length <= ingredient.length ? [name, ingredient] : [ingredient, name];
  if (!small.every((word) => large.includes(word))) return false;
  return small.at(-1) === large.at(-1) || small.length > 1 || large[0] === small[0];
}
