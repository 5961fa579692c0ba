import { z } from 'zod';

/** Frames of a day at 120 a second: more than any camera counts. */
const MOST_FRAMES = 120 * 86_400;

const instant = z.iso
  .datetime({ offset: true, error: 'Not an instant such as 2026-05-02T08:00:00.000Z' })
  .transform((text) => new Date(text).toISOString());

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
