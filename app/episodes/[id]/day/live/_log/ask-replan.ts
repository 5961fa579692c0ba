import { failed, ok, type Result } from '#lib/result';
import type { DayEvent } from '#lib/shoot/day-log';
import type { ReplanNews } from '#lib/shoot/replan-words';

/** Time for an answer, in milliseconds: the first one also starts the thread that searches. */
const PATIENCE_MS = 15_000;

const UNHEARD =
  'Not connected: another order can be made once the program can be reached. What you press is kept meanwhile.';

/** Asks the program for another order from now on; the order that is there stays until one is taken. */
export async function askReplan(
  address: string,
  dayId: string,
  waiting: readonly DayEvent[],
): Promise<Result<ReplanNews>> {
  const trouble = (message: string) => failed({ path: '', code: 'no-order', message });
  try {
    const response = await fetch(address, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ dayId, at: new Date().toISOString(), events: waiting }),
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
    const answer = (await response.json()) as ReplanNews & {
      readonly problems?: readonly { readonly message?: unknown }[];
    };
    if (response.ok && Array.isArray(answer.changes)) return ok(answer);
    const said = answer.problems?.[0]?.message;
    return trouble(typeof said === 'string' ? said : UNHEARD);
  } catch {
    return trouble(UNHEARD);
  }
}
