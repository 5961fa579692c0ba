import type { PlacedChangeover } from '#lib/planner/answer';
import type { ExactPlan } from '#lib/planner/exact/problem';
import type { WholeProblem } from '#lib/planner/face/defaults';
import type { MappedStates } from '#lib/planner/face/states-to-exact';
import type { Mapped } from '#lib/planner/face/to-exact';
import type { Placed, Task } from '#lib/planner/problem';

/** The engine's plan in the problem's words: the tasks that are in it. */
export function placedOf(problem: WholeProblem, mapped: Mapped, plan: ExactPlan): Placed[] {
  const absent = new Set(plan.absent ?? []);
  return problem.tasks.flatMap(({ id }, place) => {
    if (absent.has(place)) return [];
    const start = mapped.past.begun.get(id)?.start ?? plan.starts[place] ?? 0;
    return [{ id, start, end: plan.ends[place] ?? 0 }];
  });
}

/** A use of a stateful resource that begins another state than the use before it. */
export interface Change {
  /** Places of the states, and of the user in its row. */
  readonly from: number;
  readonly to: number;
  readonly user: number;
}

/**
 * The changes of state that a placement asks for, in the order of the row. Uses stand by their starts; of equal
 * starts those that may have no length first, then by their place among the tasks.
 */
export function changesIn(
  tasks: readonly Task[],
  { states: { users, initial } }: MappedStates,
  startOf: (place: number) => number | null,
): Change[] {
  const row = users
    .flatMap(({ task, kind }, user) => {
      const start = startOf(task);
      const long = (tasks[task]?.minLength ?? 0) > 0 ? 1 : 0;
      return start === null ? [] : [{ task, kind, user, start, long }];
    })
    .sort((a, b) => a.start - b.start || a.long - b.long || a.task - b.task);
  let state = initial;
  return row.flatMap(({ kind, user }) => {
    const from = state;
    state = kind;
    return from === kind ? [] : [{ from, to: kind, user }];
  });
}

/** All changeovers of a plan: where the plan has them if they take something, else as late as can be. */
export function changeoversOf(
  problem: WholeProblem,
  mapped: Mapped,
  plan: ExactPlan,
): PlacedChangeover[] {
  const placed = new Map(placedOf(problem, mapped, plan).map((one) => [one.id, one]));
  const startOf = (place: number): number | null =>
    placed.get(problem.tasks[place]?.id ?? '')?.start ?? null;
  const all = mapped.states.flatMap((one) => {
    const { names, resource, states } = one;
    return changesIn(problem.tasks, one, startOf).flatMap(({ from, to, user }) => {
      const { task: place } = states.users[user] ?? { task: -1 };
      const length = states.change[from]?.[to] ?? 0;
      const own = states.changeTasks.find((task) => task.user === user && task.from === from);
      const end = own === undefined ? startOf(place) : plan.ends[own.task];
      if (end == null || length === 0) return [];
      const start = own === undefined ? end - length : (plan.starts[own.task] ?? end - length);
      const of = { resource: resource.id, from: names[from] ?? '', to: names[to] ?? '' };
      return [{ ...of, start, end }];
    });
  });
  return all.sort((a, b) => a.start - b.start || (a.resource < b.resource ? -1 : 1));
}

/** A placement as a plan for the engine to begin with; changeovers are put as late as can be. */
export function planFrom(
  problem: WholeProblem,
  mapped: Mapped,
  placed: readonly Placed[],
): ExactPlan {
  const byId = new Map(placed.map((one) => [one.id, one]));
  const { exact, past, starts: startMarks } = mapped;
  const starts = exact.tasks.map(() => past.now ?? 0);
  const ends = [...starts];
  const absent: number[] = [];
  problem.tasks.forEach(({ id, optional }, place) => {
    const one = byId.get(id);
    if (one === undefined) {
      if (optional) absent.push(place);
      return;
    }
    starts[place] = one.start;
    ends[place] = one.end;
  });
  for (const { task, start, end } of exact.frozen) {
    starts[task] = start;
    if (end !== null) ends[task] = end;
  }
  const startOf = (place: number): number | null => {
    if (absent.includes(place)) return null;
    return starts[startMarks.get(place) ?? place] ?? null;
  };
  for (const one of mapped.states) {
    for (const { from, to, user } of changesIn(problem.tasks, one, startOf)) {
      const { states } = one;
      const own = states.changeTasks.find((task) => task.user === user && task.from === from);
      const begin = startOf(states.users[user]?.task ?? -1);
      if (own === undefined || begin === null) continue;
      ends[own.task] = begin;
      starts[own.task] = begin - (states.change[from]?.[to] ?? 0);
    }
  }
  return { starts, ends, absent };
}
