import { z } from 'zod';
import { number } from '../../../../_forms/number-fields';
import { optionalId, requiredText, revision, rowId } from '../../../../_forms/fields';
import { stepsFrom } from './steps-text';

const steps = z.string().default('').transform(stepsFrom);

const place = { episodeId: rowId, segmentId: rowId, variantId: optionalId, steps };
const food = z
  .string()
  .trim()
  .min(1, 'Choose a food: type its name, then take one of the list.')
  .max(64);

/** The most grams of an ingredient that anybody cooks. */
const MOST_GRAMS = 100_000;

export const otherFoodForm = z.object({ ...place, lineId: rowId, foodId: food });
export const otherAmountForm = z.object({
  ...place,
  lineId: rowId,
  amount: number('how much', 0, MOST_GRAMS),
  unit: z.enum(['g', 'one'], { error: 'Choose grams or pieces.' }),
});
export const leaveOutForm = z.object({ ...place, lineId: rowId });
export const addFoodForm = z.object({
  ...place,
  foodId: food,
  amount: number('how many grams', 0.001, MOST_GRAMS),
});
export const saveSwapForm = z.object({
  ...place,
  rev: revision,
  name: requiredText('what you call it', 120),
});
export const removeSwapForm = z.object({ episodeId: rowId, variantId: rowId, rev: revision });
