import { z } from 'zod';
import { SAID_NUTRIENTS, type Said } from '#lib/shoot/said-entries';

const id = z.string().regex(/^[\w:.-]{1,64}$/, 'An id has 1 to 64 letters, digits or : . - _');

/** Longest line to say, in UTF-16 units. */
const LINE_MAX = 400;
const words = z
  .string()
  .min(1, 'A line has some words')
  .max(LINE_MAX, `A line has at most ${LINE_MAX} characters`)
  .refine((text) => !/\0|\p{Surrogate}/u.test(text), {
    error: 'The line holds a character that cannot be stored',
  });

/** A line that was said, with its numbers. */
export const saidPayload: z.ZodType<Said> = z.strictObject({
  scope: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('day') }),
    z.strictObject({ kind: z.enum(['whole', 'half', 'soFar']), segmentId: id }),
    z.strictObject({ kind: z.literal('portion'), segmentId: id, portionId: id }),
  ]),
  text: words,
  numbers: z
    .array(
      z.strictObject({
        nutrient: z.enum(SAID_NUTRIENTS),
        amount: z.number().min(0).max(1_000_000),
        hedge: z.enum(['exact', 'about', 'atLeast', 'atMost']),
        value: z.number().min(0).max(1_000_000).nullable(),
      }),
    )
    .min(1, 'A line says at least one number')
    .max(SAID_NUTRIENTS.length)
    .refine((all) => new Set(all.map(({ nutrient }) => nutrient)).size === all.length, {
      error: 'A line says each number once',
    }),
});
