import { z } from 'zod';
import { id, localDate, oneLine } from '#lib/episode/fields';

/** The filming day: part of the episode file (`schema.ts`). Clock times are minutes after local midnight (`…Min`). */

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
