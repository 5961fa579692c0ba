import { z } from 'zod';
import { NUTRIENT_NAMES, type Nutrient } from '#lib/foods/nutrients';
import { plainComment } from '#lib/publish/viewer-comment';
import { readNumber } from '#lib/units/read-typed';
import { unclearNumber } from '#lib/units/printed';
import { optionalId, optionalText, requiredText, revision, rowId } from '../../../../_forms/fields';

const episodeId = rowId;
const replyId = rowId;
const nutrient = z.enum(NUTRIENT_NAMES as unknown as [Nutrient, ...Nutrient[]], {
  error: 'Choose what is counted.',
});

/** The longest comment that is kept. */
const LONGEST = 4000;

export const commentForm = z.object({
  episodeId,
  comment: z
    .string()
    .transform(plainComment)
    .pipe(requiredText('what the viewer wrote: paste the comment', LONGEST)),
});

/** The most that anybody counts of anything in a dish. */
const MOST = 1_000_000;

export const readingForm = z.object({
  episodeId,
  replyId,
  number: z
    .string()
    .trim()
    .max(20, 'This is too long for a number.')
    .default('')
    .superRefine((text, context) => {
      const value = readNumber(text);
      if (value !== null && value > 0 && value <= MOST) return;
      const message = unclearNumber(text) ?? 'Write the viewer’s number as 712 or 10.5.';
      context.addIssue({ code: 'custom', message });
    }),
  nutrient,
  of: z.string().trim().min(1, 'Choose the dish.').max(130),
});

export const saveReplyForm = z.object({
  episodeId,
  replyId,
  rev: revision,
  number: z
    .string()
    .default('')
    .transform((text) => (text === '' ? null : readNumber(text))),
  nutrient: z.union([z.literal('').transform(() => null), nutrient]).default(null),
  segmentId: optionalId,
  slip: optionalText(60).transform((code) => code || null),
  text: requiredText('what you answer', LONGEST),
});

export const removeReplyForm = z.object({ episodeId, replyId, rev: revision });
