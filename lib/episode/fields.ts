import { z } from 'zod';
import { LONGEST_STEP_S } from '#lib/episode/step-limits';

/**
 * Kinds of fields that the parts of an episode share. Masses are integer milligrams, durations integer seconds, shares and
 * quantities exact fractions.
 */

export const id = z.string().min(1).max(64);
export const text = (max: number) => z.string().max(max);
/** Text of one line: a line feed in a title would make lines of its own in whatever is pasted or printed. */
export const oneLine = (max: number) =>
  text(max).regex(/^[^\r\n\u2028\u2029]*$/, 'must be one line, without line breaks');
export const massMg = z.int().min(0).max(1_000_000_000);
export const permille = z.int().min(0).max(1000);
export const seconds = z.int().min(0).max(LONGEST_STEP_S);
export const localDate = z.iso.date();
export const instant = z.iso.datetime();

/** An exact non-negative fraction. */
export const fractionSchema = z.object({
  num: z.int().min(0).max(1_000_000_000),
  den: z.int().min(1).max(1_000_000_000),
});
export type Ratio = z.infer<typeof fractionSchema>;

/** Grams with the range they may lie in. */
export const massRangeSchema = z
  .object({ lowMg: massMg, valueMg: massMg, highMg: massMg })
  .refine((m) => m.lowMg <= m.valueMg && m.valueMg <= m.highMg, {
    message: 'low, value and high must be in order',
  });
export type MassRange = z.infer<typeof massRangeSchema>;
