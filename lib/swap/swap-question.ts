import type { Dish } from '#lib/episode/context';
import { readIngredient } from '#lib/episode/read-ingredient';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import { fold, singular } from '#lib/units/plain-words';

/** A viewer's question what comes of another food in the place of one, or of leaving it out. */
export interface AskedSwap {
  readonly segmentId: string;
  readonly lineId: string;
  /** What the viewer calls the ingredient. */
  readonly own: string;
  /** The food in its place, in the viewer's words; null where it is to be left out. */
  readonly other: string | null;
}

/** What the ingredients of dishes are called, beside their own words: the name of a food by its id. */
export type FoodNames = ReadonlyMap<string, string>;

/** A comment is read as far as this. */
const LONGEST = 4000;
/** A food has no longer name in a comment. */
const MOST_WORDS = 4;

/** No word of a food's name: what leads to one, and what goes on behind it. */
const SMALL = new Set(
  `a an the some any my your our this that it its i you we they he she can could may might would will should do does did
  is are was be use uses used using with by for to of in on at and or but if so then than as like just only also maybe
  try make makes made making put take add have eat cook go swap swapped sub subbed substitute replace switch change
  instead here there please thanks thank what how about because since when ok okay fine work works good still same
  want wanted need needs had has got not no twice once i'm i've it's don't didn't doesn't`.split(
    /\s+/,
  ),
);

const PLACE = /\b(?:instead of|in place of|rather than)\b/gi;
const SWAP =
  /\b(?:replac(?:e|ed|ing)|swap(?:ped|ping)?|switch(?:ed|ing)?|sub(?:bed|bing)?|substitut(?:e|ed|ing)|exchange) (?:out )?([^.?!;\n]{2,60}?) (?:out )?(?:for|with|by|to) ([^.?!;\n]{2,60})/gi;
const WITHOUT =
  /\b(?:can|could|may|should|what if|if) [^.?!\n]{0,40}?\b(?:leave out|leave off|skip|omit|do without|make (?:it|this) without) ([^.?!;\n]{2,60})/gi;

/**
 * The swap that a comment asks for, of an ingredient that one of the dishes has; null where it asks for none, or names
 * nothing that is in any dish.
 * @param dishes those that are likelier meant first
 * @example readSwapQuestion('could I use tempeh instead of the turkey?', dishes, names)?.other // 'tempeh'
 */
export function readSwapQuestion(
  comment: string,
  dishes: readonly Dish[],
  foods: FoodNames,
): AskedSwap | null {
  const text = comment.slice(0, LONGEST).replace(/’/g, "'");
  for (const { one, other, either } of asked(text)) {
    const found = lineOf(one, dishes, foods);
    // 'Swap one for the other' says which only where the dish has one of them.
    const isBoth = either && lineOf(other ?? '', found?.of ?? [], foods) !== null;
    if (found && !isBoth) {
      return { segmentId: found.segmentId, lineId: found.lineId, own: one, other };
    }
  }
  return null;
}

interface Asked {
  /** What may be in a dish. */
  readonly one: string;
  readonly other: string | null;
  /** Whether the words may be meant the other way round. */
  readonly either: boolean;
}

/** Pairs of foods that a text speaks of, each way round where its words leave that open. */
function asked(text: string): Asked[] {
  const placed = [...text.matchAll(PLACE)].flatMap(({ index, 0: words }): Asked[] => {
    const one = firstFood(text.slice(index + words.length));
    const other =
      lastFood(text.slice(0, index)) || laterFood(text.slice(index + words.length), one);
    return one && other ? [{ one, other, either: false }] : [];
  });
  const swapped = [...text.matchAll(SWAP)].flatMap(([, a = '', b = '']): Asked[] => {
    const [first, second] = [firstFood(a), firstFood(b)];
    if (!first || !second) return [];
    return [
      { one: first, other: second, either: true },
      { one: second, other: first, either: true },
    ];
  });
  const left = [...text.matchAll(WITHOUT)].flatMap(([, of = '']): Asked[] => {
    const one = firstFood(of);
    return one ? [{ one, other: null, either: false }] : [];
  });
  return [...placed, ...swapped, ...left];
}

/** Words in their order; what parts a sentence stands among them as a stop. */
const wordsIn = (text: string): string[] =>
  text.match(/[\p{L}\p{N}][\p{L}\p{N}'%-]*|[^\s\p{L}\p{N}]/gu) ?? [];
const isName = (word: string) => /^[\p{L}\p{N}]/u.test(word) && !SMALL.has(word.toLowerCase());

/** The food that words begin with, behind what leads to it. */
function firstFood(text: string): string {
  const all = wordsIn(text.slice(0, 120));
  const from = all.findIndex((word) => isName(word) || !/^[\p{L}\p{N}]/u.test(word));
  const rest = from < 0 ? [] : all.slice(from);
  const end = rest.findIndex((word) => !isName(word));
  return rest.slice(0, Math.min(end < 0 ? rest.length : end, MOST_WORDS)).join(' ');
}

/** The food that words end with. */
function lastFood(text: string): string {
  const all = wordsIn(
    text
      .slice(-120)
      .replace(/(?:\s(?:work|works|be|do|go|taste|fine|good|ok|okay|well))+\s*$/i, ''),
  );
  const start = all.findLastIndex((word) => !isName(word)) + 1;
  return all.slice(Math.max(start, all.length - MOST_WORDS)).join(' ');
}

/** The food that is named behind the ingredient: 'instead of beef, could I use lentils'. */
function laterFood(text: string, one: string): string {
  const [clause = ''] = /^[^.?!\n]*/.exec(text) ?? [];
  const behind = clause.slice(clause.indexOf(one) + one.length);
  const verb = /\b(?:use|with|try|put|add|take|have)\b/i.exec(behind);
  return verb ? firstFood(behind.slice(verb.index + verb[0].length)) : '';
}

const stems = (text: string): string[] =>
  (fold(text).match(/[\p{L}\p{N}]+/gu) ?? []).map((word) => singular(word));

/** The ingredient that is called so: all words of it stand in its own or in its food's name; the shortest of several. */
function lineOf(words: string, dishes: readonly Dish[], foods: FoodNames) {
  const said = stems(words);
  if (said.length === 0) return null;
  for (const dish of dishes) {
    const lines = dish.recipe.lines
      .map((line) => ({ line, has: namesOf(line, foods) }))
      .filter(({ has }) => said.every((word) => has.has(word)))
      .sort((a, b) => a.has.size - b.has.size);
    const [best] = lines;
    if (best) return { of: [dish], segmentId: dish.id, lineId: best.line.id };
  }
  return null;
}

function namesOf(line: RecipeLine, foods: FoodNames): ReadonlySet<string> {
  const own = readIngredient(line.text).map(({ food }) => food);
  return new Set([...own, foods.get(line.foodId ?? '') ?? ''].flatMap(stems));
}
