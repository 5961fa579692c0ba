import { z } from 'zod';
import { optionalText } from './_forms/fields';

/**
 * An episode that is out: whichever of its texts there are. The reader of each says what is too long; the file of
 * captions is no text and is read beside these.
 */
export const outForm = z.object({
  title: optionalText(300),
  captions: z.string().default(''),
  description: z
    .string()
    .default('')
    // A browser sends every line end as two signs.
    .transform((typed) => typed.replace(/\r\n?/g, '\n')),
});
