import { z } from 'zod';
import { ALLERGENS } from '#lib/foods/food';
import { optionalText, requiredText, revision, rowId } from '../../../_forms/fields';

const episodeId = rowId;

export const copyForm = z.object({
  episodeId,
  /** The text as it was shown; a browser sends its line ends as CRLF. */
  text: z
    .string()
    .min(1, 'There is no text to copy.')
    .max(20_000, 'The text is too long to be kept.')
    .transform((text) => text.replace(/\r\n?/g, '\n')),
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
