import { z } from 'zod';
import { id, instant } from '#lib/episode/entry-fields';
import { weighingSchema, WEIGHING_KINDS } from '#lib/episode/recipe-schema';
import type { Display, Weighed } from '#lib/shoot/scale-entries';

const { grossMg, tareMg, method } = weighingSchema.shape;

const MORE = 'The scale showed more than what comes off';

/** A reading of a scale: of an ingredient, of the finished dish, or of a container that waits. */
export const weighedPayload: z.ZodType<Weighed> = z
  .strictObject({
    recipeId: id,
    lineId: id.nullable(),
    of: z.enum(WEIGHING_KINDS),
    grossMg,
    tareMg,
    method,
    scaleId: id,
    afterId: id.nullable(),
    answersId: id.nullable(),
    photoId: id.nullable(),
    readAt: instant.nullable(),
  })
  .refine((one) => one.grossMg > one.tareMg, { path: ['grossMg'], error: MORE })
  .refine(({ of, lineId }) => of === 'container' || (of === 'finished') === (lineId === null), {
    path: ['lineId'],
    error: 'An ingredient is named, and for the finished dish none is',
  });

/** A photo of the display, by the hash of its bytes. */
export const displayPayload: z.ZodType<Display> = z
  .strictObject({
    recipeId: id,
    lineId: id.nullable(),
    of: z.enum(['raw', 'cooked', 'left', 'finished']),
    way: z.enum(['direct', 'difference', 'total']),
    scaleId: id,
    containerMg: tareMg,
    beforeId: id.nullable(),
    sha256: z.string().regex(/^[0-9a-f]{64}$/, 'The hash of a photo has 64 hexadecimal digits'),
  })
  .refine(({ of, lineId }) => (of === 'finished') === (lineId === null), {
    path: ['lineId'],
    error: 'An ingredient is named, and for the finished dish none is',
  });
