import { HORIZON } from '#lib/planner/broken-rules';
import type { Begun, Lag, Placed, PlannerProblem, TaskEvent } from '#lib/planner/problem';
import type { RowNow } from '#lib/shoot/replan-rows';

/** Times that are settled: of what is over, and of what is under way. */
export interface KnownTimes {
  readonly now: number;
  readonly running: ReadonlyMap<string, Placed>;
  /** Times of what has begun; null for what has not. */
  placed(id: string): Placed | null;
  /** The time of an event of what has begun; null for any other. */
  at(event: TaskEvent): number | null;
  /** Whether an event has happened. */
  isPast(event: TaskEvent): boolean;
}

/** Looks up what has begun, in the planner's time. */
export function knownTimes(
  begun: ReadonlyMap<string, Begun>,
  rows: ReadonlyMap<string, RowNow>,
  originMin: number,
  now: number,
): KnownTimes {
  const running = new Map<string, Placed>();
  for (const [id, row] of rows) {
    if (row.kind !== 'underWay') continue;
    running.set(id, { id, start: row.startMin - originMin, end: row.untilMin - originMin });
  }
  const placed = (id: string): Placed | null => {
    const one = begun.get(id);
    if (one === undefined) return null;
    return running.get(id) ?? { id, start: one.start, end: one.end ?? one.start };
  };
  return {
    now,
    running,
    placed,
    at: ({ task, anchor }) => placed(task)?.[anchor] ?? null,
    isPast: ({ task, anchor }) => begun.has(task) && (anchor === 'start' || !running.has(task)),
  };
}

/**
 * What the past leaves of the rules. A lag to what has happened asks nothing any more. `lost` names the greatest
 * lags and limits that no plan from now on can keep, and the latest end where it is past.
 */
export function whatCannotBeKept(
  { tasks, lags, spanLimits, horizon }: PlannerProblem,
  known: KnownTimes,
): { readonly lags: readonly Lag[]; readonly lost: ReadonlySet<string> } {
  const lost = new Set<string>();
  const lengthOf = new Map(tasks.map(({ id, minLength }) => [id, minLength]));
  /** The earliest that an event can be. */
  const soonest = (event: TaskEvent): number =>
    known.at(event) ?? known.now + (event.anchor === 'end' ? (lengthOf.get(event.task) ?? 0) : 0);
  const kept = lags.flatMap((lag): Lag[] => {
    const from = { task: lag.from, anchor: lag.fromAnchor };
    const to = { task: lag.to, anchor: lag.toAnchor };
    if (known.isPast(to)) return [];
    const at = known.at(from);
    const { min } = lag;
    // What is under way ends when it does, however long after something else it should.
    const settled = known.at(to) !== null;
    const waits = settled && min !== null && (at ?? Infinity) + min > soonest(to);
    if (at !== null && lag.max !== null && at + lag.max < soonest(to)) lost.add(lag.id);
    return [waits ? { ...lag, min: null } : lag];
  });
  for (const { id, spans, limit } of spanLimits) {
    const sum = spans.reduce((total, span) => {
      const out = known.at({ task: span.from, anchor: span.fromAnchor });
      const back = soonest({ task: span.to, anchor: span.toAnchor });
      return total + (out === null ? 0 : Math.max(0, back - out));
    }, 0);
    if (sum > limit) lost.add(id);
  }
  const last = Math.max(known.now, ...[...known.running.values()].map(({ end }) => end));
  if (last > horizon) lost.add(HORIZON);
  return { lags: kept, lost };
}
