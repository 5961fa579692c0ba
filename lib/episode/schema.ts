import { z } from 'zod';
import { NUTRIENT_NAMES, STATED_NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { foodSchema, stateSchema } from '#lib/foods/food';
import { dishClaimsSchema, editSchema } from '#lib/episode/edit-schema';
import { MOST } from '#lib/episode/most';
import { layoutSchema, publishSchema } from '#lib/episode/publish-schema';
import { saidLineSchema } from '#lib/episode/said-line';
import {
  CORE_MILLI_C,
  LONGEST_STEP_S,
  MOST_ALSO,
  MOST_APPLIANCES,
  MOST_HOUSE_SHOTS,
  MOST_OVENS,
  MOST_SHOTS,
  MOST_STEPS,
  OVEN_MILLI_C,
} from '#lib/episode/step-limits';
import { kitchenMore, packMore, pantryFoodSchema, shopSchema } from '#lib/episode/stock-schema';
import { isZone } from '#lib/units/local-date';

/**
 * The plain data of an episode with everything it needs: one creator, one kitchen, the foods used,
 * the stock, one filming day. This is the file format (see `file.ts`) and also what the store hands out,
 * so every pure area works alike from the database and from a file.
 *
 * Masses are integer milligrams (`…Mg`), durations integer seconds (`…S`), temperatures integer
 * thousandths of a degree Celsius (`…MilliC`), clock times integer minutes after local midnight (`…Min`),
 * shares and quantities exact fractions.
 */

const id = z.string().min(1).max(64);
const text = (max: number) => z.string().max(max);
/** Text of one line: a line feed in a title would make lines of its own in whatever is pasted or printed. */
const oneLine = (max: number) =>
  text(max).regex(/^[^\r\n\u2028\u2029]*$/, 'must be one line, without line breaks');
const count = z.int().min(0).max(1_000_000);
const massMg = z.int().min(0).max(1_000_000_000);
const seconds = z.int().min(0).max(LONGEST_STEP_S);
const localDate = z.iso.date();
const instant = z.iso.datetime();

/** An exact non-negative fraction. */
export const fractionSchema = z.object({
  num: z.int().min(0).max(1_000_000_000),
  den: z.int().min(1).max(1_000_000_000),
});
export type Ratio = z.infer<typeof fractionSchema>;

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

/** Grams with the range they may lie in. */
export const massRangeSchema = z
  .object({ lowMg: massMg, valueMg: massMg, highMg: massMg })
  .refine((m) => m.lowMg <= m.valueMg && m.valueMg <= m.highMg, {
    message: 'low, value and high must be in order',
  });
export type MassRange = z.infer<typeof massRangeSchema>;

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

const permille = z.int().min(0).max(1000);

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
  method: text(8000),
});
export type Recipe = z.infer<typeof recipeSchema>;

export const STEP_ROLES = [
  'prep',
  'cook',
  'wait',
  'shoot',
  'talk',
  'taste',
  'eat',
  'wash',
] as const;

/** A thing to do or to wait for on the filming day. */
export const stepSchema = z
  .object({
    id,
    title: oneLine(200).min(1),
    role: z.enum(STEP_ROLES),
    /** Triangular duration: shortest, usual and longest. */
    lowS: seconds,
    usualS: seconds,
    highS: seconds,
    /** A length that the plan may choose, as in "12 to 15 minutes"; null where it may not. */
    choose: z
      .object({ minS: seconds, maxS: seconds })
      .refine((range) => range.minS <= range.maxS, 'the shorter length comes first')
      .nullable(),
    /** True if it takes the person's hands from start to end; false if it runs by itself. */
    hands: z.boolean(),
    burners: z.int().min(0).max(12),
    /** Racks it takes in the oven; 0 where it needs none. */
    racks: z.int().min(0).max(12),
    /** The oven it needs and the temperature the oven must hold throughout. */
    oven: z
      .object({
        ovenId: id.nullable(),
        milliC: z.int().min(OVEN_MILLI_C.min).max(OVEN_MILLI_C.max),
      })
      .nullable(),
    /** Inside temperature to reach, and how long it must then rest. */
    coreMilliC: z.int().min(CORE_MILLI_C.min).max(CORE_MILLI_C.max).nullable(),
    restS: seconds,
    /** What the hands touch, where that matters: raw meat, poultry, fish or egg, or what is eaten as it is. */
    contact: z.enum(['rawAnimal', 'readyToEat']).nullable().default(null),
    /** Done before the filming day: the evening before, or earlier still where a link says so. */
    evening: z.boolean().default(false),
    /** Where the camera stands, in the person's words: "over the board"; empty where it does not matter. */
    cameraSetUp: oneLine(80).default(''),
    /** The appliance of the kitchen that it runs in. */
    applianceId: id.nullable().default(null),
    /** Places of the counter it takes; they bind where the kitchen counts its places. */
    counter: z.int().min(0).max(12).default(0),
    /** On camera: takes the camera and, where `daylight` is true, the light. */
    onCamera: z.boolean(),
    daylight: z.boolean(),
    note: oneLine(400),
  })
  .refine((s) => s.lowS <= s.usualS && s.usualS <= s.highS, {
    message: 'shortest, usual and longest must be in order',
  });
export type Step = z.infer<typeof stepSchema>;

const anchor = z.enum(['start', 'end']);

/**
 * Between two steps: `to`'s anchor is at least `minLagS` and at most `maxLagS` after `from`'s anchor.
 * Steps of different segments may be linked.
 */
export const stepLinkSchema = z.object({
  id,
  fromStepId: id,
  toStepId: id,
  fromAnchor: anchor,
  toAnchor: anchor,
  minLagS: seconds.nullable(),
  maxLagS: seconds.nullable(),
  /** In the person's words: "shown hot", "must set first". */
  reason: oneLine(200),
});
export type StepLink = z.infer<typeof stepLinkSchema>;

/**
 * A perishable lot of a segment and when it stands unchilled: each span runs from one step's anchor to
 * another's. The sum of its spans is limited to `limitS` (two hours, one above 32 °C: USDA FSIS).
 */
export const perishableSchema = z.object({
  id,
  name: oneLine(120),
  limitS: seconds,
  spans: z.array(z.object({ fromStepId: id, fromAnchor: anchor, toStepId: id, toAnchor: anchor })),
  /** For the picture only and thrown away: it has no clock. */
  thrownAway: z.boolean(),
});
export type Perishable = z.infer<typeof perishableSchema>;

export const shotSchema = z.object({
  id,
  title: oneLine(200).min(1),
  /** The step during which it is got; null for one that stands alone. */
  stepId: id.nullable(),
  framing: oneLine(80),
  /** Planned length in the edit. */
  lengthS: seconds,
});
export type Shot = z.infer<typeof shotSchema>;

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

export const ovenSchema = z.object({
  id,
  name: oneLine(80),
  racks: z.int().min(1).max(12),
  /** Temperature of the cold oven. */
  coldMilliC: z.int().min(0).max(60_000),
  /** The hottest it gets; null where nobody said: then any temperature is taken for possible. */
  mostMilliC: z.int().min(OVEN_MILLI_C.min).max(OVEN_MILLI_C.max).nullable().default(null),
  /** Measured times between two temperatures; between others by the two rates. */
  changes: z.array(z.object({ id, fromMilliC: z.int(), toMilliC: z.int(), seconds: seconds })),
  /** Seconds to heat or cool by one degree Celsius where nothing was measured. */
  heatSPerC: z.int().min(0).max(600),
  coolSPerC: z.int().min(0).max(600),
});
export type Oven = z.infer<typeof ovenSchema>;

/** What takes food and runs by itself beside ovens and burners: a microwave, an air fryer, a rice cooker. */
export const applianceSchema = z.object({
  id,
  name: oneLine(80),
  /** How many steps it takes at a time. */
  places: z.int().min(1).max(12),
});
export type Appliance = z.infer<typeof applianceSchema>;

/** Moments of a dish at which a shot is got, in the order in which they come. */
export const SHOT_MOMENTS = [
  'ingredientsRaw',
  'onTheScale',
  'intoTheHeat',
  'outOfTheHeat',
  'still',
  'cutOpen',
  'firstBite',
  'number',
] as const;
export type ShotMoment = (typeof SHOT_MOMENTS)[number];

/** A shot that the person gets of every dish. */
export const houseShotSchema = z.object({
  id,
  title: oneLine(200).min(1),
  moment: z.enum(SHOT_MOMENTS),
  framing: oneLine(80),
  lengthS: seconds,
});
export type HouseShot = z.infer<typeof houseShotSchema>;

/** Measures by eye, each with its own spread. */
export const MEASURE_KINDS = ['spoon', 'cup', 'piece', 'slice', 'handful', 'portion'] as const;

export const kitchenSchema = z.object({
  id,
  name: oneLine(80),
  /** IANA time zone, as in "Europe/Copenhagen". */
  zone: oneLine(64).refine(isZone, 'must be an IANA time zone, as in "Europe/Copenhagen"'),
  lat: z.number().min(-90).max(90).nullable(),
  lon: z.number().min(-180).max(180).nullable(),
  burners: z.int().min(0).max(12),
  /** Seconds to move the camera from one set-up to another; null where that is not counted. */
  cameraChangeS: seconds.nullable().default(null),
  /** Places on the counter; null where they are not counted. */
  counterPlaces: z.int().min(1).max(24).nullable().default(null),
  /** Seconds of cleaning hands, board and counter after raw animal food. */
  cleanDownS: seconds.default(300),
  /** What the camera writes, in megabits a second; null where nobody said. */
  videoMbps: z.int().min(1).max(10_000).nullable().default(null),
  ovens: z.array(ovenSchema).max(MOST_OVENS),
  appliances: z.array(applianceSchema).max(MOST_APPLIANCES).default([]),
  scales: z.array(
    z.object({
      id,
      name: oneLine(80),
      resolutionMg: z.int().min(1),
      /** Accuracy in parts per million, one error for all readings of this scale. */
      accuracyPpm: z.int().min(0),
    }),
  ),
  /** Spread of a kind of measure in thousandths (50 = ± 5 %). */
  spreads: z.array(
    z.object({
      id,
      kind: z.enum(MEASURE_KINDS),
      permille: z.int().min(0).max(1000),
    }),
  ),
  /** The shots of every dish, in the order in which they are got. */
  houseShots: z.array(houseShotSchema).max(MOST_HOUSE_SHOTS).default([]),
  ...kitchenMore,
});
export type Kitchen = z.infer<typeof kitchenSchema>;

export const appointmentSchema = z.object({
  id,
  title: oneLine(120),
  startMin: z.int().min(0).max(2880),
  endMin: z.int().min(0).max(2880),
  /** Whether it takes the person's hands. */
  hands: z.boolean(),
});

const minuteOfDay = z.int().min(0).max(2880);

/** When a step may begin: not before a minute, not after one, or at one where both are alike. */
export const pinSchema = z
  .object({
    id,
    stepId: id,
    notBeforeMin: minuteOfDay.nullable(),
    notAfterMin: minuteOfDay.nullable().default(null),
  })
  .refine((pin) => pin.notBeforeMin !== null || pin.notAfterMin !== null, 'pins to no time');
export type Pin = z.infer<typeof pinSchema>;

/** What becomes of a dish's food after the day. */
export const FATES = ['eaten', 'kept', 'givenAway', 'thrownAway'] as const;

export const filmingDaySchema = z.object({
  id,
  date: localDate,
  kind: z.enum(['asLived', 'packed']),
  startMin: z.int().min(0).max(1439),
  /** The time by which everything must be washed and packed; null for no limit. */
  wrapByMin: z.int().min(0).max(2880).nullable(),
  /** Least minutes between the starts of two meals that are really eaten. */
  mealGapMin: z.int().min(0).max(720),
  /** Minutes after sunrise and before sunset between which what needs daylight is filmed. */
  lightMarginMin: z.int().min(0).max(360).default(30),
  /** What is worn, so that a pickup on another day matches. */
  outfit: oneLine(200).default(''),
  /** Segments of that day, in viewing order; of the file's own episode and of those in its `also`. */
  segments: z.array(
    z.object({
      id,
      segmentId: id,
      pickup: z.boolean(),
      /** What of it is done that day: all, only what comes before its shots, or only its shots and after. */
      part: z.enum(['all', 'cook', 'film']).default('all'),
      fate: z.enum(FATES).nullable().default(null),
    }),
  ),
  appointments: z.array(appointmentSchema),
  pins: z.array(pinSchema),
});
export type FilmingDay = z.infer<typeof filmingDaySchema>;

/** An amount in stock as a ledger: the sum of its moves, never a number that is overwritten. */
export const stockLotSchema = z.object({
  id,
  foodId: id,
  place: oneLine(80),
  openedOn: localDate.nullable(),
  useBy: localDate.nullable(),
  moves: z.array(
    z.object({
      id,
      kind: z.enum(['bought', 'counted', 'used', 'thrownAway']),
      deltaMg: z.int().min(-1_000_000_000).max(1_000_000_000),
      at: instant,
    }),
  ),
});
export type StockLot = z.infer<typeof stockLotSchema>;

export const packSchema = z.object({
  id,
  foodId: id,
  name: oneLine(160),
  netMg: massMg.min(1).nullable(),
  netMl: z.number().positive().nullable(),
  drainedMg: massMg.min(1).nullable(),
  gtin: text(14).nullable(),
  ...packMore,
  /** The last price seen of one, in no shop named, in minor units of an ISO 4217 currency. */
  price: z
    .object({ minor: z.int().min(0), currency: z.string().length(3), seenOn: localDate })
    .nullable(),
});
export type Pack = z.infer<typeof packSchema>;

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
