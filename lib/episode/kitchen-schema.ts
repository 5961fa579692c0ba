import { z } from 'zod';
import { id, oneLine, seconds } from '#lib/episode/fields';
import {
  MOST_APPLIANCES,
  MOST_HOUSE_SHOTS,
  MOST_OVENS,
  OVEN_MILLI_C,
} from '#lib/episode/step-limits';
import { kitchenMore } from '#lib/episode/stock-schema';
import { isZone } from '#lib/units/local-date';

/** The kitchen with all that cooks, weighs and is measured by: part of the episode file (`schema.ts`), with the same units. */

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
