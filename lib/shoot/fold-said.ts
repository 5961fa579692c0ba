import type { SaidLine } from '#lib/episode/said-line';
import { scopeKey } from '#lib/episode/said-scope';
import { inDayOrder, type DayEvent } from '#lib/shoot/day-log';

/**
 * What was said in front of the camera and stands: of each scope the last, in the order of saying. A line that was
 * not said after all leaves the one before it standing.
 *
 * Law: the same for every order and any repetition of its input.
 */
export function foldSaid(events: readonly DayEvent[]): SaidLine[] {
  const ordered = inDayOrder(events);
  const not = new Set(
    ordered.flatMap((event) => (event.kind === 'unsaid' ? event.payload.saidId : [])),
  );
  const stands = new Map<string, SaidLine>();
  for (const event of ordered) {
    if (event.kind !== 'said' || not.has(event.id)) continue;
    const key = scopeKey(event.payload.scope);
    stands.delete(key);
    stands.set(key, { ...event.payload, id: event.id, at: event.at });
  }
  return [...stands.values()];
}
