import { z } from 'zod';
import { failed, ok, type Problem, type Result } from '#lib/result';
import { dayEventSchema } from '#lib/shoot/day-event-schema';

/** Entries of one request at most; a device sends the rest in the next. */
export const MOST_EVENTS = 200;

/** Bytes of one request at most. */
export const MOST_BYTES = 65_536;

const dayId = z.string().min(1, 'Names the filming day').max(64, 'A day id has 64 characters');

const sentEvents = z.strictObject({
  dayId,
  events: z
    .array(dayEventSchema)
    .min(1, 'Holds at least one entry')
    .max(MOST_EVENTS, `Holds at most ${MOST_EVENTS} entries`),
});

export type SentEvents = z.infer<typeof sentEvents>;

const askedNews = z.strictObject({
  day: dayId,
  after: z
    .string()
    .regex(/^\d{1,10}$/, 'A whole number: the cursor of the last answer, or 0 for all')
    .default('0')
    .transform(Number),
});

export type AskedNews = z.infer<typeof askedNews>;

/** Reads what a device sent; each fault with its path, as in `events[2].payload.text`. */
export function readSentEvents(text: string): Result<SentEvents> {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return failed({ path: '', code: 'not-json', message: 'The body is not JSON.' });
  }
  return resultOf(sentEvents.safeParse(json));
}

/** Reads what the address asks for: `?day=…&after=…`. */
export function readAskedNews(query: URLSearchParams): Result<AskedNews> {
  return resultOf(askedNews.safeParse(Object.fromEntries(query)));
}

function resultOf<T>(read: z.ZodSafeParseResult<T>): Result<T> {
  return read.success ? ok(read.data) : failed(...read.error.issues.map(problemOf));
}

function problemOf(issue: z.core.$ZodIssue): Problem {
  const path = issue.path.map((key) => (typeof key === 'number' ? `[${key}]` : `.${String(key)}`));
  return { path: path.join('').replace(/^\./, ''), code: 'invalid', message: issue.message };
}
