import { z } from 'zod';
import { instant } from '#lib/episode/entry-fields';

/** Frames of a day at 120 a second: more than any camera counts. */
const MOST_FRAMES = 120 * 86_400;

/** What an entry of the camera's clock says. */
export const cameraClockPayload = z.strictObject({
  clockAt: instant,
  frame: z.int().min(0).max(MOST_FRAMES),
  rate: z.strictObject({
    num: z.int().min(1).max(240_000),
    den: z.int().min(1).max(1001),
    dropFrame: z.boolean(),
  }),
});
