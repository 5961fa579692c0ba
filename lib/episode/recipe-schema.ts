import { z } from 'zod';
import {
  fractionSchema,
  id,
  instant,
  massMg,
  massRangeSchema,
  oneLine,
  permille,
  text,
} from '#lib/episode/fields';
import { MOST } from '#lib/episode/most';
import { LONGEST_KEPT_METHOD } from '#lib/episode/step-limits';
import { stateSchema } from '#lib/foods/food';
import { STATED_NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';

/** A recipe as it is written, weighed and shared out: part of the episode file (`schema.ts`), with the same units. */

/**
 * Units an ingredient can be given in; `piece` and `serving` take their grams from the food. `batch` (all of it)
 * and `portion` (the one that `measureName` names) are for an ingredient that is itself a recipe.
 */
export const LINE_UNITS = [
  'g',
  'kg',
  'oz',
  'lb',
  'ml',
  'l',
  'tsp',
  'tbsp',
  'flOz',
  'cup',
  'piece',
  'serving',
  'pack',
  'batch',
  'portion',
] as const;
export type LineUnit = (typeof LINE_UNITS)[number];

/** Where something stays and is not eaten. */
export const LEFT_PLACES = [
  'pan',
  'tray',
  'bowl',
  'marinade',
  'brine',
  'water',
  'plate',
  'other',
] as const;

const leftIn = {
  where: z.enum(LEFT_PLACES).default('pan'),
  /** What it is made of: the same as the ingredient, or the fat that ran out of it and was poured off. */
  made: z.enum(['alike', 'fat']).default('alike'),
};

/**
 * What stays behind and is not eaten, as a part of this line, in the state in which the line holds:
 * none, grams with their range, or what readings of kind 'left' weighed.
 */
export const leftBehindSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('none') }),
  massRangeSchema.safeExtend({ kind: z.literal('mass'), ...leftIn }),
  z.object({ kind: z.literal('weighed'), ...leftIn }),
]);

/**
 * A value that a food's source does not state, bounded by the person: it lies between 0 and so much in 100 g,
 * in the nutrient's unit.
 */
export const boundedGapSchema = z.object({
  nutrient: z.enum(STATED_NUTRIENTS as unknown as [Nutrient, ...Nutrient[]]),
  maxPer100: z.number().nonnegative().max(1_000_000),
});
export type BoundedGap = z.infer<typeof boundedGapSchema>;

export const recipeLineSchema = z.object({
  id,
  /** The words as written. */
  text: oneLine(400),
  /** Amount as written: a range, equal ends for a single amount; null where none is given. */
  quantity: z.object({ low: fractionSchema, high: fractionSchema }).nullable(),
  unit: z.enum(LINE_UNITS).nullable(),
  /** Which of the food's measures `piece` or `cup` means, by its name; null takes the first that fits. */
  measureName: oneLine(120).nullable(),
  foodId: id.nullable(),
  /**
   * Whether the person has said that this is the food: a provisional one is the search's best match, counted
   * on the page and left out of whatever is copied.
   */
  match: z.enum(['confirmed', 'provisional']).default('confirmed'),
  /** A second food where the person cannot tell which of two it was: its values lie between both. */
  orFoodId: id.nullable().default(null),
  /** Where the ingredient is itself a recipe: which, and the revision it was taken at. It has no food then. */
  madeFrom: z
    .object({ recipeId: id, rev: z.int().min(1) })
    .nullable()
    .default(null),
  /** The state in which the amount holds. */
  state: stateSchema,
  /** True where the amount includes peel, shell or ends (the refuse). */
  asBought: z.boolean(),
  /** Grams typed by the person; they win over grams worked out from quantity and unit. */
  planned: massRangeSchema.nullable(),
  leftBehind: leftBehindSchema,
  /** How it is cooked, by the name of one of the food's yields; null takes the person's own, else the first. */
  cookMethod: oneLine(80).nullable().default(null),
  /** Code of the retention factors that its vitamins and minerals are multiplied by; null for none. */
  retention: oneLine(8).nullable().default(null),
  bounded: z.array(boundedGapSchema).max(STATED_NUTRIENTS.length).default([]),
  /** Spoilt by a second take, so that a spare take buys it again. */
  spoiltByTake: z.boolean(),
  /** "to taste", "optional", anything the viewer reads. */
  note: oneLine(200),
  /**
   * A photo of the scale's display was taken on the day and its number is not typed yet: until then its grams count as
   * planned, and what rests on them is provisional.
   */
  photographed: z
    .object({ at: instant, sha256: z.string().regex(/^[0-9a-f]{64}$/) })
    .nullable()
    .default(null),
  /** For the shop alone: "for the hero shot: the nice one". */
  shopNote: oneLine(120).default(''),
});
export type RecipeLine = z.infer<typeof recipeLineSchema>;

/** What a reading is of: an ingredient raw or cooked, what stayed behind of it, the finished dish, a container. */
export const WEIGHING_KINDS = ['raw', 'cooked', 'left', 'finished', 'container'] as const;

/** One reading of a scale; append-only. `shares` splits one reading between lines: one source of error. */
export const weighingSchema = z.object({
  id,
  kind: z.enum(WEIGHING_KINDS),
  grossMg: massMg,
  tareMg: massMg,
  /**
   * In a running total on one scale: the reading before, whose gross is this one's tare. The two then share that
   * reading's error, once with each sign.
   */
  afterId: id.nullable().default(null),
  scaleId: id,
  method: z.enum(['direct', 'difference']),
  at: instant,
  shares: z.array(z.object({ lineId: id, share: fractionSchema })),
});
export type Weighing = z.infer<typeof weighingSchema>;

/**
 * A part of a dish: one of so many equal ones (exactly), so many grams of the finished dish, or a share taken by
 * eye that may miss by so many thousandths of itself.
 */
export const portionSchema = z.discriminatedUnion('kind', [
  z.object({ id, kind: z.literal('count'), name: oneLine(80), of: z.int().min(1).max(1000) }),
  z.object({ id, kind: z.literal('mass'), name: oneLine(80), massMg: massMg.min(1) }),
  z.object({
    id,
    kind: z.literal('byEye'),
    name: oneLine(80),
    share: fractionSchema.refine((of) => of.num > 0 && of.num <= of.den, 'more than all of it'),
    permille,
  }),
]);
export type Portion = z.infer<typeof portionSchema>;

/**
 * What cooking does to the weight of a whole dish, as published for it: thousandths of its raw weight, less than 0
 * where water or fat is lost. It stands for a finished weight where none was weighed.
 */
export const cookingSchema = z.object({
  moisturePermille: z.int().min(-1000).max(5000),
  fatPermille: z.int().min(-1000).max(1000),
  /** How far the two together may miss, in thousandths of the raw weight. */
  spreadPermille: permille,
  /** Who says so. */
  source: oneLine(200).min(1),
});
export type Cooking = z.infer<typeof cookingSchema>;

export const recipeSchema = z.object({
  id,
  title: oneLine(160),
  lines: z.array(recipeLineSchema).max(MOST.ingredients),
  weighings: z.array(weighingSchema).max(MOST.readings),
  portions: z.array(portionSchema).max(MOST.portions),
  cooking: cookingSchema.nullable().default(null),
  /** The method in brief, as the viewer reads it. */
  method: text(LONGEST_KEPT_METHOD),
});
export type Recipe = z.infer<typeof recipeSchema>;
