import { HORIZON } from '#lib/planner/broken-rules';
import type { PlannerProblem } from '#lib/planner/problem';
import type { OrderGraph, Times } from '#lib/planner/simulate/pass';

/**
 * Something that the order alone does not keep, and that may come out otherwise: a lag (its greatest; its least
 * too where it is not waited for), a limit on a sum of spans, a task's latest end, the horizon, a resource that
 * must be free when it becomes less.
 */
export interface KeptOrNot {
  readonly kind: 'lag' | 'limit' | 'end' | 'horizon' | 'free';
  /** The rule's id in the problem: of the lag, the limit, the task, the resource, or `HORIZON`. */
  readonly id: string;
  /** Of a resource that becomes less: when. */
  readonly at: number | null;
  readonly kept: (times: Times) => boolean;
}

/** Room for what adding up minutes in binary leaves over. */
const EQUAL = 1e-6;

/** Everything that a problem promises and its order alone does not keep. */
export function promisesOf(problem: PlannerProblem, graph: OrderGraph): KeptOrNot[] {
  const place = new Map(graph.ids.map((id, index) => [id, index]));
  const notWaitedFor = new Set(graph.notWaitedFor.map(({ rule }) => rule));
  const bundleOf: number[] = [];
  graph.bundles.forEach((bundle, at) => bundle.forEach(({ task }) => (bundleOf[task] = at)));

  const lags = problem.lags.flatMap((lag): KeptOrNot[] => {
    const [from, to] = [place.get(lag.from), place.get(lag.to)];
    if (from === undefined || to === undefined) return [];
    const loose = notWaitedFor.has(lag.id);
    const tied = lag.min === lag.max && lag.fromAnchor === 'start' && lag.toAnchor === 'start';
    if ((lag.max === null && !loose) || (tied && bundleOf[from] === bundleOf[to])) return [];
    const least = loose ? (lag.min ?? -Infinity) : -Infinity;
    const most = lag.max ?? Infinity;
    const [fromEnd, toEnd] = [lag.fromAnchor === 'end', lag.toAnchor === 'end'];
    const kept = ({ start, end }: Times): boolean => {
      const gap = ((toEnd ? end : start)[to] ?? 0) - ((fromEnd ? end : start)[from] ?? 0);
      return gap >= least - EQUAL && gap <= most + EQUAL;
    };
    return [{ kind: 'lag', id: lag.id, at: null, kept }];
  });
  const limits = problem.spanLimits.flatMap(({ id, spans, limit }): KeptOrNot[] => {
    const known = spans.flatMap((span) => {
      const [from, to] = [place.get(span.from), place.get(span.to)];
      return from === undefined || to === undefined ? [] : [{ ...span, from, to }];
    });
    const kept = (times: Times): boolean =>
      known.reduce((sum, { from, fromAnchor, to, toAnchor }) => {
        return sum + Math.max(0, (times[toAnchor][to] ?? 0) - (times[fromAnchor][from] ?? 0));
      }, 0) <=
      limit + EQUAL;
    return known.length === 0 ? [] : [{ kind: 'limit', id, at: null, kept }];
  });
  const ends = problem.tasks.flatMap(({ id, endBy }): KeptOrNot[] => {
    const task = place.get(id);
    if (endBy === null || task === undefined) return [];
    return [{ kind: 'end', id, at: endBy, kept: ({ end }) => (end[task] ?? 0) <= endBy + EQUAL }];
  });
  const horizon: KeptOrNot = {
    kind: 'horizon',
    id: HORIZON,
    at: problem.horizon,
    kept: ({ end }) => latestOf(end) <= problem.horizon + EQUAL,
  };
  return [horizon, ...ends, ...freed(graph), ...limits, ...lags];
}

/** Resources that are less for a time: everything planned before it is over by then. */
function freed({ pauses }: OrderGraph): KeptOrNot[] {
  const all = pauses.flat();
  const keys = [...new Set(all.map(({ resource, from }) => `${from} ${resource}`))];
  return keys.map((key): KeptOrNot => {
    const own = all.filter(({ resource, from }) => `${from} ${resource}` === key);
    const [at, id] = [own[0]?.from ?? 0, own[0]?.resource ?? ''];
    const tasks = own.map(({ task }) => task);
    const kept = ({ end }: Times): boolean => tasks.every((task) => (end[task] ?? 0) <= at + EQUAL);
    return { kind: 'free', id, at, kept };
  });
}

/** The latest of some ends; 0 of none. */
export function latestOf(ends: Float64Array): number {
  let latest = 0;
  for (let task = 0; task < ends.length; task += 1) {
    if ((ends[task] as number) > latest) latest = ends[task] as number;
  }
  return latest;
}
