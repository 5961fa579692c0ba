import type { PlacedChangeover } from '#lib/planner/answer';
import type { ExactPlan } from '#lib/planner/exact/problem';
import type { WholeProblem } from '#lib/planner/face/defaults';
import { inRow, type MappedStates } from '#lib/planner/face/states-to-exact';
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

/** A use of a stateful resource (by its task) that begins another state than the use before it. */
interface Change {
  readonly from: number;
  readonly to: number;
  readonly task: number;
}

/** The changes of state that a placement asks for, in the order of the row. */
function changesIn(
  tasks: readonly Task[],
  { row, states: { initial } }: MappedStates,
  timesOf: (place: number) => { readonly start: number; readonly end: number } | null,
): Change[] {
  let state = initial;
  return inRow(tasks, row, ({ task }) => timesOf(task)).flatMap(({ kind, task }) => {
    const from = state;
    state = kind;
    return from === kind ? [] : [{ from, to: kind, task }];
  });
}

/** All changeovers of a plan: where the plan has them if they take something, else as late as can be. */
export function changeoversOf(
  problem: WholeProblem,
  mapped: Mapped,
  plan: ExactPlan,
): PlacedChangeover[] {
  const placed = new Map(placedOf(problem, mapped, plan).map((one) => [one.id, one]));
  const timesOf = (place: number): Placed | null =>
    placed.get(problem.tasks[place]?.id ?? '') ?? null;
  const all = mapped.states.flatMap((one) => {
    const { names, resource, states } = one;
    return changesIn(problem.tasks, one, timesOf).flatMap(({ from, to, task }) => {
      const length = states.change[from]?.[to] ?? 0;
      const own = states.changeTasks.find((made) => made.user === task && made.from === from);
      const end = own === undefined ? timesOf(task)?.start : plan.ends[own.task];
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
  const timesOf = (place: number) => {
    if (absent.includes(place)) return null;
    return { start: starts[startMarks.get(place) ?? place] ?? 0, end: ends[place] ?? 0 };
  };
  for (const one of mapped.states) {
    for (const { from, to, task } of changesIn(problem.tasks, one, timesOf)) {
      const { changeTasks, change } = one.states;
      const own = changeTasks.find((made) => made.user === task && made.from === from);
      const times = timesOf(task);
      if (own === undefined || times === null) continue;
      ends[own.task] = times.start;
      starts[own.task] = times.start - (change[from]?.[to] ?? 0);
    }
  }
  return { starts, ends, absent };
}
