import { z } from 'zod';
import { readScaleGrams } from '#lib/units/scale-grams';
import { unclearNumber } from '#lib/units/printed';
import { optionalDate, requiredText, rowId, ticked } from '../_forms/fields';

/** Grams of one of two weights; there must be some. */
function weight(what: string) {
  return z
    .string()
    .trim()
    .max(40, 'This is too long for a number.')
    .default('')
    .transform((text, context): number => {
      const mg = readScaleGrams(text);
      if (mg !== null && mg > 0) return mg;
      context.addIssue({
        code: 'custom',
        message: unclearNumber(text) ?? `Write what it weighed ${what}, in grams: 252.`,
      });
      return z.NEVER;
    });
}

const method = requiredText('how it was cooked: pan, oven, boiled', 80);
/** Said where a cooked weight is odd: it is right all the same. */
const sure = ticked;

/** A person's own raw and cooked weight. */
export const ownWeights = { raw: weight('raw'), cooked: weight('cooked'), method, sure };

export const yieldForm = z.object({ foodId: rowId, ...ownWeights, on: optionalDate });
export const lineYieldForm = z.object({ episodeId: rowId, lineId: rowId, ...ownWeights });
export const keepYieldForm = z.object({ episodeId: rowId, lineId: rowId, method, sure });
export const takeYieldForm = z.object({
  episodeId: rowId,
  lineId: rowId,
  fromFoodId: rowId,
  yieldId: rowId,
});
