import { z } from 'zod';
import { MEND_SCOPES, TEXT_KINDS } from '#lib/episode/edit-schema';
import { optionalId, optionalText, requiredText, revision, rowId } from '../../../_forms/fields';

const episodeId = rowId;
const offset = z
  .string()
  .regex(/^\d{1,8}$/, 'Something is missing: open the page again.')
  .transform(Number);

/** A text that is brought in; the file itself is no text and is read beside these. */
export const textForm = z.object({
  episodeId,
  kind: z.enum(TEXT_KINDS, { error: 'Say what it is.' }),
  name: optionalText(120),
  text: z.string().default(''),
});

/** A newer text in the place of one that is there. */
export const newerTextForm = z.object({
  episodeId,
  textId: rowId,
  rev: revision,
  text: z.string().default(''),
});

export const removeTextForm = z.object({ episodeId, textId: rowId, rev: revision });

/** Where a statement stands: its text and its stretch in it, with the words that were shown there. */
const place = {
  episodeId,
  textId: rowId,
  start: offset,
  end: offset,
  words: z.string().max(2000).default(''),
};

export const nothingForm = z.object(place);

export const heardForm = z.object({
  ...place,
  heard: requiredText('what was really said', 400).transform((text) => text.replace(/\s+/g, ' ')),
});

/** 'day', 'soFar', 'whole:SEGMENT', 'portion:SEGMENT:PORTION'. */
export const aboutForm = z.object({
  ...place,
  about: z
    .string({ error: 'Choose what it is about.' })
    .min(1, 'Choose what it is about.')
    .transform((text, context) => {
      const [scope, segmentId = null, portionId = null] = text.split(' ');
      const known = MEND_SCOPES.find((each) => each === scope);
      if (known) return { scope: known, segmentId, portionId };
      context.addIssue({ code: 'custom', message: 'Choose what it is about.' });
      return z.NEVER;
    }),
});

export const takeBackForm = z.object({ episodeId, mendId: rowId, rev: revision });

export const namedForm = z.object({
  episodeId,
  food: requiredText('which food', 120),
  answer: z.enum(['leftOff', 'none'], { error: 'Say what it was.' }),
  /** The answer that stands, where it is changed. */
  namedId: optionalId,
  rev: z.string().default('').transform(Number),
});

export const askAgainForm = z.object({ episodeId, namedId: rowId, rev: revision });
