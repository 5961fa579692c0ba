import { z } from 'zod';

/** Kinds of fields that the entries of devices share: of a filming day and of a shopping list. */

/** An id: letters, digits and a few marks, so that it can be shown and compared as it is. */
export const id = z
  .string()
  .regex(/^[\w:.-]{1,64}$/, 'An id has 1 to 64 letters, digits or : . - _');

/** An instant of any offset, made to the one form that sorts as text. */
export const instant = z.iso
  .datetime({ offset: true, error: 'Not an instant such as 2026-05-02T08:00:00.000Z' })
  .transform((text) => new Date(text).toISOString());

/** The instant at which an entry was made. */
export const madeAt = instant.refine(
  (at) => {
    const year = new Date(at).getUTCFullYear();
    return year >= 2000 && year < 9000;
  },
  { error: 'The year must lie between 2000 and 9000' },
);

/** The number of an entry on its device. */
export const deviceSeq = z.int().min(1).max(2_147_483_647);
