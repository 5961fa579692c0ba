import { z } from 'zod';
import { NOTE_MAX, storable, type DayEvent } from '#lib/shoot/day-log';

const INT_MAX = 2_147_483_647;

/** An id: letters, digits and a few marks, so that it can be shown and compared as it is. */
const id = z.string().regex(/^[\w:.-]{1,64}$/, 'An id has 1 to 64 letters, digits or : . - _');

/** An instant of any offset, made to the one form that sorts as text. */
const instant = z.iso
  .datetime({ offset: true, error: 'Not an instant such as 2026-05-02T08:00:00.000Z' })
  .transform((text) => new Date(text))
  .refine((at) => at.getUTCFullYear() >= 2000 && at.getUTCFullYear() < 9000, {
    error: 'The year must lie between 2000 and 9000',
  })
  .transform((at) => at.toISOString());

const made = { id, deviceId: id, deviceSeq: z.int().min(1).max(INT_MAX), at: instant };

const row = z.union([z.strictObject({ stepId: id }), z.strictObject({ entryId: id })], {
  error: 'Names one row, by stepId or entryId',
});
const nothing = z.strictObject({});

const text = z
  .string()
  .max(NOTE_MAX, `A note has at most ${NOTE_MAX} characters`)
  .refine((note) => note.trim() !== '', 'A note has some text')
  .refine((note) => storable(note) === note, {
    error: 'The note holds a character that cannot be stored',
  });

/** One event of a filming day as it is sent and kept; its type is the domain's own. */
export const dayEventSchema: z.ZodType<DayEvent> = z.discriminatedUnion('kind', [
  z.strictObject({ ...made, kind: z.enum(['done', 'takenBack']), refs: row, payload: nothing }),
  z.strictObject({
    ...made,
    kind: z.literal('note'),
    refs: z.union([row, nothing], { error: 'Names one row, by stepId or entryId, or none' }),
    payload: z.strictObject({ text }),
  }),
]);
