import { inDayOrder, type DayEvent } from '#lib/shoot/day-log';
import { scopeKey, type Said } from '#lib/shoot/said-entries';

/** A line that was said, and when. */
export interface DaySaid extends Said {
  readonly id: string;
  readonly at: string;
}

/**
 * What was said in front of the camera and stands: of each scope the last, in the order of saying. A line that was
 * not said after all leaves the one before it standing.
 *
 * Law: the same for every order and any repetition of its input.
 */
export function foldSaid(events: readonly DayEvent[]): DaySaid[] {
  const ordered = inDayOrder(events);
  const not = new Set(
    ordered.flatMap((event) => (event.kind === 'unsaid' ? event.payload.saidId : [])),
  );
  const stands = new Map<string, DaySaid>();
  for (const event of ordered) {
    if (event.kind !== 'said' || not.has(event.id)) continue;
    const key = scopeKey(event.payload.scope);
    stands.delete(key);
    stands.set(key, { ...event.payload, id: event.id, at: event.at });
  }
  return [...stands.values()];
}
