import { z } from 'zod';
import { grams, revision, rowId } from '../../../_forms/fields';
import { optionalPercent } from '../../../_forms/number-fields';

/** What claim words said of a dish are judged by; what is left empty nobody has said. */
export const claimsForm = z.object({
  episodeId: rowId,
  segmentId: rowId,
  rev: revision,
  /** A row of the table by its words, another weight, or nothing. */
  amount: z.string().max(120).default(''),
  grams: grams.transform((read, context) => {
    if (read === null) return null;
    const { lowMg, valueMg, highMg } = read;
    if (lowMg === highMg && valueMg >= 1 && valueMg <= 1_000_000) return valueMg;
    const message = 'Write one weight above 0 and up to 1000 g, as 140.';
    context.addIssue({ code: 'custom', message });
    return z.NEVER;
  }),
  judgedAs: z.enum(['food', 'meal'], { error: 'Say what it is judged as.' }),
  proteinPermille: optionalPercent(),
});
