import { z } from 'zod';
import { saidParts, type Said } from '#lib/episode/said-line';

const id = z.string().regex(/^[\w:.-]{1,64}$/, 'An id has 1 to 64 letters, digits or : . - _');

/** A line that was said, with its numbers. */
export const saidPayload: z.ZodType<Said> = z.strictObject(saidParts(id));
