import { saidShares } from '#lib/foods/said-shares';
import { isAllOf } from './subject-food';
import { sameFood, shortNames, stemsOf, type FoodSpan } from '../words/foods';
import type { Language } from '../language';
import { phraseAt } from '../words/phrases';
import type { Text } from '../words/text';

/** Tokens before a food in which a word may keep it from being named: 'not the', 'you could add'. */
const REACH = 4;

/**
 * Foods that go in, on or beside the dish and are in none of its ingredients, each at its first mention. Without
 * ingredients in the context there are none. `taken`: tokens of numbers and claims, which name foods of their own.
 */
export function namedFoods(text: Text, taken: ReadonlySet<number>): FoodSpan[] {
  const { context, tokens, language } = text;
  if (!context.ingredients) return [];
  const ingredients = context.ingredients.flatMap((name) => {
    const { rest } = saidShares(name);
    const [own = ''] = rest.split(language.judging.keptIn);
    return [...new Set([rest, own])].flatMap((each) =>
      shortNames(stemsOf(each, language), language),
    );
  });
  const titles = [context.dish, ...(context.dishes ?? [])].map((title) =>
    stemsOf(title ?? '', language),
  );
  const told = new Set<string>();
  const named = new Map<string, Named>();
  const nameOf = (name: string): Named => {
    const before = named.get(name);
    if (before) return before;
    const stems = stemsOf(name, language);
    const title = titles.some((words) => stems.every((stem) => words.includes(stem)));
    const isKnown = (one: readonly string[]) => ingredients.some((other) => sameFood(one, other));
    const made = { stems, title, known: isKnown(stems) || isListOf(name, isKnown, language) };
    named.set(name, made);
    return made;
  };
  const found: FoodSpan[] = [];
  let blocked: FoodSpan | null = null;
  for (let at = 0; at < tokens.length;) {
    const saying =
      phraseAt(language.foods.sayings, tokens, at) ?? phraseAt(language.foods.labels, tokens, at);
    if (saying) {
      at = saying.next;
      continue;
    }
    const food = text.food(at);
    if (!food) {
      at += 1;
      continue;
    }
    at = food.to;
    const { title, known, stems } = nameOf(food.name);
    if (taken.has(food.from) || taken.has(food.to - 1) || title || isUncounted(text, food))
      continue;
    if (isGotOf(text, food) || isDone(text, food)) continue;
    if (isBlocked(text, food) || isOfDish(text, food) || goesOn(text, blocked, food)) {
      blocked = food;
      continue;
    }
    if (known || told.has(food.name)) continue;
    const again = found.some((other) => sameFood(stems, nameOf(other.name).stems));
    told.add(food.name);
    if (again) continue;
    found.push(food);
  }
  return found;
}

/** A food’s name, as it is compared with the ingredients and the titles. */
interface Named {
  readonly stems: readonly string[];
  readonly title: boolean;
  readonly known: boolean;
}

/** 'chicken peppers and rice': foods that are ingredients each, run together; 'peanut butter' is one. */
function isListOf(
  name: string,
  isKnown: (stems: readonly string[]) => boolean,
  language: Language,
): boolean {
  const words = name.split(/[\s-]+/);
  const last = language.singular(words.at(-1) ?? '');
  if (words.length < 2 || language.foods.takesKind.has(last)) return false;
  return words.slice(1).some((_, index) => {
    const [first, second] = [words.slice(0, index + 1), words.slice(index + 1)];
    if (!language.foods.heads.has(language.singular(first.at(-1) ?? ''))) return false;
    return [first, second].every((part) => isKnown(stemsOf(part.join(' '), language)));
  });
}

/** 'cream that till it is pale', 'salt the water': what is done, and no food; 'the cream that I had' is one. */
function isDone({ tokens, language, marks, sentences }: Text, { from, to }: FoodSpan): boolean {
  const { done } = language.foods;
  if (to - from !== 1 || !done.verbs.has(tokens[from]?.folded ?? '')) return false;
  const before = tokens[from - 1];
  const begins = before === undefined || sentences.of[from - 1] !== sentences.of[from];
  if (!begins && before?.kind !== 'line' && !done.before.has(before?.folded ?? '')) return false;
  if (!done.behind.has(tokens[to]?.folded ?? '')) return false;
  return !language.claims.doers.has(tokens[to + 1]?.folded ?? '') && !marks.at('copula', to + 1);
}

/** 'no butter or cream', 'you could add feta, olives': what held for the food before holds for this one. */
function goesOn(
  { tokens, language, marks }: Text,
  last: FoodSpan | null,
  { from }: FoodSpan,
): boolean {
  if (!last || from - last.to > 3) return false;
  return tokens.slice(last.to, from).every(({ folded, kind }, index) => {
    const or = language.numbers.either.has(folded);
    return (
      or ||
      (kind !== 'line' && (folded === ',' || language.foods.plain.has(folded))) ||
      marks.at('filler', last.to + index) !== undefined
    );
  });
}

function isUncounted({ language, tokens }: Text, { from, to }: FoodSpan): boolean {
  const { uncounted, nothing } = language.foods;
  const head = language.singular(tokens[to - 1]?.folded ?? '');
  return nothing.has(head) || (to - from === 1 && uncounted.has(head));
}

/** 'for the whole cake', 'the beef one', 'the rabbit’s left': a dish, or who does something. */
function isOfDish(text: Text, food: FoodSpan): boolean {
  const other = text.marks.at('kindOf', food.to) !== undefined;
  const owner = text.language.patterns.ownsOrIs.test(text.tokens[food.to - 1]?.text ?? '');
  return other || owner || isAllOf(text, food);
}

/** Tokens between what is got of a food and the food: 'the juice of about half a lemon'. */
const GOT_REACH = 4;

/** 'the juice of half a lemon', '1 lemon, zest and juice': the lemon is what is counted. */
function isGotOf(text: Text, { from, to }: FoodSpan): boolean {
  const { language, tokens } = text;
  const head = language.singular(tokens[to - 1]?.folded ?? '');
  if (to - from !== 1 || !language.foods.gotOf.has(head)) return false;
  if (isAsideOf(text, from)) return true;
  if (!language.numbers.of.has(tokens[to]?.folded ?? '')) return false;
  for (let at = to + 1; at <= to + GOT_REACH && tokens[at]?.kind !== 'line'; at += 1) {
    if (text.food(at)) return true;
  }
  return false;
}

/** Whether a comma leads to a token from a food on its line, with nothing between but what is got of it as well. */
function isAsideOf(text: Text, from: number): boolean {
  const { language, tokens } = text;
  const { and } = language.numbers;
  for (let at = from - 1; at >= Math.max(0, from - GOT_REACH); at -= 1) {
    const word = tokens[at]?.folded ?? '';
    if (word === ',') return text.food(at - 1)?.to === at;
    if (!and.has(word) && !language.foods.gotOf.has(language.singular(word))) return false;
  }
  return false;
}

function isBlocked(text: Text, food: FoodSpan): boolean {
  const { tokens, language, sentences } = text;
  const sentence = sentences.of[food.from];
  if (sentences.asked[sentence ?? 0]) return true;
  let begin = food.from;
  while (language.foods.plain.has(tokens[begin - 1]?.folded ?? '')) begin -= 1;
  for (let at = Math.max(0, begin - REACH); at < food.from; at += 1) {
    if (sentences.of[at] !== sentence) continue;
    const found = phraseAt(language.foods.blockers, tokens, at);
    if (found && found.next >= begin && found.next <= food.from) return true;
  }
  if (wasFormerly(text, food)) return true;
  // 'like a' dish, 'the bakery version', a tool.
  const next = text.marks.at('gear', food.to) ?? text.marks.at('trapBehind', food.to);
  return next !== undefined;
}

/** Tokens from what says that something was once so to the food. */
const FORMER_REACH = 8;

/** 'I used to make it with lard': before, and no longer. */
function wasFormerly({ tokens, language, sentences }: Text, { from }: FoodSpan): boolean {
  const { formerly, nowadays } = language.foods;
  for (let at = from - 1; at >= Math.max(0, from - FORMER_REACH); at -= 1) {
    if (sentences.of[at] !== sentences.of[from] || nowadays.has(tokens[at]?.folded ?? '')) {
      return false;
    }
    const found = phraseAt(formerly, tokens, at);
    if (found && found.next <= from) return true;
  }
  return false;
}
