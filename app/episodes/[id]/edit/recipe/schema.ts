import { z } from 'zod';
import { rowId } from '../../../../_forms/fields';

/** What was pasted, what was shown of it, and the ticks by their keys. */
export const recipeForm = z.looseObject({
  episodeId: rowId,
  text: z.string().min(1, 'Paste the recipe’s data, or the HTML of its page.'),
  version: z.string().max(16).default(''),
});
