import type { LineUnit } from '#lib/episode/schema';

export { STATE_WORDS } from '#lib/foods/state-words';

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
  batch: 'batch (all of it)',
  portion: 'portion',
};
