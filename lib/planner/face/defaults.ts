import type { PlannerProblem, Task } from '#lib/planner/problem';

/** A problem in which everything that may be left out is said. */
export type WholeProblem = Omit<Required<PlannerProblem>, 'tasks'> & {
  readonly tasks: readonly Required<Task>[];
};

/** The goal of a problem that names none: the latest end. */
export const LATEST_END = { id: 'end', share: 1, kind: 'latest', events: 'all ends' } as const;

/**
 * The problem with the defaults of all that was left out: tasks must be in the plan, nothing is chosen
 * among, the latest end is the goal, nothing has begun.
 */
export function completed(problem: PlannerProblem): WholeProblem {
  return {
    ...problem,
    tasks: problem.tasks.map((task) => ({ ...task, optional: task.optional ?? false })),
    choices: problem.choices ?? [],
    goals: problem.goals ?? [LATEST_END],
    past: problem.past ?? null,
  };
}
