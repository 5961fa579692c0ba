import { z } from 'zod';
import { STOCK_ANSWERS } from '#lib/episode/stock-schema';
import { printDay } from '#lib/units/print-date';
import { grams, optionalDate, optionalText, revision, rowId } from '../_forms/fields';
import { optionalWhole } from '../_forms/number-fields';

/** One amount, without a range. */
export const amount = grams.transform((mass, context) => {
  if (mass && mass.lowMg === mass.highMg) return mass.valueMg;
  const message = mass ? 'Write one amount in grams, without a range.' : 'Say how many grams.';
  context.addIssue({ code: 'custom', message });
  return z.NEVER;
});

const lotTexts = { place: optionalText(80), useBy: optionalDate, openedOn: optionalDate };

interface Dates {
  readonly useBy: string | null;
  readonly openedOn: string | null;
}

/** A lot is opened before its use-by is past, or one of the two dates is mistyped. */
function datesInOrder({ useBy, openedOn }: Dates, context: z.RefinementCtx): void {
  if (useBy === null || openedOn === null || openedOn <= useBy) return;
  const message = `Opened on ${printDay(openedOn)}, and use by ${printDay(useBy)} before that: one of the two is mistyped.`;
  context.addIssue({ code: 'custom', path: ['useBy'], message });
}

export const newLotForm = z
  .object({ foodId: rowId, ...lotTexts, grams: amount })
  .superRefine(datesInOrder);
export const lotForm = z
  .object({ lotId: rowId, rev: revision, ...lotTexts })
  .superRefine(datesInOrder);
export const moveForm = z.object({
  lotId: rowId,
  kind: z.enum(['bought', 'counted', 'used', 'thrownAway'], { error: 'Choose what happened.' }),
  grams: amount,
});
export const removeLotForm = z.object({ lotId: rowId, rev: revision });
export const openLotForm = z.object({ lotId: rowId, rev: revision });
export const emptyLotForm = z.object({ lotId: rowId, kind: z.enum(['used', 'thrownAway']) });
export const noneLeftForm = z.object({ foodId: rowId });

export const answerForm = z.object({
  foodId: rowId,
  answer: z.enum(STOCK_ANSWERS, { error: 'Choose one of the three answers.' }),
});

export const keepsOpenForm = z
  .object({
    foodId: rowId,
    openedDays: optionalWhole(0, 3650),
    openedSource: optionalText(120),
  })
  .transform(({ foodId, openedDays, openedSource }) => ({
    foodId,
    opened:
      openedDays === null ? null : { days: openedDays, source: openedSource || 'you said so' },
  }));
