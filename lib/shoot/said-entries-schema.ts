import { z } from 'zod';
import { id } from '#lib/episode/entry-fields';
import { saidParts, type Said } from '#lib/episode/said-line';

/** A line that was said, with its numbers. */
export const saidPayload: z.ZodType<Said> = z.strictObject(saidParts(id));
