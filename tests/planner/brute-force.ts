import type { Placed, PlannerProblem } from '#lib/planner/problem';
import { faultsOf } from './tiny-checker';

/** The earliest possible wrap by trying every start and length; null if nothing keeps all rules. */
export function earliestWrap(problem: PlannerProblem): number | null {
  let best: number | null = null;
  const place = (index: number, placed: readonly Placed[], wrap: number): void => {
    if (best !== null && wrap >= best) return;
    const task = problem.tasks[index];
    if (task === undefined) {
      if (faultsOf(problem, placed).length === 0) best = wrap;
      return;
    }
    for (let start = task.notBefore ?? 0; start <= problem.horizon; start += 1) {
      for (let length = task.minLength; length <= task.maxLength; length += 1) {
        const end = start + length;
        if (end > Math.min(problem.horizon, task.endBy ?? problem.horizon)) break;
        place(index + 1, [...placed, { id: task.id, start, end }], Math.max(wrap, end));
      }
    }
  };
  place(0, [], 0);
  return best;
}
