import { stemsOf } from '../words/foods';
import { endWithNoun, type Quantity } from '../numbers/quantity';
import { atOrBehind } from '../words/at-or-behind';
import type { TitleNames } from '../words/title-names';
import { only, type Text } from '../words/text';
import type { DishMention } from './dishes';

/** Tokens from what tells a dish from the others to its number, with a part between: 'tofu, per bowl: 455'. */
const REACH = 5;
/** Dishes that must be told apart where the words are of a food that may go in. */
const SEVERAL = 2;

/**
 * Dishes that are named by words that only their title has: 'the salmon one', 'tofu version: 455 calories', 'GREEN 388
 * kcal / RED 421 kcal'. Without 'one' or 'version' only where a nutrient is said of them at once; and where the words
 * are of a food as well, only where two dishes are told apart.
 * @param others dishes that are named by the last word of their title
 */
export function kindMentions(
  text: Text,
  titles: readonly TitleNames[],
  quantities: readonly Quantity[],
  others: readonly DishMention[],
): DishMention[] {
  const own = ownWords(titles);
  const found: Candidate[] = [];
  const { tokens, language, context } = text;
  let free = 0;
  let next = 0;
  for (let at = 0; at < tokens.length; at += 1) {
    const title = own.get(language.singular(tokens[at]?.folded ?? ''));
    if (at < free || !title || isSmall(text, at)) continue;
    let end = at + 1;
    while (title.stems.includes(language.singular(tokens[end]?.folded ?? ''))) end += 1;
    while ((others[next]?.to ?? Infinity) <= at) next += 1;
    if ((others[next]?.from ?? Infinity) < end) continue;
    const kind = kindBehind(text, at, end);
    const first = begins(text, at);
    const said = first ? saidBehind(text, end, quantities) : null;
    if (kind === null && said === null) continue;
    free = kind ?? end;
    const talkedAbout = title.title === context.dish;
    found.push({
      from: at,
      to: free,
      title: talkedAbout ? null : title.title,
      stems: title.stems,
      sure: kind !== null || (said === 'nutrient' && !isFood(text, at)),
      counted: said === 'nutrient',
    });
  }
  const several = new Set(found.map(({ title }) => title)).size >= SEVERAL;
  const counted = several && found.some((one) => one.counted);
  return found
    .filter(({ sure }) => sure || counted)
    .map(({ sure: _, counted: __, ...mention }) => mention);
}

interface Candidate extends DishMention {
  /** Whether nothing but a dish may be meant. */
  readonly sure: boolean;
  /** Whether a nutrient is said of it. */
  readonly counted: boolean;
}

/** Whether a food is what a dish was named by. */
export function isNamedBy({ language }: Text, { stems }: DishMention, food: string): boolean {
  return stems !== undefined && stemsOf(food, language).every((stem) => stems.includes(stem));
}

/** The words of each title that no other has; none of what comes with a dish. */
function ownWords(titles: readonly TitleNames[]): ReadonlyMap<string, TitleNames> {
  const count = new Map<string, number>();
  for (const { stems } of titles)
    for (const stem of new Set(stems)) count.set(stem, (count.get(stem) ?? 0) + 1);
  return new Map(
    titles.flatMap((title) =>
      title.own.filter((stem) => count.get(stem) === 1).map((stem) => [stem, title] as const),
    ),
  );
}

/** The token behind 'one' or 'version'; null where none stands there. 'One' needs a word that points at it. */
function kindBehind({ marks, tokens, language }: Text, from: number, end: number): number | null {
  const kind = marks.at('kindOf', end);
  if (!kind) return null;
  const counts = language.numbers.cardinals.has(tokens[end]?.folded ?? '');
  const pointed = language.numbers.pointers.has(tokens[from - 1]?.folded ?? '');
  return counts && !pointed ? null : kind.to;
}

/** Whether it begins a line or a clause, with or without 'the'. */
function begins({ tokens, marks, language }: Text, at: number): boolean {
  const from = language.numbers.pointers.has(tokens[at - 1]?.folded ?? '') ? at - 1 : at;
  return tokens[from - 1]?.kind !== 'word' || marks.before('joiner', from) !== undefined;
}

/** Whether a word of a title is one that any text has: 'and', 'on'. */
const isSmall = ({ marks }: Text, at: number) =>
  (['small', 'joiner', 'filler', 'asWord', 'so'] as const).some((cat) => marks.at(cat, at));

const isFood = ({ food }: Text, at: number) => food(at)?.from === at;

/** What is said at once behind it: a nutrient, or a number without anything that it counts; null for all else. */
function saidBehind(
  text: Text,
  end: number,
  quantities: readonly Quantity[],
): 'nutrient' | 'number' | null {
  const quantity = atOrBehind(quantities, end);
  if (!quantity || quantity.killed !== null || endWithNoun(quantity) < end) return null;
  const bare = quantity.said === null && quantity.unit === null && quantity.noun === null;
  if (quantity.said?.kind !== 'nutrient' && !bare) return null;
  const begin = Math.min(quantity.begin, quantity.noun?.from ?? quantity.begin);
  if (begin - end > REACH) return null;
  const links = ['copula', 'joiner', 'scope', 'hedge', 'filler'] as const;
  if (!only(text, end, begin, links)) return null;
  return bare ? 'number' : 'nutrient';
}
