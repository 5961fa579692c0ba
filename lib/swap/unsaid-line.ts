import type { RecipeLine } from '#lib/episode/recipe-schema';
import { UNSAID_LINE } from '#lib/episode/unsaid';

/** An ingredient of which nothing is said yet. */
export function unsaidLine(id: string): RecipeLine {
  return {
    ...UNSAID_LINE,
    ...{ id, text: id, note: '' },
    ...{ quantity: null, unit: null, measureName: null, foodId: null, planned: null },
    ...{ match: 'confirmed', orFoodId: null, madeFrom: null, cookMethod: null, retention: null },
    ...{ bounded: [] },
    ...{ state: 'asIs', asBought: false, leftBehind: { kind: 'none' }, spoiltByTake: false },
  };
}
