import type { ExactLag, ExactTask, RowUser, States } from '#lib/planner/exact/problem';
import type { WholeProblem } from '#lib/planner/face/defaults';
import type { PastFacts } from '#lib/planner/face/past';
import type { ResourceId, StateId, StatefulResource, TaskEvent } from '#lib/planner/problem';
import type { Event } from '#lib/planner/exact/problem';

/** A stateful resource as the engine knows it, its states by their places. */
export interface MappedStates {
  readonly resource: StatefulResource;
  readonly names: readonly StateId[];
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
    const changeTasks = users.flatMap(({ task, index, state }, user) =>
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
            return [{ user, from: kind, task: place }];
          }),
    );
    return {
      resource,
      names,
      states: {
        name: id,
        initial: kindOf(initial),
        change,
        changeTasks,
        users: users.map(({ task, index, state }): RowUser => ({
          task: index,
          begin: eventOf({ task: task.id, anchor: 'start' }),
          kind: kindOf(state),
          past: past.begun.has(task.id),
        })),
      },
    };
  });
  return { mapped, added };
}
