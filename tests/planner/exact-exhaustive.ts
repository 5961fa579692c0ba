import type { ExactPlan, ExactProblem } from '#lib/planner/exact/problem';
import { brokenRules, costOf } from './exact-checker';

/**
 * The least costs of a small problem by trying every start and every length; null if there is no plan.
 * Only what a single task or two of them show is cut off early.
 */
export function bestByTrying(problem: ExactProblem): readonly number[] | null {
  const starts: number[] = [];
  const ends: number[] = [];
  let best: number[] | null = null;
  const count = problem.tasks.length;
  const at = (task: number, anchor: 'start' | 'end'): number =>
    (anchor === 'start' ? starts[task] : ends[task]) ?? NaN;
  const last = problem.lags.map((lag) => Math.max(lag.from.task, lag.to.task));
  const place = (task: number): void => {
    if (task === count) {
      const plan: ExactPlan = { starts, ends };
      const costs = problem.goals.map((goal) => costOf(goal, plan));
      if (best !== null && !smaller(costs, best)) return;
      if (brokenRules(problem, plan).length === 0) best = costs;
      return;
    }
    const { minLength, maxLength } = problem.tasks[task] ?? { minLength: 0, maxLength: 0 };
    for (let start = 0; start + minLength <= problem.horizon; start += 1) {
      for (let length = minLength; length <= maxLength; length += 1) {
        if (start + length > problem.horizon) break;
        starts[task] = start;
        ends[task] = start + length;
        const holds = problem.lags.every(
          ({ from, to, min }, index) =>
            last[index] !== task || at(to.task, to.anchor) - at(from.task, from.anchor) >= min,
        );
        if (holds) place(task + 1);
      }
    }
  };
  place(0);
  return best;
}

function smaller(a: readonly number[], b: readonly number[]): boolean {
  for (let index = 0; index < a.length; index += 1) {
    const difference = (a[index] ?? 0) - (b[index] ?? 0);
    if (difference !== 0) return difference < 0;
  }
  return false;
}
