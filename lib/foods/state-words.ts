import type { FoodState } from '#lib/foods/food';

/** A food's state in words, the same on screen and in the description. */
export const STATE_WORDS: Readonly<Record<FoodState, string>> = {
  raw: 'raw',
  cooked: 'cooked',
  drained: 'drained',
  dry: 'dry',
  asIs: 'as sold',
};
