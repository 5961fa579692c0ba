import { z } from 'zod';
import { id, oneLine } from '#lib/episode/fields';

/**
 * Where the viewer meets the words: captions or a transcript of what is said, the description under the episode, its
 * title, its thumbnail, a card on the picture.
 */
export const TEXT_KINDS = ['captions', 'description', 'title', 'thumbnail', 'card'] as const;
export type TextKind = (typeof TEXT_KINDS)[number];

/** The longest text that is kept, in UTF-16 units: captions of two hours have some two hundred thousand. */
export const MOST_TEXT = 8_000_000;
/** Texts of one episode: captions of a few versions, a description, some titles and cards. */
export const MOST_TEXTS = 60;

/** Readings put right, and answers to named foods, of one episode. */
export const MOST_MENDS = 2000;
export const MOST_NAMED = 500;

/** A text of the episode in which numbers are said, written or shown, exactly as it came in. */
export const editTextSchema = z.object({
  id,
  kind: z.enum(TEXT_KINDS),
  /** What the person calls it: a file's name, "second title". */
  name: oneLine(120),
  text: z.string().min(1).max(MOST_TEXT),
});
export type EditText = z.infer<typeof editTextSchema>;

/** What a mended statement is said of; `portion` needs the portion, `day` and `soFar` need no dish. */
export const MEND_SCOPES = ['whole', 'portion', 'half', 'per100g', 'day', 'soFar'] as const;

/** How the person says that words are to be read. */
export const mendSchema = z.discriminatedUnion('kind', [
  /** They say nothing of the numbers. */
  z.object({ kind: z.literal('nothing') }),
  /** What was really said; read in the place of the words. */
  z.object({ kind: z.literal('heard'), text: oneLine(400).min(1) }),
  /** What the number is about; no segment is the day. */
  z.object({
    kind: z.literal('about'),
    segmentId: id.nullable(),
    portionId: id.nullable(),
    scope: z.enum(MEND_SCOPES),
  }),
]);
export type Mend = z.infer<typeof mendSchema>;

/**
 * A reading put right by the person. It is found again by the statement's words and the words beside them, folded, and
 * never by a time: so it holds when the captions are loaded again. A title or a card is hardly more than the words
 * themselves, which another may have as well: there it is found in that text alone.
 */
export const readingMendSchema = z.object({
  id,
  /** The text or talking point that it is of alone; null wherever the words stand between the same ones. */
  textId: id.nullable().default(null),
  words: oneLine(400).min(1),
  before: oneLine(200),
  after: oneLine(200),
  mend: mendSchema,
});
export type ReadingMend = z.infer<typeof readingMendSchema>;

/** By what a reading is found again; of two for one place the later counts. */
export type MendKey = Pick<ReadingMend, 'textId' | 'words' | 'before' | 'after'>;

/** The key of a place as one text: `mendPlace(mend) === mendPlace(other)` for the same words in the same place. */
export function mendPlace({ textId, words, before, after }: MendKey): string {
  return JSON.stringify([textId, words, before, after]);
}

/** What the person says of a food that is named and is in no ingredient. */
export const namedFoodSchema = z.object({
  id,
  /** Its name as it is told, folded. */
  food: oneLine(120).min(1),
  /** Off the plate and not eaten, or truly none in it. */
  answer: z.enum(['leftOff', 'none']),
});
export type NamedFood = z.infer<typeof namedFoodSchema>;

/** What the edit knows beside segments: texts, readings put right, answers to foods that are named. */
export const editSchema = z.object({
  texts: z.array(editTextSchema).max(MOST_TEXTS),
  mends: z.array(readingMendSchema).max(MOST_MENDS),
  named: z.array(namedFoodSchema).max(MOST_NAMED),
});
export type EpisodeEdit = z.infer<typeof editSchema>;

/** What the person says of a dish so that claim words can be judged by rules that need it. */
export const dishClaimsSchema = z.object({
  /** Share of its protein that counts by PDCAAS (21 CFR 101.9(c)(7)), in thousandths; null where nobody said. */
  proteinPermille: z.int().min(0).max(1000).nullable(),
  /** Reference amount customarily consumed (21 CFR 101.12(b)); null where nobody said. */
  raccMg: z.int().min(1).max(1_000_000).nullable(),
  /** Judged as a meal or main dish (21 CFR 101.13(l), (m)). */
  meal: z.boolean(),
});
export type DishClaims = z.infer<typeof dishClaimsSchema>;
