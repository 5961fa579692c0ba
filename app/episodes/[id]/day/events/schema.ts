import { z } from 'zod';
import { dayEventSchema } from '#lib/shoot/day-event-schema';
import { heardUpTo, sentEntries } from '../../../../_sync/sent-entries';

const dayId = z.string().min(1, 'Names the filming day').max(64, 'A day id has 64 characters');

/** What a device sends. */
export const sentEvents = z.strictObject({ dayId, events: sentEntries(dayEventSchema) });

/** What the address asks for: `?day=…&after=…`. */
export const askedNews = z.strictObject({ day: dayId, after: heardUpTo });
