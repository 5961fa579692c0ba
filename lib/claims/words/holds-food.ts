import { isDish } from './dish-word';
import { sameFood, stemsOf, type FoodSpan } from './foods';
import type { Mark } from './marks';
import type { Text } from './text';

/** Tokens from 'of' to the end of the food that a vessel holds. */
const LONGEST_FOOD = 4;

/** 'one mug of couscous': so much of a food, and no part of the dish. */
export function holdsFood(text: Text, { to }: Mark<'scope'>): boolean {
  const { marks, language, tokens } = text;
  const of = language.numbers.of.has(tokens[to]?.folded ?? '');
  const unit = (marks.before('unit', to + 1) ?? marks.before('unit', to))?.role;
  const food = of && unit?.of === 'container' ? text.food(to + 1) : null;
  if (food === null || food.to - to > LONGEST_FOOD || isDish(text, food.name)) return false;
  return !isWholeDish(text, to + 1, food);
}

/** 'a slice of the meatloaf comes out at': what the part is of is the dish, unless it goes in. */
function isWholeDish({ marks, tokens, language, context }: Text, at: number, food: FoodSpan) {
  const the = language.numbers.pointers.has(tokens[at]?.folded ?? '');
  const stems = stemsOf(food.name, language);
  const own = context.ingredients?.some((one) => sameFood(stems, stemsOf(one, language)));
  return the && !own && marks.at('copula', food.to) !== undefined;
}
