import type { WholeProblem } from '#lib/planner/face/defaults';
import { planByRules } from '#lib/planner/plan-by-rules';
import type { Placed, TaskId } from '#lib/planner/problem';

/** More tasks than this are left to the engine's own generator, which is quicker. */
const MOST_TASKS = 80;

/**
 * A plan by rules for the exact planner to begin with, or null if there is none. Of optional tasks it takes as
 * few as the choices ask for, the first of each. It knows nothing of changeovers that take something, and of
 * goals; where it breaks a rule it is a hint.
 */
export function planToBeginWith(problem: WholeProblem, seed: number): readonly Placed[] | null {
  const { past } = problem;
  const begun = new Map((past?.begun ?? []).map((one) => [one.id, one]));
  const chosen = new Set([...begun.keys(), ...firstOfEach(problem, new Set(begun.keys()))]);
  const all = problem.tasks.filter(({ id, optional }) => !optional || chosen.has(id));
  if (all.length > MOST_TASKS) return null;
  const tasks = all.map((task) => {
    const facts = begun.get(task.id);
    if (facts === undefined) {
      return past === null ? task : { ...task, notBefore: Math.max(past.now, task.notBefore ?? 0) };
    }
    const { start, end } = facts;
    if (end === null) return { ...task, notBefore: start };
    const length = end - start;
    return { ...task, minLength: length, maxLength: length, notBefore: start, endBy: end };
  });
  const ids = new Set(tasks.map(({ id }) => id));
  const between = ({ from, to }: { readonly from: TaskId; readonly to: TaskId }): boolean =>
    ids.has(from) && ids.has(to);
  const answer = planByRules(
    {
      ...problem,
      tasks,
      lags: problem.lags.filter(between),
      spanLimits: problem.spanLimits.map((limit) => ({
        ...limit,
        spans: limit.spans.filter(between),
      })),
    },
    { seed, search: 'brief' },
  );
  return answer.status === 'feasible' ? answer.placed : null;
}

/** Of each choice so many of its first tasks as it asks for at least. */
function firstOfEach({ choices }: WholeProblem, begun: ReadonlySet<TaskId>): Set<TaskId> {
  const chosen = new Set(begun);
  for (const { tasks, least } of choices) {
    for (const task of tasks) {
      if (tasks.filter((one) => chosen.has(one)).length >= least) break;
      chosen.add(task);
    }
  }
  return chosen;
}
