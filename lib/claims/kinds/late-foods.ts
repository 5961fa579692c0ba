import type { FoodSpan } from '../words/foods';
import { foodsIn } from '../words/foods-in';
import type { Quantity } from '../numbers/quantity';
import { isDish } from '../words/dish-word';
import type { Text } from '../words/text';

/** Tokens between a food and the amount that is said of it later. */
const REACH = 22;
/** Tokens before the food in which a nutrient may be what is talked about. */
const TOPIC = 40;

/**
 * The food that was named before, of which an amount is said in words of its own: 'milk, and you will say it is too
 * much, a litre and a half', 'the tuna is a hundred grams drained'. Null where a nutrient is talked about, or the number
 * is of a part of the dish.
 */
export function lateFood(
  text: Text,
  { begin, end, unit }: Quantity,
  before: Quantity | undefined,
): string | null {
  if (!isSetOff(text, begin)) return null;
  const { marks } = text;
  if (marks.at('scope', end) ?? marks.at('trapBehind', end) ?? marks.at('gear', end)) return null;
  const food = lastNamed(text, begin);
  if (!food || isDish(text, food.name) || marks.before('scope', food.to)) return null;
  if (before && before.end > food.from) return null;
  if (unit?.of === 'mass' && marks.lastIn('noun', food.from - TOPIC, begin)) return null;
  for (const other of ['scope', 'weigh', 'self', 'otherDay'] as const)
    if (marks.lastIn(other, food.to, begin)) return null;
  return food.name;
}

/** Whether a number begins words of its own: behind a mark, a verb, 'which'. */
function isSetOff({ marks, tokens }: Text, begin: number): boolean {
  let at = begin;
  for (let filler = marks.before('filler', at); filler; filler = marks.before('filler', at))
    at = filler.from;
  const token = tokens[at - 1];
  if (token?.kind === 'mark' && /^[,.;:–—-]$/.test(token.text)) return true;
  const verb = marks.before('copula', at) ?? marks.before('which', at) ?? marks.before('use', at);
  return verb !== undefined;
}

/** The food that was named last before a token, and not denied: 'no salt'. */
function lastNamed(text: Text, to: number): FoodSpan | undefined {
  const { tokens, marks, language } = text;
  return foodsIn(text, to - REACH, to).findLast(
    ({ from }) =>
      !language.claims.denied.has(tokens[from - 1]?.folded ?? '') && !marks.before('not', from),
  );
}
