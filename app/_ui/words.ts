import type { LineUnit } from '#lib/episode/schema';
import type { FoodState } from '#lib/foods/food';

/** A food's state on screen. */
export const STATE_WORDS: Readonly<Record<FoodState, string>> = {
  raw: 'raw',
  cooked: 'cooked',
  drained: 'drained',
  dry: 'dry',
  asIs: 'as is',
};

/** The units of an ingredient on screen. A serving is the label's own. */
export const UNIT_WORDS: Readonly<Record<LineUnit, string>> = {
  g: 'g',
  kg: 'kg',
  oz: 'oz',
  lb: 'lb',
  ml: 'ml',
  l: 'l',
  tsp: 'tsp',
  tbsp: 'tbsp',
  flOz: 'fl oz',
  cup: 'cup',
  piece: 'piece',
  serving: 'serving (label)',
  pack: 'pack',
};
