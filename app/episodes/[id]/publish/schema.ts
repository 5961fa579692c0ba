import { z } from 'zod';
import {
  BLOCK_KINDS,
  DESCRIPTION_FORMS,
  DISH_PARTS,
  layoutSchema,
} from '#lib/episode/publish-schema';
import { DROPPABLE, type Droppable } from '#lib/publish/description/what-to-drop';
import { ALLERGENS } from '#lib/foods/food';
import { optionalText, requiredText, revision, rowId } from '../../../_forms/fields';

const episodeId = rowId;

export const copyForm = z.object({
  episodeId,
  /** The text as it was shown; a browser sends its line ends as CRLF. */
  text: z
    .string()
    .min(1, 'There is no text to copy.')
    .max(200_000, 'The text is too long to be kept.')
    .transform((text) => text.replace(/\r\n?/g, '\n')),
  form: z.enum(DESCRIPTION_FORMS).default('plain'),
  without: z.string().max(200).default('').transform(droppable),
});

/** Parts to leave out, as an address names them; what is none is passed over. */
export function droppable(text: string): readonly Droppable[] {
  const named = text.split(',');
  return DROPPABLE.filter((part) => named.includes(part));
}

export const layoutPartForm = z.object({
  episodeId,
  what: z.enum(['up', 'down', 'show', 'hide'], {
    error: 'Something is missing: open the page again.',
  }),
  part: z.enum([...BLOCK_KINDS, ...DISH_PARTS], {
    error: 'Something is missing: open the page again.',
  }),
});

export const limitForm = z.object({
  episodeId,
  limit: z
    .string()
    .trim()
    .regex(/^\d{3,6}$/, 'Write how many characters, from 100 to 100000.')
    .transform(Number)
    .pipe(layoutSchema.shape.limit),
});

export const lockForm = z.object({
  episodeId,
  /** Hash of the inputs as the page showed them: numbers are locked that were seen. */
  inputsSha256: z.string().regex(/^[0-9a-f]{64}$/, 'Something is missing: open the page again.'),
});

export const textsForm = z.object({
  episodeId,
  rev: revision,
  hook: optionalText(600),
  disclosure: optionalText(400),
});

export const webLinkForm = z.object({
  episodeId,
  label: requiredText('what the link is', 80),
  url: z.url({
    protocol: /^https?$/,
    hostname: z.regexes.domain,
    error: 'Write the whole address, as https://example.org/page.',
  }),
});

export const removeWebLinkForm = z.object({ episodeId, linkId: rowId, rev: revision });

export const allergenForm = z.object({
  episodeId,
  foodId: rowId,
  allergen: z.enum(ALLERGENS, { error: 'Something is missing: open the page again.' }),
  standing: z.enum(['confirmed', 'denied'], { error: 'Say whether it is in it.' }),
});

export const askAgainForm = z.object({ episodeId, factId: rowId, rev: revision });
