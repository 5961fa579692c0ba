import type { LineUnit } from '#lib/episode/recipe-schema';
import { MEASURE_WORDS } from '#lib/units/unit-words';

export { STATE_WORDS } from '#lib/foods/state-words';

/** The units of an ingredient on screen. A serving is the label's own. */
export const UNIT_WORDS: Readonly<Record<LineUnit, string>> = {
  ...MEASURE_WORDS,
  piece: 'piece',
  serving: 'serving (label)',
  pack: 'pack',
  batch: 'batch (all of it)',
  portion: 'portion',
};
