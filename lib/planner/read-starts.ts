import type { ExactProblem, Goal } from '#lib/planner/exact/problem';

/** What the published formats have in common: tasks of one length each, lags between starts. */
export interface StartsOnly {
  readonly lengths: readonly number[];
  readonly capacities: readonly number[];
  /** By resource, then by task. */
  readonly demands: readonly (readonly number[])[];
  /** `[i, j, w]`: start of j ≥ start of i + w. */
  readonly lags: readonly (readonly [number, number, number])[];
  /** `[i, j, a, b]`: j starts a after i ends, or i starts b after j ends. */
  readonly setups?: readonly (readonly [number, number, number, number])[];
  readonly horizon: number;
  readonly goal: Goal;
  /** Names of tasks; their numbers from `firstNumber` on where absent. */
  readonly names?: readonly string[];
  readonly firstNumber?: number;
}

/** The same as a problem of the exact engine. */
export function startsOnlyProblem(from: StartsOnly): ExactProblem {
  const name = (task: number): string =>
    from.names?.[task] ?? `task ${task + (from.firstNumber ?? 0)}`;
  return {
    horizon: from.horizon,
    tasks: from.lengths.map((length, task) => ({
      name: name(task),
      minLength: length,
      maxLength: length,
      notBefore: null,
      endBy: null,
    })),
    resources: from.capacities.map((units, resource) => ({
      name: `resource ${resource + 1}`,
      capacity: [{ from: 0, units }],
      demands: from.demands[resource] ?? [],
    })),
    lags: from.lags.map(([i, j, min]) => ({
      name: `${name(j)} at least ${min} after the start of ${name(i)}`,
      from: { task: i, anchor: 'start' as const },
      to: { task: j, anchor: 'start' as const },
      min,
    })),
    setups: (from.setups ?? []).map(([first, second, between, back]) => ({
      name: `${name(first)} and ${name(second)} one after the other`,
      first,
      second,
      between,
      back,
    })),
    goals: [from.goal],
    frozen: [],
  };
}

/** The goal of the published formats: the last task's start is to be early. */
export function wrapOf(task: number): Goal {
  return { name: 'wrap', kind: 'latest', events: [{ task, anchor: 'start' }] };
}
