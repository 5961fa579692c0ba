import { z } from 'zod';
import { rowId } from '../../_forms/fields';

export const copySegmentForm = z.object({
  episodeId: rowId,
  segmentId: rowId,
  amounts: z.enum(['weighed', 'planned']),
});

/** The foods whose labels say what they said last time, their ids between blanks. */
export const sameLabelForm = z.object({
  episodeId: rowId,
  foodIds: z
    .string()
    .transform((text) => [...new Set(text.split(' ').filter(Boolean))])
    .pipe(z.array(rowId).min(1).max(400)),
});
