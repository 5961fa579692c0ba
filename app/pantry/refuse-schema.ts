import { z } from 'zod';
import { optionalText, rowId, ticked } from '../_forms/fields';
import { optionalWhole } from '../_forms/number-fields';

/** Peel and trim of an own food, as its label form and a form of its own ask for it. */
export const refuseTexts = {
  refusePercent: optionalWhole(0, 99),
  refuseText: optionalText(200),
  refuseInValues: ticked,
};

type RefuseSent = z.output<z.ZodObject<typeof refuseTexts>>;

/** What is bought and not eaten, from its texts; null for none. Words without a percentage are told. */
export function refuseOf(sent: RefuseSent, context: z.RefinementCtx) {
  const { refusePercent: percent, refuseText: text, refuseInValues: inValues } = sent;
  if (percent !== null) return percent === 0 ? null : { percent, text, inValues };
  if (text !== '' || inValues) {
    const message = 'Say how much of it that is, in percent of what is bought: 12.';
    context.addIssue({ code: 'custom', path: ['refusePercent'], message });
  }
  return null;
}

export const refuseForm = z
  .object({ foodId: rowId, versionId: rowId, ...refuseTexts })
  .transform((sent, context) => ({
    foodId: sent.foodId,
    versionId: sent.versionId,
    refuse: refuseOf(sent, context),
  }));
