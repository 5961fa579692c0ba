import { z } from 'zod';
import { optionalDate, requiredText } from './_forms/fields';

export const newEpisodeForm = z.object({
  title: requiredText('what the episode is called', 160),
  region: z.enum(['US', 'EU'], { error: 'Choose US or EU.' }),
  publishOn: optionalDate,
});

/** The file itself is no text and is read beside these. */
export const bringInForm = z.object({});

/** An episode file is text of a few hundred kilobytes; far above it something else was chosen. */
export const LARGEST_FILE = 20_000_000;
