import type { Recipe } from '#lib/episode/recipe-schema';
import { SCALE } from '#seed/demo/kitchen';
import { LABEL } from '#seed/demo/label-foods';
import { FOOD } from '#seed/demo/reference-foods';
import { amount, line, reading } from '#seed/demo/shorthand';

const evening = { at: '2026-12-10T11:40:00.000Z', scaleId: SCALE.flat } as const;
const BOWL = 312;

/** A dish of an earlier episode, stirred again for the meatloaf: an ingredient that is itself a recipe. */
export const GLAZE: Recipe = {
  id: 'recipe-glaze',
  title: 'Tomato and honey glaze',
  lines: [
    line('line-glaze-passata', '130 g tomato passata', LABEL.passata, {
      quantity: amount(130),
      unit: 'g',
    }),
    line('line-glaze-honey', '1 tablespoon honey', FOOD.honey, {
      quantity: amount(1),
      unit: 'tbsp',
    }),
  ],
  weighings: [
    reading('weigh-passata', 'line-glaze-passata', { gross: 442, tare: BOWL }, evening),
    reading('weigh-glaze', null, { gross: 462, tare: BOWL }, { ...evening, kind: 'finished' }),
  ],
  portions: [],
  cooking: null,
  method: 'Stir until the honey is gone.',
};
