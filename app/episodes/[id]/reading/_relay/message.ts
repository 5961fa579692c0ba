import { z } from 'zod';
import { READING_MOVES, READING_RATE } from '#lib/cut/reading-pace';

const perMinute = z.int().min(READING_RATE.min).max(READING_RATE.max);

/** What devices of one reading tell each other: how to move, how fast, and where the one by the camera is. */
export const relayMessage = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('move'), move: z.enum(READING_MOVES) }),
  z.object({ kind: z.literal('rate'), perMinute }),
  z.object({
    kind: z.literal('place'),
    item: z.int().min(0).max(20_000),
    share: z.number().min(0).max(1),
    going: z.boolean(),
    perMinute,
  }),
]);
export type RelayMessage = z.output<typeof relayMessage>;
