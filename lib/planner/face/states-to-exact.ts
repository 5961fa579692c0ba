import type { Event, ExactLag, ExactTask, RowUser, States } from '#lib/planner/exact/problem';
import type { WholeProblem } from '#lib/planner/face/defaults';
import type { PastFacts } from '#lib/planner/face/past';
import type { ResourceId, StateId, StatefulResource, Task, TaskEvent } from '#lib/planner/problem';

/** A stateful resource as the engine knows it, its states by their places. */
export interface MappedStates {
  readonly resource: StatefulResource;
  readonly names: readonly StateId[];
  /** All uses; those that the past has left behind are not asked of any more in `states`. */
  readonly row: readonly RowUser[];
  readonly states: States;
}

/** A task that the mapping adds: a changeover that takes units of resources. */
export interface ChangeTask {
  readonly task: ExactTask;
  readonly lag: ExactLag;
  readonly demands: Readonly<Record<ResourceId, number>>;
}

/**
 * The stateful resources of a problem for the engine. Each changeover that takes units of something becomes
 * a task of its own before each use that it may lead to; it has no length where it is not made.
 *
 * @param firstTask the place that the first added task will have
 */
export function mapStates(
  problem: WholeProblem,
  past: PastFacts,
  eventOf: (event: TaskEvent) => Event,
  firstTask: number,
): { readonly mapped: readonly MappedStates[]; readonly added: readonly ChangeTask[] } {
  const added: ChangeTask[] = [];
  const mapped = problem.stateful.map((resource): MappedStates => {
    const { id, initial, changeover, changeoverDemands = {} } = resource;
    const users = problem.tasks.flatMap((task, index) =>
      task.needs?.resource === id ? [{ task, index, state: task.needs.state }] : [],
    );
    const names = [...new Set([initial, ...users.map(({ state }) => state)])];
    const kindOf = (state: StateId): number => names.indexOf(state);
    const change = names.map((from) =>
      names.map((to) => (from === to ? 0 : (changeover[from]?.[to] ?? null))),
    );
    const changeTasks = users.flatMap(({ task, index, state }) =>
      past.begun.has(task.id)
        ? []
        : names.flatMap((from, kind) => {
            const demands = changeoverDemands[from]?.[state] ?? {};
            const time = change[kind]?.[kindOf(state)] ?? 0;
            if (from === state || time === 0) return [];
            if (!Object.values(demands).some((units) => units > 0)) return [];
            const place = firstTask + added.length;
            added.push({
              task: {
                name: id,
                minLength: 0,
                maxLength: time,
                notBefore: past.now,
                endBy: null,
              },
              lag: {
                name: id,
                from: { task: place, anchor: 'end' },
                to: { task: index, anchor: 'start' },
                min: 0,
              },
              demands,
            });
            return [{ user: index, from: kind, task: place }];
          }),
    );
    const row = users.map(({ task, index, state }): RowUser => ({
      task: index,
      begin: eventOf({ task: task.id, anchor: 'start' }),
      kind: kindOf(state),
      past: past.begun.has(task.id),
    }));
    const left = leftBehind(problem, past, row);
    return {
      resource,
      names,
      row,
      states: {
        name: id,
        initial: kindOf(initial),
        change,
        changeTasks,
        users: row.filter((user) => !left.has(user)),
      },
    };
  });
  return { mapped, added };
}

/** The stateful resources of a problem by themselves, for what is said of a plan of it. */
export function statesOf(problem: WholeProblem, past: PastFacts): readonly MappedStates[] {
  const placeOf = new Map(problem.tasks.map(({ id }, place) => [id, place]));
  return mapStates(
    problem,
    past,
    ({ task, anchor }) => ({ task: placeOf.get(task) ?? -1, anchor }),
    problem.tasks.length,
  ).mapped;
}

/**
 * Uses of the past before those of its last state: whatever they were, the resource is now in that state.
 */
function leftBehind(
  { tasks }: WholeProblem,
  past: PastFacts,
  row: readonly RowUser[],
): ReadonlySet<RowUser> {
  const done = inRow(tasks, row, ({ task }) => past.begun.get(tasks[task]?.id ?? '') ?? null);
  const last = done.at(-1);
  const from = done.findLastIndex(({ kind }) => kind !== last?.kind);
  return new Set(done.slice(0, from + 1));
}

/**
 * Users in the order of the row: by their starts; of equal starts those that may have no length first, then
 * by their place among the tasks. Those without times are left out.
 */
export function inRow(
  tasks: readonly Task[],
  users: readonly RowUser[],
  timesOf: (user: RowUser) => { readonly start: number; readonly end: number | null } | null,
): RowUser[] {
  return users
    .flatMap((user) => {
      const times = timesOf(user);
      if (times === null) return [];
      const known = user.past && times.end !== null ? times.end - times.start : null;
      const long = (known ?? tasks[user.task]?.minLength ?? 0) > 0 ? 1 : 0;
      return [{ user, start: times.start, long }];
    })
    .sort((a, b) => a.start - b.start || a.long - b.long || a.user.task - b.user.task)
    .map(({ user }) => user);
}
