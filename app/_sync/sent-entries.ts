import { z } from 'zod';
import { failed, ok, type Problem, type Result } from '#lib/result';

/** Entries of one request at most; a device sends the rest in the next. */
export const MOST_EVENTS = 200;

/** Bytes of one request at most. */
export const MOST_BYTES = 65_536;

/** The entries of one request, each of a shape. */
export const sentEntries = <T extends z.ZodType>(entry: T) =>
  z
    .array(entry)
    .min(1, 'Holds at least one entry')
    .max(MOST_EVENTS, `Holds at most ${MOST_EVENTS} entries`);

/** Where a device has heard up to, as `?after=…` says. */
export const heardUpTo = z
  .string()
  .regex(/^\d{1,10}$/, 'A whole number: the cursor of the last answer, or 0 for all')
  .default('0')
  .transform(Number);

/** Reads a body as JSON of a shape; each fault with its path, as in `events[2].payload.text`. */
export function readSent<T extends z.ZodType>(text: string, shape: T): Result<z.output<T>> {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return failed({ path: '', code: 'not-json', message: 'The body is not JSON.' });
  }
  return resultOf(shape.safeParse(json));
}

/** Reads what an address asks for, as `?day=…&after=…`. */
export function readAsked<T extends z.ZodType>(
  query: URLSearchParams,
  shape: T,
): Result<z.output<T>> {
  return resultOf(shape.safeParse(Object.fromEntries(query)));
}

function resultOf<T>(read: z.ZodSafeParseResult<T>): Result<T> {
  return read.success ? ok(read.data) : failed(...read.error.issues.map(problemOf));
}

function problemOf(issue: z.core.$ZodIssue): Problem {
  const path = issue.path.map((key) => (typeof key === 'number' ? `[${key}]` : `.${String(key)}`));
  return { path: path.join('').replace(/^\./, ''), code: 'invalid', message: issue.message };
}
