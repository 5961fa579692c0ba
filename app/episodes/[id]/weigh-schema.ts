import { z } from 'zod';
import { sharesOf } from '#lib/episode/reading-shares';
import { readScaleGrams } from '#lib/units/scale-grams';
import { unclearNumber } from '#lib/units/printed';
import { optionalId, rowId } from '../../_forms/fields';
import { PARTS, WITH } from './weigh-field-names';
import { leftTexts } from './line-schema';

const LONGEST = 40;

/** Milligrams as a scale shows them: one number; null where nothing was typed. */
const optionalScaleGrams = z
  .string()
  .trim()
  .max(LONGEST, 'This is too long for a number.')
  .default('')
  .transform((text, context): number | null => {
    if (text === '') return null;
    const mg = readScaleGrams(text);
    if (mg !== null) return mg;
    const message =
      unclearNumber(text) ?? 'Write the grams that the scale shows: 252, 252.5 or 1252.';
    context.addIssue({ code: 'custom', message });
    return z.NEVER;
  });

const scaleGrams = optionalScaleGrams.transform((mg, context): number => {
  if (mg !== null) return mg;
  const message = 'Write the grams that the scale shows: 252, 252.5 or 1252.';
  context.addIssue({ code: 'custom', message });
  return z.NEVER;
});

/** Milligrams that the page itself sends where a box is ticked. */
const sentMg = z
  .string()
  .regex(/^\d{1,10}$/, 'Something is missing: open the page again.')
  .transform(Number)
  .optional();

const reading = {
  gross: scaleGrams,
  tare: optionalScaleGrams,
  /** The container that was used last comes off. */
  tareAgain: sentMg,
  /** By difference: the reading of the other time, where it was typed along. */
  after: optionalScaleGrams,
  scaleId: rowId,
  method: z.enum(['direct', 'difference', 'total'], { error: 'Choose how it was weighed.' }),
  /** The reading that waits for this one. */
  waitingId: optionalId,
};

interface Container {
  readonly tare: number | null;
  readonly tareAgain?: number | undefined;
}

function oneContainer({ tare, tareAgain }: Container, context: z.RefinementCtx) {
  if (tare === null || tareAgain === undefined) return;
  const message = 'Take the tick off, or empty this: one container comes off.';
  context.addIssue({ code: 'custom', path: ['tare'], message });
}

function containerMg({ tare, tareAgain }: Container): number {
  return tare ?? tareAgain ?? 0;
}

export const weighDishForm = z
  .object({ episodeId: rowId, recipeId: rowId, ...reading })
  .superRefine(oneContainer)
  .transform((sent) => ({ ...sent, containerMg: containerMg(sent) }));

export const weighLineForm = z
  .looseObject({
    episodeId: rowId,
    lineId: rowId,
    of: z.enum(['raw', 'cooked', 'left']).default('raw'),
    ...reading,
    ...leftTexts,
    /** The reading that stands on the scale, where a running total goes on. */
    onScaleId: optionalId,
    /** The ingredient whose scale is to open next. */
    next: optionalId,
  })
  .superRefine(oneContainer)
  .transform((sent, context) => ({
    ...sent,
    containerMg: containerMg(sent),
    shares: sharesSent(sent.lineId, sent, context),
  }));

/** The shares of a reading, by the ingredients that are ticked and their parts; all of it where none is. */
function sharesSent(
  lineId: string,
  sent: Readonly<Record<string, unknown>>,
  context: z.RefinementCtx,
) {
  const others = Object.keys(sent)
    .filter((name) => name.startsWith(WITH) && sent[name] === 'on')
    .map((name) => name.slice(WITH.length))
    .filter((id) => id !== lineId);
  if (others.length === 0) return sharesOf([{ lineId, parts: 1 }]);
  const parts = [lineId, ...others].map((id) => {
    const name = `${PARTS}${id}`;
    const text = sent[name];
    const mg = typeof text === 'string' ? readScaleGrams(text) : null;
    if (mg === null || mg === 0) {
      const message = 'Write its part of it as a number above 0: its grams, or 1 and 1 for halves.';
      context.addIssue({ code: 'custom', path: [name], message });
    }
    return { lineId: id, parts: mg ?? 1 };
  });
  return sharesOf(parts);
}
