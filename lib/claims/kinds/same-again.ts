import type { FoodSpan } from '../words/foods';
import { foodsIn } from '../words/foods-in';
import type { Mark } from '../words/marks';
import { made } from '../numbers/multiples';
import { isDish } from '../words/dish-word';
import type { Quantity } from '../numbers/quantity';
import type { Text } from '../words/text';

/** Tokens from an amount to as much of another food, and from that food to the words. */
const REACH = 14;
const NEAR = 4;

/** 'thirty grams of butter, and the same again of flour', 'flour, same again': as much of another food. */
export function sameAgain(text: Text, quantities: readonly Quantity[]): Quantity[] {
  let next = 0;
  let free = 0;
  return text.marks.all('times').flatMap((mark) => {
    if (mark.role.factor !== 1 || mark.from < free) return [];
    free = mark.to;
    while ((quantities[next]?.begin ?? Infinity) < mark.from) next += 1;
    const before = quantities[next - 1];
    if (before?.said?.kind !== 'amount' || before.killed !== null) return [];
    if (before.said.food === undefined || mark.from - before.end > REACH) return [];
    const food = foodOf(text, mark, before.end);
    if (!food || food.name === before.said.food || isDish(text, food.name)) return [];
    const { low, high, said } = before;
    const end = Math.max(mark.to, food.to);
    return [
      made(text, mark.from, end, low, high, true, { scope: 'dish', ...said, food: food.name }),
    ];
  });
}

/** The food behind the words, or right before them and behind the amount. */
function foodOf(text: Text, { from, to }: Mark<'times'>, begin: number): FoodSpan | null {
  const of = text.language.numbers.of.has(text.tokens[to]?.folded ?? '') ? to + 1 : to;
  const behind = text.food(of);
  if (behind) return behind;
  return foodsIn(text, Math.max(begin, from - NEAR), from).at(-1) ?? null;
}
