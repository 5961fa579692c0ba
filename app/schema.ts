import { z } from 'zod';
import { ingredientList, optionalDate, optionalText, requiredText } from './_forms/fields';
import { optionalWhole } from './_forms/number-fields';

export const newEpisodeForm = z.object({
  title: requiredText('what the episode is called', 160),
  region: z.enum(['US', 'EU'], { error: 'Choose US or EU.' }),
  publishOn: optionalDate,
});

/** The short way: one dish from nothing but its ingredients and into how many portions it goes. */
export const shortWayForm = z.object({
  title: optionalText(160),
  list: ingredientList,
  portions: optionalWhole(1, 1000).transform((count) => count ?? 1),
});

/** The file itself is no text and is read beside these. */
export const bringInForm = z.object({});

/** An episode file is text of a few hundred kilobytes; far above it something else was chosen. */
export const LARGEST_FILE = 20_000_000;

/** A bundle has photos of labels in it, a few MB each, and is held in memory while it is sent. */
export const LARGEST_BUNDLE = 200_000_000;
