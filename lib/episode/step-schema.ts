import { z } from 'zod';
import { id, oneLine, seconds } from '#lib/episode/fields';
import { CORE_MILLI_C, OVEN_MILLI_C } from '#lib/episode/step-limits';

/** What is done and filmed on the day, and in which order: part of the episode file (`schema.ts`), with the same units. */

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
