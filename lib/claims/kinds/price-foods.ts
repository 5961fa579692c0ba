import type { FoodSpan } from '../words/foods';
import { foodAtEnd, foodsIn } from '../words/foods-in';
import type { Quantity, Said } from '../numbers/quantity';
import { subjectFood } from './subject-food';
import { isDish } from '../words/dish-word';
import { only, type Text } from '../words/text';
import { saysNumber } from '../words/says-number';

/** Why a price is none of one food alone: 'vinegar and soy, fifty cents'. */
const SEVERAL = 'of several foods';

/** 'the salmon was', '59p a tin' of beans, '$4 for the salmon': the one food whose price it is. */
export function ofFood(text: Text, quantity: Quantity): Partial<Said> {
  const subject = subjectFood(text, quantity);
  if (subject !== null) return { scope: 'ingredient', food: subject };
  // 'the salmon is the dear bit, nine pounds for two fillets'
  const counted = saysNumber(text.tokens[quantity.end + 1], text.language);
  const behind = foodBehind(text, quantity.end);
  const food =
    (counted ? null : behind) ??
    foodBeside(text, quantity) ??
    dearFood(text, quantity) ??
    behind ??
    packFood(text, quantity);
  return food !== null ? { scope: 'ingredient', food } : {};
}

/** 'four quid for the mince', 'thirty p of oats', 'a pound’s worth of peppers'. */
function foodBehind(text: Text, end: number): string | null {
  const { tokens, language, marks } = text;
  const worth = marks.at('worth', end);
  if (worth) return foodOf(text, worth.to);
  const next = tokens[end]?.folded ?? '';
  const of = language.numbers.of.has(next);
  const small = marks.at('small', end) && !marks.at('joiner', end);
  const linked = of || (small && next.length <= 3 && !language.numbers.article.has(next));
  return linked ? foodOf(text, end + 1) : null;
}

/** 'salmon $6.50', 'the eggs just 2 dollars', 'beans, tinned, 69p'. */
export function foodBeside(text: Text, quantity: Quantity): string | null {
  let { begin } = quantity;
  for (
    let skip = text.marks.before('filler', begin);
    skip;
    skip = text.marks.before('filler', begin)
  )
    begin = skip.from;
  // 'potatoes, a dollar twenty', 'beans – 65p', 'I got the beans for fifty cents'
  const comma = /^[,:=–—(-]$/.test(text.tokens[begin - 1]?.text ?? '');
  const paid = text.context.form !== 'title' && text.marks.before('serveTitle', begin);
  const linked = comma || (paid && paid.from === begin - 1);
  const to = linked ? begin - 1 : begin;
  for (let at = Math.max(0, to - LONGEST); at < to; at += 1) {
    const food = text.food(at);
    const starts = at === 0 || text.tokens[at - 1]?.kind !== 'word';
    if (!food || food.to > to || (comma && !starts) || isDish(text, food.name)) continue;
    if (food.to < to && !isHow(text, food.to, to)) continue;
    if (isOneOf(text, food)) {
      quantity.killed ??= SEVERAL;
      return null;
    }
    return food.name;
  }
  return null;
}

/** Tokens from a food to its price, with how it is. */
const LONGEST = 4;

/** 'beans, tinned,': words for how a food is, behind a comma. */
function isHow({ tokens, language }: Text, from: number, to: number): boolean {
  if (tokens[from]?.text !== ',') return false;
  const words = tokens.slice(from + 1, to);
  return words.length > 0 && words.every(({ folded }) => language.foods.plain.has(folded));
}

/** Whether another food is joined to it right before: 'vinegar and soy'. */
function isOneOf(text: Text, { from }: FoodSpan): boolean {
  const and = text.language.numbers.and.has(text.tokens[from - 1]?.folded ?? '');
  return and && foodAtEnd(text, from - 1 - LONGEST, from - 1) !== null;
}

/** Tokens from a food to its price where words between say how dear it is. */
const DEAR = 16;

/** 'the sausages are the expensive bit, fair, three quid'. */
function dearFood(text: Text, { begin, end }: Quantity): string | null {
  const dear = text.marks.lastIn('dear', begin - DEAR, begin);
  const part = text.marks.at('scope', end);
  if (!dear || (part && part.role.scope !== 'each')) return null;
  // 'the rice was cheap, so it is nine dollars'
  if (text.marks.firstIn('so', dear.to, begin) ?? text.marks.firstIn('scope', dear.to, begin))
    return null;
  const foods = foodsIn(text, dear.from - DEAR / 2, dear.from);
  return foods.findLast(({ name }) => !isDish(text, name))?.name ?? null;
}

/** Tokens from a food to the price of its pack. */
const PACKED = 7;

/** 'the lentils, sixty p for the whole bag', 'tofu was cheap, a dollar a block'. */
function packFood(text: Text, { begin, end }: Quantity): string | null {
  const { marks, language, tokens } = text;
  const lead = marks.at('serveTitle', end)?.to ?? end;
  const all = marks.at('allOfIt', lead)?.to ?? lead;
  const one = language.numbers.article.has(tokens[all]?.folded ?? '') ? all + 1 : all;
  if (one === end || !marks.at('pack', marks.at('filler', one)?.to ?? one)) return null;
  const links = ['joiner', 'small', 'filler', 'copula', 'hedge', 'dear'] as const;
  const found = foodsIn(text, begin - PACKED, begin).findLast(
    ({ name, to }) => !isDish(text, name) && only(text, to, begin, links),
  );
  return found?.name ?? null;
}

function foodOf(text: Text, at: number): string | null {
  // 'eight dollars for six muffins' is of the dish.
  if (saysNumber(text.tokens[at], text.language) && text.marks.at('thing', at + 1)) return null;
  // 'six euros for the whole cake'
  if (text.marks.at('scope', at) ?? text.marks.at('scope', at - 1)) return null;
  const food = text.food(at) ?? text.food(at + 1);
  return food && food.from - at <= 1 && !isDish(text, food.name) ? food.name : null;
}
