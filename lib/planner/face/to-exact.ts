import type {
  Event,
  ExactLag,
  ExactProblem,
  ExactTask,
  Frozen,
  SpanSum,
} from '#lib/planner/exact/problem';
import type { WholeProblem } from '#lib/planner/face/defaults';
import { mapGoal } from '#lib/planner/face/goals-to-exact';
import { pastFacts, type PastFacts } from '#lib/planner/face/past';
import { mapStates, type ChangeTask, type MappedStates } from '#lib/planner/face/states-to-exact';
import type { TaskEvent } from '#lib/planner/problem';

/** A problem in the engine's words. The tasks of the problem come first, in their order. */
export interface Mapped {
  readonly exact: ExactProblem;
  readonly past: PastFacts;
  readonly states: readonly MappedStates[];
  /** By task that is under way: the task that stands for its start. */
  readonly starts: ReadonlyMap<number, number>;
  readonly eventOf: (event: TaskEvent) => Event;
}

/**
 * Puts a problem without faults into the engine's words.
 *
 * What is done is a task that cannot move and takes nothing. A task that is under way is two: a moment at which
 * it started, and what is left of it, from now on.
 */
export function toExact(problem: WholeProblem): Mapped {
  const past = pastFacts(problem);
  const placeOf = new Map(problem.tasks.map(({ id }, index) => [id, index]));
  const tasks: ExactTask[] = [];
  const frozen: Frozen[] = [];
  const running: { readonly place: number; readonly id: string; readonly start: number }[] = [];
  for (const [place, task] of problem.tasks.entries()) {
    const { id, minLength, maxLength, notBefore, endBy, optional } = task;
    const begun = past.begun.get(id);
    if (begun === undefined) {
      const earliest = past.now === null ? notBefore : Math.max(past.now, notBefore ?? past.now);
      tasks.push({ name: id, minLength, maxLength, notBefore: earliest, endBy, optional });
      continue;
    }
    const { start, end } = begun;
    const facts = { name: id, notBefore: null, optional };
    if (end !== null) {
      tasks.push({ ...facts, minLength: end - start, maxLength: end - start, endBy: null });
      frozen.push({ task: place, start, end });
      continue;
    }
    const now = past.now ?? start;
    tasks.push({
      ...facts,
      minLength: Math.max(0, minLength - (now - start)),
      maxLength: Math.max(0, maxLength - (now - start)),
      endBy: endBy === null ? null : Math.max(endBy, now),
    });
    frozen.push({ task: place, start: now, end: null });
    running.push({ place, id, start });
  }
  const starts = new Map<number, number>();
  for (const { place, id, start } of running) {
    starts.set(place, tasks.length);
    frozen.push({ task: tasks.length, start, end: start });
    tasks.push({ name: id, minLength: 0, maxLength: 0, notBefore: null, endBy: null });
  }
  const eventOf = ({ task, anchor }: TaskEvent): Event => {
    const place = placeOf.get(task) ?? -1;
    return { task: anchor === 'start' ? (starts.get(place) ?? place) : place, anchor };
  };
  const { mapped: states, added } = mapStates(problem, past, eventOf, tasks.length);
  tasks.push(...added.map(({ task }) => task));
  return {
    past,
    states,
    starts,
    eventOf,
    exact: {
      horizon: problem.horizon,
      tasks,
      frozen,
      resources: resourcesOf(problem, past, added, tasks.length),
      lags: [...lagsOf(problem, past, eventOf), ...added.map(({ lag }) => lag)],
      setups: [],
      states: states.map((one) => one.states),
      spanSums: spanSumsOf(problem, past, eventOf),
      choices: problem.choices.map(({ id, tasks: some, least, most }) => ({
        name: id,
        tasks: some.map((task) => placeOf.get(task) ?? -1),
        least,
        most,
      })),
      goals: problem.goals.map((goal) =>
        mapGoal(goal, { problem, past, eventOf, placeOf, states }),
      ),
    },
  };
}

function resourcesOf(
  problem: WholeProblem,
  past: PastFacts,
  added: readonly ChangeTask[],
  count: number,
): ExactProblem['resources'] {
  return problem.resources.map(({ id, capacity }) => {
    const demands = Array.from({ length: count }, (_, place) => {
      const task = problem.tasks[place];
      if (task === undefined) return 0;
      // What is over takes nothing any more, since all else begins later.
      return past.begun.get(task.id)?.end == null ? (task.demands[id] ?? 0) : 0;
    });
    added.forEach((one, index) => {
      demands[count - added.length + index] = one.demands[id] ?? 0;
    });
    return { name: id, capacity, demands };
  });
}

function lagsOf(
  problem: WholeProblem,
  past: PastFacts,
  eventOf: (event: TaskEvent) => Event,
): ExactLag[] {
  return problem.lags.flatMap((lag): ExactLag[] => {
    const { id: name, min, max } = lag;
    const from = { task: lag.from, anchor: lag.fromAnchor };
    const to = { task: lag.to, anchor: lag.toAnchor };
    if (past.isPast(from) && past.isPast(to)) return [];
    return [
      ...(min === null ? [] : [{ name, from: eventOf(from), to: eventOf(to), min }]),
      ...(max === null ? [] : [{ name, from: eventOf(to), to: eventOf(from), min: 0 - max }]),
    ];
  });
}

function spanSumsOf(
  problem: WholeProblem,
  past: PastFacts,
  eventOf: (event: TaskEvent) => Event,
): SpanSum[] {
  return problem.spanLimits.flatMap(({ id, spans, limit }) => {
    const all = spans.map((span) => ({
      from: { task: span.from, anchor: span.fromAnchor },
      to: { task: span.to, anchor: span.toAnchor },
    }));
    if (all.every(({ from, to }) => past.isPast(from) && past.isPast(to))) return [];
    return [
      {
        name: id,
        most: limit,
        spans: all.map(({ from, to }) => ({ from: eventOf(from), to: eventOf(to), weight: 1 })),
      },
    ];
  });
}
