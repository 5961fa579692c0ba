import { z } from 'zod';
import { filmingDaySchema } from '#lib/episode/day-schema';
import { dishClaimsSchema, editSchema } from '#lib/episode/edit-schema';
import {
  fractionSchema,
  id,
  instant,
  localDate,
  massRangeSchema,
  oneLine,
  permille,
  seconds,
  text,
} from '#lib/episode/fields';
import { kitchenSchema } from '#lib/episode/kitchen-schema';
import { MOST } from '#lib/episode/most';
import { layoutSchema, publishSchema } from '#lib/episode/publish-schema';
import { recipeSchema } from '#lib/episode/recipe-schema';
import { saidLineSchema } from '#lib/episode/said-line';
import { MOST_ALSO, MOST_SHOTS, MOST_STEPS } from '#lib/episode/step-limits';
import {
  packSchema,
  pantryFoodSchema,
  shopSchema,
  stockLotSchema,
} from '#lib/episode/stock-schema';
import { perishableSchema, shotSchema, stepLinkSchema, stepSchema } from '#lib/episode/step-schema';
import { foodSchema } from '#lib/foods/food';
import { NUTRIENT_NAMES, type Nutrient } from '#lib/foods/nutrients';

/**
 * The plain data of an episode with everything it needs: one creator, one kitchen, the foods used,
 * the stock, one filming day. This is the file format (see `file.ts`) and also what the store hands out,
 * so every pure area works alike from the database and from a file.
 *
 * Masses are integer milligrams (`…Mg`), durations integer seconds (`…S`), temperatures integer
 * thousandths of a degree Celsius (`…MilliC`), clock times integer minutes after local midnight (`…Min`),
 * shares and quantities exact fractions.
 */

const count = z.int().min(0).max(1_000_000);

/** A sentence to say; numbers in it are bound, as in "[protein, each] a portion", and never typed. */
export const talkingPointSchema = z.object({ id, text: text(600).min(1) });
export type TalkingPoint = z.infer<typeof talkingPointSchema>;

/**
 * How the part eaten of a dish is known: as an exact share, as a share by eye, or as grams of the finished dish
 * (a plate weighed before and after).
 */
export const ateSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('share') }),
  z.object({ kind: z.literal('byEye'), permille }),
  massRangeSchema.safeExtend({ kind: z.literal('mass') }),
]);
export type Ate = z.infer<typeof ateSchema>;

export const segmentSchema = z.object({
  id,
  kind: z.enum(['recipe', 'talk']),
  title: oneLine(160).min(1),
  /** How many times the recipe is made on the day. */
  batches: fractionSchema,
  /** The part of the dish that counts to the day's total: 1 for the whole dish, 0 for talk. */
  eaten: fractionSchema,
  ate: ateSchema.default({ kind: 'share' }),
  /** Where it stands in the cut, in frames of the episode's rate; out is exclusive. */
  inFrame: count.nullable(),
  outFrame: count.nullable(),
  /** False: its chapter in the cut is joined with the one before it. */
  chapter: z.boolean().default(true),
  plannedS: seconds,
  recipe: recipeSchema.nullable(),
  steps: z.array(stepSchema).max(MOST_STEPS),
  perishables: z.array(perishableSchema).max(MOST.lots),
  shots: z.array(shotSchema).max(MOST_SHOTS),
  talkingPoints: z.array(talkingPointSchema).max(MOST.talkingPoints),
  /** Further takes that need food again, and whether they need the whole dish or the spoilt lines only. */
  spareTakes: z.int().min(0).max(10),
  spareScope: z.enum(['whole', 'spoiltLines']),
  /** Further food kept for pickups on another day: so many times what a take needs again. */
  pickupReserve: z.int().min(0).max(10).default(0),
  /** Minutes of washing-up that this segment leaves; must be done before wrap. */
  washUpS: seconds,
  /** Its shots before anything is dirty, or after every dish of the day is ready; null where it does not matter. */
  filmedWhen: z.enum(['beforeDirty', 'afterReady']).nullable().default(null),
  /** What claim words said of it are judged by beside its figures; null where nobody said. */
  claims: dishClaimsSchema.nullable().default(null),
});
export type Segment = z.infer<typeof segmentSchema>;

export const targetSchema = z.object({
  id,
  nutrient: z.enum(NUTRIENT_NAMES as unknown as [Nutrient, ...Nutrient[]]),
  /** `about` allows 5 %, and at least 5 kcal or 1 g, to either side. */
  relation: z.enum(['atLeast', 'atMost', 'about']),
  /** In the nutrient's own unit. */
  amount: z.number().nonnegative(),
  /** A segment's id, or null for the day. */
  segmentId: id.nullable(),
  /** One of that segment's portions; null for its whole dish. */
  portionId: id.nullable().default(null),
});
export type Target = z.infer<typeof targetSchema>;

/** The answer to "anything else today, off camera, drinks?"; null until the person has said. */
export const anythingElseSchema = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('nothing') }),
    z.object({ kind: z.literal('notCounted'), what: oneLine(200) }),
  ])
  .nullable();

/** What calories may be rounded to where they are written, in kcal, finest first. */
export const ENERGY_STEPS = [1, 5, 10] as const;
export type EnergyStep = (typeof ENERGY_STEPS)[number];

export const episodeSchema = z.object({
  id,
  title: oneLine(160).min(1),
  hook: text(600),
  region: z.enum(['US', 'EU']),
  publishOn: localDate.nullable(),
  /** Frames per second of the cut as an exact fraction: 25/1, 30000/1001. */
  rate: z.object({ num: z.int().positive(), den: z.int().positive() }),
  /** Whether numbers of frames are left out at 29.97 and 59.94 (SMPTE ST 12-1, drop frame); says nothing elsewhere. */
  dropFrame: z.boolean().default(false),
  targets: z.array(targetSchema).max(MOST.targets),
  /** What calories are rounded to in everything that is written and copied. */
  energyStep: z.literal(ENERGY_STEPS).default(1),
  anythingElse: anythingElseSchema,
  segments: z.array(segmentSchema).max(MOST.segments),
  links: z.array(stepLinkSchema).max(MOST.ties),
  /** The creator's own links under the description. */
  webLinks: z
    .array(z.object({ id, label: oneLine(80), url: z.url({ protocol: /^https?$/ }).max(400) }))
    .max(MOST.webLinks),
  /** The creator's own wording where something was given or paid; empty for none. */
  disclosure: text(400),
});
export type Episode = z.infer<typeof episodeSchema>;

export const creatorSchema = z.object({
  id,
  name: oneLine(120),
  /** How fast the person speaks on camera; null until it was measured or said. */
  wordsPerMinute: z.int().min(40).max(400).nullable().default(null),
  /** The house layout of descriptions; absent where nobody chose one. */
  layout: layoutSchema.optional(),
});

/**
 * Another episode that is filmed on the same day, as far as the day is about it: its segments of that day, the ties
 * between their steps, and of what these need all that the file does not have already. Nothing of it belongs to the
 * file's own episode: no figure, lock or description reads it.
 */
export const alsoFilmedSchema = z.object({
  id,
  title: oneLine(160).min(1),
  region: z.enum(['US', 'EU']),
  segments: z.array(segmentSchema).min(1).max(MOST.segments),
  links: z.array(stepLinkSchema).max(MOST.ties),
  foods: z.array(foodSchema).max(2000),
  recipes: z.array(recipeSchema).max(200),
  stock: z.array(stockLotSchema).max(5000),
  packs: z.array(packSchema).max(2000),
});
export type AlsoFilmed = z.infer<typeof alsoFilmedSchema>;

export const FILE_FORMAT = 'scale-and-slate/episode';
export const FILE_VERSION = 1;

export const episodeFileSchema = z.object({
  format: z.literal(FILE_FORMAT),
  version: z.literal(FILE_VERSION),
  /** The file's own clock: everything made from it is dated by this unless told otherwise. */
  savedAt: instant,
  creator: creatorSchema,
  kitchen: kitchenSchema,
  foods: z.array(foodSchema).max(2000),
  episode: episodeSchema,
  /** Recipes that ingredients are made from and that no segment of this episode has. */
  recipes: z.array(recipeSchema).max(200).default([]),
  day: filmingDaySchema.nullable(),
  /** The other episodes of that day, in the order in which they came to it; absent where it has none. */
  also: z.array(alsoFilmedSchema).min(1).max(MOST_ALSO).optional(),
  /** What was said in front of the camera, on any of its days, and stands; of each scope one. */
  said: z.array(saidLineSchema).max(2000).default([]),
  /** Texts of the edit and what was said of them; absent where there are none. */
  edit: editSchema.optional(),
  /** What goes out beside the video: saved swaps, replies, pieces; absent where there is none. */
  publish: publishSchema.optional(),
  stock: z.array(stockLotSchema).max(5000),
  packs: z.array(packSchema).max(2000),
  /** What was said of foods at home; of each food at most one. */
  pantry: z.array(pantryFoodSchema).max(2000).default([]),
  shops: z.array(shopSchema).max(50).default([]),
});
export type EpisodeFile = z.infer<typeof episodeFileSchema>;
