import { z } from 'zod';
import { failed, ok, type Problem, type Result } from '#lib/result';
import { listEventSchema } from '#lib/shopping/list-event-schema';
import { readScope, type ListScope } from '#lib/shopping/list-events';

/** Entries of one request at most; a device sends the rest in the next. */
export const MOST_EVENTS = 200;

/** Bytes of one request at most. */
export const MOST_BYTES = 65_536;

const scope = z
  .string()
  .max(80)
  .refine((text) => readScope(text) !== null, {
    error: 'A list is episode:ID, or span:YYYY-MM-DD..YYYY-MM-DD',
  })
  .transform((text) => text as ListScope);

const sentEvents = z.strictObject({
  scope,
  events: z
    .array(listEventSchema)
    .min(1, 'Holds at least one entry')
    .max(MOST_EVENTS, `Holds at most ${MOST_EVENTS} entries`),
});

const askedNews = z.strictObject({
  list: scope,
  after: z
    .string()
    .regex(/^\d{1,10}$/, 'A whole number: the cursor of the last answer, or 0 for all')
    .default('0')
    .transform(Number),
});

/** Reads what a device sent; each fault with its path, as in `events[2].payload.name`. */
export function readSentEvents(text: string): Result<z.infer<typeof sentEvents>> {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return failed({ path: '', code: 'not-json', message: 'The body is not JSON.' });
  }
  return resultOf(sentEvents.safeParse(json));
}

/** Reads what the address asks for: `?list=…&after=…`. */
export function readAskedNews(query: URLSearchParams): Result<z.infer<typeof askedNews>> {
  return resultOf(askedNews.safeParse(Object.fromEntries(query)));
}

function resultOf<T>(read: z.ZodSafeParseResult<T>): Result<T> {
  return read.success ? ok(read.data) : failed(...read.error.issues.map(problemOf));
}

function problemOf(issue: z.core.$ZodIssue): Problem {
  const path = issue.path.map((key) => (typeof key === 'number' ? `[${key}]` : `.${String(key)}`));
  return { path: path.join('').replace(/^\./, ''), code: 'invalid', message: issue.message };
}
