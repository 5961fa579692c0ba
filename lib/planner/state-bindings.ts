import type { Binding, PlanToExplain } from '#lib/planner/bindings';
import type { WholeProblem } from '#lib/planner/face/defaults';
import { pastFacts, type PastFacts } from '#lib/planner/face/past';
import { inRow, statesOf, type MappedStates } from '#lib/planner/face/states-to-exact';
import type { Placed } from '#lib/planner/problem';

/** Stateful resources that would not be in the right state in time, if `one` started a unit earlier. */
export function stateBindings(problem: WholeProblem, one: Placed, plan: PlanToExplain): Binding[] {
  const needs = problem.tasks.find(({ id }) => id === one.id)?.needs ?? null;
  if (needs === null) return [];
  const past = pastFacts(problem);
  const states = statesOf(problem, past).find(({ resource }) => resource.id === needs.resource);
  if (states === undefined) return [];
  const found = firstClash(problem, past, states, one, plan);
  if (found === null) return [];
  const id = needs.resource;
  if (found === 'initial') return [{ kind: 'state', id, from: null }];
  return [{ kind: 'state', id, from: { task: found, anchor: 'end' } }];
}

/** The use (by its task's id) or the beginning that `one` would come too soon after, or be too late for. */
function firstClash(
  problem: WholeProblem,
  past: PastFacts,
  { row, names, states: { initial, change, changeTasks } }: MappedStates,
  one: Placed,
  { placed, changeovers }: PlanToExplain,
): string | null {
  const byId = new Map(placed.map((other) => [other.id, other]));
  const own = problem.tasks.findIndex(({ id }) => id === one.id);
  const timesOf = (task: number): Placed | null => {
    const times = byId.get(problem.tasks[task]?.id ?? '') ?? null;
    return times === null || task !== own
      ? times
      : { ...times, start: times.start - 1, end: times.end - 1 };
  };
  let state = initial;
  let free = 0;
  let last: string | null = null;
  let before: string | null = null;
  for (const { task, kind } of inRow(problem.tasks, row, (user) => timesOf(user.task))) {
    const times = timesOf(task);
    if (times === null) continue;
    if (kind !== state) {
      const known = past.begun.has(times.id) && (last === null || past.begun.has(last));
      const time = change[state]?.[kind] ?? null;
      const made = changeTasks.some((one) => one.user === task && one.from === state);
      const changed = changeovers.find(
        ({ from, to, end, start }) =>
          from === names[state] && to === names[kind] && start >= free && end <= times.start,
      );
      const tooSoon = time === null || times.start < free + time || (made && changed === undefined);
      if (!known && tooSoon) {
        // The one that is moved is the one to be explained, whichever of the two it is.
        const other = times.id === one.id ? before : times.id;
        return other === null || other === one.id ? (last ?? 'initial') : other;
      }
      state = kind;
      free = times.end;
      before = times.id;
    }
    if (times.end >= free) {
      free = times.end;
      before = times.id;
    }
    last = times.id;
  }
  return null;
}
