import { z } from 'zod';
import { failed, ok, type Result } from '#lib/result';
import { dayEventSchema } from '#lib/shoot/day-event-schema';

/** Entries that a device has and the server may not, at most. */
const MOST_WAITING = 1000;
/** Bytes of one request at most. */
export const MOST_BYTES = 524_288;

const asked = z.strictObject({
  dayId: z.string().min(1).max(64),
  /** The instant from which to plan, by the clock of the device that makes the entries. */
  at: z.iso.datetime({ error: 'Not an instant such as 2026-05-02T08:00:00.000Z' }),
  /** What waits on the device. */
  events: z.array(dayEventSchema).max(MOST_WAITING, `At most ${MOST_WAITING} entries`),
});

/** Reads what a device asks: another order of which day, from when on, and what it alone knows. */
export function readAskedReplan(text: string): Result<z.infer<typeof asked>> {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return failed({ path: '', code: 'not-json', message: 'The body is not JSON.' });
  }
  const read = asked.safeParse(json);
  if (read.success) return ok(read.data);
  return failed(
    ...read.error.issues.map(({ path, message }) => ({
      path: path.map(String).join('.'),
      code: 'invalid',
      message,
    })),
  );
}
