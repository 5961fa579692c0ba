import { z } from 'zod';
import { unclearNumber } from '#lib/units/printed';
import { readGrams, readQuantity, readRuntime } from '#lib/units/read-quantity';

/**
 * What forms send, as schemas from text: each says in its own words what would be right.
 * A field that was left empty is null, never 0.
 */

/** Text that must be there. `what` names it in the sentence: "the title". */
export function requiredText(what: string, max: number) {
  return z
    .string({ error: `Say ${what}.` })
    .trim()
    .min(1, `Say ${what}.`)
    .max(max, `At most ${max} characters fit here.`);
}

/** Text that may be empty. */
export function optionalText(max: number) {
  return z.string().trim().max(max, `At most ${max} characters fit here.`).default('');
}

/** A box that is ticked or not. */
export const ticked = z
  .literal('on')
  .optional()
  .transform((value) => value === 'on');

/** The id of a row, sent by the page itself. */
export const rowId = z.string().min(1, 'Something is missing: open the page again.').max(64);

/** The id of a row, or null where nothing was chosen. */
export const optionalId = z
  .string()
  .max(64)
  .default('')
  .transform((text) => text || null);

/** The revision that a row was shown at, sent by the page itself. */
export const revision = z
  .string()
  .regex(/^\d{1,9}$/, 'Something is missing: open the page again.')
  .transform(Number);

/** A date, or null where none was given. */
export const optionalDate = z
  .union([z.literal(''), z.iso.date({ error: 'Write a date as 2026-12-17.' })])
  .default('')
  .transform((text) => text || null);

/** A text that a reader makes into a value; empty text is null. */
function read<T>(reader: (text: string) => T | null, message: string) {
  return z
    .string()
    .trim()
    .max(80, 'This is too long for an amount.')
    .default('')
    .transform((text, context): T | null => {
      if (text === '') return null;
      const value = reader(text);
      if (value === null) {
        context.addIssue({ code: 'custom', message: unclearNumber(text) ?? message });
      }
      return value;
    });
}

/** An amount: 2, 1 1/2, 2-3. */
export const amount = read(
  readQuantity,
  'Write an amount as 2, 2.5, 1 1/2 or 2-3; the unit stands beside it.',
);

/** Grams, with a range where it is one. */
export const grams = read(readGrams, 'Write grams as 20, 20 ± 7 or 13-27.');

/** A running time. */
export const runtime = read(readRuntime, 'Write minutes and seconds as 3:25, or 45 s.');

/** Far more than a dish holds; a longer text was pasted by mistake. */
const LONGEST_LIST = 400_000;

/** A list of ingredients as it was pasted. What is wrong in it is told line by line by its reader. */
export const ingredientList = z
  .string()
  .max(LONGEST_LIST, 'This is too long for a list of ingredients: paste those of one dish.')
  .default('')
  .refine((text) => text.trim() !== '', 'Paste or write the ingredients, one on each line.');
