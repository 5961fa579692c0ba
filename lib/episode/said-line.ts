import { z } from 'zod';

/** The nutrients that a line says. */
export const SAID_NUTRIENTS = ['energyKcal', 'protein'] as const;

/** Longest line to say, in UTF-16 units. */
const LINE_MAX = 400;
const words = z
  .string()
  .min(1, 'A line has some words')
  .max(LINE_MAX, `A line has at most ${LINE_MAX} characters`)
  .refine((text) => !/\0|\p{Surrogate}/u.test(text), {
    error: 'The line holds a character that cannot be stored',
  });

const numbers = z
  .array(
    z.strictObject({
      nutrient: z.enum(SAID_NUTRIENTS),
      /** The number in the words, in the nutrient's unit: 640 of 'about 640'. */
      amount: z.number().min(0).max(1_000_000),
      /** `exact`: said as it stands, in whole units. */
      hedge: z.enum(['exact', 'about', 'atLeast', 'atMost']),
      /** What was computed then, unrounded; null where it had no upper bound. */
      value: z.number().min(0).max(1_000_000).nullable(),
    }),
  )
  .min(1, 'A line says at least one number')
  .max(SAID_NUTRIENTS.length)
  .refine((all) => new Set(all.map(({ nutrient }) => nutrient)).size === all.length, {
    error: 'A line says each number once',
  });

/**
 * The parts of a line that was said: what it is about, its words, its numbers.
 * @param id what an id may be where the line comes from
 */
export function saidParts(id: z.ZodString) {
  return {
    /** `soFar`: the dishes up to and with this one. */
    scope: z.discriminatedUnion('kind', [
      z.strictObject({ kind: z.literal('day') }),
      z.strictObject({ kind: z.enum(['whole', 'half', 'soFar']), segmentId: id }),
      z.strictObject({ kind: z.literal('portion'), segmentId: id, portionId: id }),
    ]),
    /** Word for word. */
    text: words,
    numbers: numbers.readonly(),
  };
}

const fileId = z.string().min(1).max(64);

/**
 * A line that was said in front of the camera and stands: its numbers are locked there and then. It may be about a
 * portion that is no longer there, since nothing that changes later unsays it.
 */
export const saidLineSchema = z.strictObject({
  id: fileId,
  at: z.iso.datetime(),
  ...saidParts(fileId),
});
export type SaidLine = Readonly<z.infer<typeof saidLineSchema>>;

/** What a line says, without when. */
export type Said = Readonly<Omit<SaidLine, 'id' | 'at'>>;
export type SaidScope = Said['scope'];
/** A number as it was said. */
export type SaidAmount = Said['numbers'][number];
