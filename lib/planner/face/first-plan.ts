import type { WholeProblem } from '#lib/planner/face/defaults';
import { planByRules } from '#lib/planner/plan-by-rules';
import type { Placed } from '#lib/planner/problem';

/** More tasks than this are left to the engine's own generator, which is quicker. */
const MOST_TASKS = 80;

/**
 * A plan by rules for the exact planner to begin with, or null if there is none. It knows nothing of optional
 * tasks, of changeovers that take something, and of goals; where it breaks a rule it is a hint.
 */
export function planToBeginWith(problem: WholeProblem, seed: number): readonly Placed[] | null {
  const { past } = problem;
  if (problem.tasks.length > MOST_TASKS) return null;
  const begun = new Map((past?.begun ?? []).map((one) => [one.id, one]));
  const tasks = problem.tasks.map((task) => {
    const facts = begun.get(task.id);
    if (facts === undefined) {
      return past === null ? task : { ...task, notBefore: Math.max(past.now, task.notBefore ?? 0) };
    }
    const { start, end } = facts;
    if (end === null) return { ...task, notBefore: start };
    const length = end - start;
    return { ...task, minLength: length, maxLength: length, notBefore: start, endBy: end };
  });
  const answer = planByRules({ ...problem, tasks }, { seed, brief: true });
  return answer.status === 'feasible' ? answer.placed : null;
}
