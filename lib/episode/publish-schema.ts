import { z } from 'zod';
import { id, massMg, oneLine, text } from '#lib/episode/fields';
import { MOST } from '#lib/episode/most';
import { NUTRIENT_NAMES, type Nutrient } from '#lib/foods/nutrients';
import { stateSchema } from '#lib/foods/food';

const nutrient = z.enum(NUTRIENT_NAMES as unknown as [Nutrient, ...Nutrient[]]);

/** Parts of a description, in the order in which they stand as long as nobody has said otherwise. */
export const BLOCK_KINDS = [
  'title',
  'hook',
  'chapters',
  'dishes',
  'day',
  'notes',
  'swaps',
  'allergens',
  'cautions',
  'disclosure',
  'links',
  'corrections',
  'sources',
] as const;
export type BlockKind = (typeof BLOCK_KINDS)[number];

/** What a dish's part of the description says. */
export const DISH_PARTS = [
  'whole',
  'portions',
  'per100g',
  'ingredients',
  'method',
  'oven',
] as const;
export type DishPart = (typeof DISH_PARTS)[number];

export const DESCRIPTION_FORMS = ['plain', 'markdown', 'html'] as const;
export type DescriptionForm = (typeof DESCRIPTION_FORMS)[number];

/** The person's house layout of descriptions: which parts, in which order, how long at most. */
export const layoutSchema = z.object({
  blocks: z
    .array(z.object({ kind: z.enum(BLOCK_KINDS), shown: z.boolean() }))
    .max(BLOCK_KINDS.length)
    .refine((all) => new Set(all.map(({ kind }) => kind)).size === all.length, {
      error: 'each part stands in a layout once',
    }),
  dish: z.array(z.enum(DISH_PARTS)).max(DISH_PARTS.length),
  /** Longest description in code points. */
  limit: z.int().min(100).max(100_000),
});
export type DescriptionLayout = z.infer<typeof layoutSchema>;

/** One thing that a swap does to a dish. */
export const swapStepSchema = z.discriminatedUnion('kind', [
  /** Another food in the place of an ingredient's, as much of it as before where no amount is said. */
  z.object({ kind: z.literal('food'), lineId: id, foodId: id, massMg: massMg.nullable() }),
  /** Another amount of the same. */
  z.object({ kind: z.literal('amount'), lineId: id, massMg }),
  z.object({ kind: z.literal('leaveOut'), lineId: id }),
  z.object({ kind: z.literal('add'), foodId: id, massMg, state: stateSchema }),
]);
export type SwapStep = z.infer<typeof swapStepSchema>;

/** Swaps of one dish, saved under a name: "no dairy". Under the name of another dish's they are of the day: "bigger day". */
export const variantSchema = z.object({
  id,
  segmentId: id,
  name: oneLine(120).min(1),
  steps: z.array(swapStepSchema).min(1).max(MOST.swapSteps),
});
export type Variant = z.infer<typeof variantSchema>;

/** A viewer's comment with another number, what explains it, and the reply. */
export const replySchema = z.object({
  id,
  at: z.iso.datetime(),
  comment: text(4000).min(1),
  nutrient: nutrient.nullable(),
  /** The viewer's number, in the nutrient's unit; null where none was found. */
  number: z.number().nonnegative().nullable(),
  segmentId: id.nullable(),
  /** Which slip explains it; null where none does. */
  slip: oneLine(60).nullable(),
  text: text(4000),
});
export type Reply = z.infer<typeof replySchema>;

/** Something made from the episode that goes out by itself, with its own title and length. */
export const pieceSchema = z.object({
  id,
  kind: z.enum(['clip', 'text']),
  title: oneLine(160).min(1),
  /** Its dishes; null is the day. Without any, those it had were taken out. */
  segmentIds: z.array(id).max(MOST.dishesOfPiece).nullable(),
  /** Longest text in code points. */
  limit: z.int().min(20).max(100_000),
});
export type Piece = z.infer<typeof pieceSchema>;

/** What the episode has for going out, beside its figures. */
export const publishSchema = z.object({
  variants: z.array(variantSchema).max(MOST.swaps),
  replies: z.array(replySchema).max(MOST.replies),
  pieces: z.array(pieceSchema).max(MOST.pieces),
});
export type EpisodePublish = z.infer<typeof publishSchema>;
