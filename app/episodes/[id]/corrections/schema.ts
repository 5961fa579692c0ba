import { z } from 'zod';
import { LONGEST_REASON } from '#lib/publish/correction/correction-words';
import { requiredText, rowId } from '../../../_forms/fields';

export const correctionForm = z.object({
  episodeId: rowId,
  /** The lock that went out, as the page showed it. */
  lockId: rowId,
  /** Hash of the inputs as the page showed them: numbers are corrected to those that were seen. */
  inputsSha256: z.string().regex(/^[0-9a-f]{64}$/, 'Something is missing: open the page again.'),
  reason: requiredText('why the number is another one now', LONGEST_REASON),
  on: z.iso.date({ error: 'Write a date as 2026-12-17.' }),
});
