import type { PlacedChangeover } from '#lib/planner/answer';
import { completed, type WholeProblem } from '#lib/planner/face/defaults';
import { pastFacts } from '#lib/planner/face/past';
import { stateBindings } from '#lib/planner/state-bindings';
import type { Placed, PlannerProblem, TaskEvent, TaskId } from '#lib/planner/problem';

/** What of an answer is explained. */
export interface PlanToExplain {
  readonly placed: readonly Placed[];
  readonly changeovers: readonly PlacedChangeover[];
}

/**
 * Why a task does not start one unit of time earlier, all else as it is. `from`: the event it waits for or is
 * kept back for; null where nothing but time itself is in the way (the beginning, a window, what has begun).
 */
export interface Binding {
  readonly kind: 'beginning' | 'begun' | 'window' | 'lag' | 'limit' | 'resource' | 'state';
  /** The rule's id; of the beginning and of what has begun the task's. */
  readonly id: string;
  readonly from: TaskEvent | null;
}

/**
 * By task of the plan: everything that keeps it from starting one unit of time earlier with the same length.
 * Law: a task without any could be moved by itself.
 */
export function bindingsOf(
  given: PlannerProblem,
  plan: PlanToExplain,
): ReadonlyMap<TaskId, readonly Binding[]> {
  const problem = completed(given);
  const past = pastFacts(problem);
  const byId = new Map(plan.placed.map((one) => [one.id, one]));
  return new Map(
    plan.placed.map((one): [TaskId, Binding[]] => {
      if (past.begun.has(one.id)) return [one.id, [{ kind: 'begun', id: one.id, from: null }]];
      return [
        one.id,
        [
          ...times(problem, one, past.now ?? 0),
          ...lags(problem, one, byId),
          ...stateBindings(problem, one, plan),
          ...resources(problem, one, plan),
          ...limits(problem, one, byId),
        ],
      ];
    }),
  );
}

function times({ tasks }: WholeProblem, { id, start }: Placed, now: number): Binding[] {
  const window = tasks.find((task) => task.id === id)?.notBefore ?? null;
  return [
    ...(start <= Math.max(0, now) ? [{ kind: 'beginning', id, from: null } as const] : []),
    ...(window !== null && start <= window ? [{ kind: 'window', id, from: null } as const] : []),
  ];
}

function lags(problem: WholeProblem, { id }: Placed, byId: ReadonlyMap<TaskId, Placed>): Binding[] {
  return problem.lags.flatMap((lag): Binding[] => {
    const from = byId.get(lag.from);
    const to = byId.get(lag.to);
    if (from === undefined || to === undefined || lag.from === lag.to) return [];
    const gap = to[lag.toAnchor] - from[lag.fromAnchor];
    if (lag.to === id && gap === lag.min)
      return [{ kind: 'lag', id: lag.id, from: { task: lag.from, anchor: lag.fromAnchor } }];
    if (lag.from === id && gap === lag.max)
      return [{ kind: 'lag', id: lag.id, from: { task: lag.to, anchor: lag.toAnchor } }];
    return [];
  });
}

/** Resources that have too little left in the unit of time before the task starts. */
function resources(
  problem: WholeProblem,
  one: Placed,
  { placed, changeovers }: PlanToExplain,
): Binding[] {
  const demands = problem.tasks.find(({ id }) => id === one.id)?.demands ?? {};
  const before = one.start - 1;
  if (one.end === one.start) return [];
  return problem.resources.flatMap(({ id, capacity }): Binding[] => {
    const units = demands[id] ?? 0;
    if (units === 0) return [];
    const all = capacity.filter(({ from }) => from <= before).at(-1)?.units ?? 0;
    const others = placed.flatMap((other) => {
      const taken = problem.tasks.find((task) => task.id === other.id)?.demands[id] ?? 0;
      const there = other.id !== one.id && other.start <= before && before < other.end;
      return there && taken > 0 ? [{ task: other.id, end: other.end, taken }] : [];
    });
    const changes = changeovers.flatMap((change) => {
      const resource = problem.stateful.find((stateful) => stateful.id === change.resource);
      const taken = resource?.changeoverDemands?.[change.from]?.[change.to]?.[id] ?? 0;
      return change.start <= before && before < change.end ? [taken] : [];
    });
    const taken = [...others.map((other) => other.taken), ...changes];
    if (taken.reduce((sum, part) => sum + part, units) <= all) return [];
    if (others.length === 0) return [{ kind: 'resource', id, from: null }];
    // Those that free it now are what it waits for.
    const over = others.filter(({ end }) => end === one.start);
    return (over.length > 0 ? over : others).map(({ task }) => ({
      kind: 'resource',
      id,
      from: { task, anchor: 'end' },
    }));
  });
}

/** Limits on sums of spans that would be passed. */
function limits(problem: WholeProblem, one: Placed, byId: ReadonlyMap<TaskId, Placed>): Binding[] {
  return problem.spanLimits.flatMap(({ id, spans, limit }): Binding[] => {
    let sum = 0;
    const grown: TaskEvent[] = [];
    for (const span of spans) {
      const from = byId.get(span.from);
      const to = byId.get(span.to);
      if (from === undefined || to === undefined) continue;
      const now = to[span.toAnchor] - from[span.fromAnchor];
      const moved = now + (span.from === one.id ? 1 : 0) - (span.to === one.id ? 1 : 0);
      sum += Math.max(0, moved);
      if (Math.max(0, moved) > Math.max(0, now))
        grown.push({ task: span.to, anchor: span.toAnchor });
    }
    return sum <= limit ? [] : grown.map((from) => ({ kind: 'limit', id, from }));
  });
}
