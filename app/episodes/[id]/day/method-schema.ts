import { z } from 'zod';
import { rowId } from '../../../_forms/fields';

/** Far more than the reader takes, so that it can say its own limit. */
const LONGEST = 400_000;

const text = z
  .string()
  .max(LONGEST, 'This is too long for a method: paste that of one dish.')
  .default('')
  // A browser without script sends every line end as two signs.
  .transform((typed) => typed.replace(/\r\n?/g, '\n'));

/** The form of a method: its text, the text that was read, and a tick and minutes for each step of that. */
export const methodForm = z.looseObject({
  episodeId: rowId,
  segmentId: rowId,
  method: text,
  read: text,
});

export type MethodSent = z.output<typeof methodForm>;
