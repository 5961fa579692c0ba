import { z } from 'zod';
import { listEventSchema } from '#lib/shopping/list-event-schema';
import { readScope, type ListScope } from '#lib/shopping/list-events';
import { heardUpTo, sentEntries } from '../../../../_sync/sent-entries';

const scope = z
  .string()
  .max(80)
  .refine((text) => readScope(text) !== null, {
    error: 'A list is episode:ID, or span:YYYY-MM-DD..YYYY-MM-DD',
  })
  .transform((text) => text as ListScope);

/** What a device sends. */
export const sentEvents = z.strictObject({ scope, events: sentEntries(listEventSchema) });

/** What the address asks for: `?list=…&after=…`. */
export const askedNews = z.strictObject({ list: scope, after: heardUpTo });
