import type { PlacedChangeover } from '#lib/planner/answer';
import type { Goal, Placed, PlannerProblem } from '#lib/planner/problem';
import { worth, wrongWith } from './face-checker';

/**
 * The least values of a small problem's goals by trying every task in and out, every start, every length and
 * every moment of every changeover; null if there is no plan.
 *
 * @param limit only of plans that cost at most so much by another goal
 */
export function bestOfAll(
  problem: PlannerProblem,
  limit?: { readonly goal: Goal; readonly most: number },
): readonly number[] | null {
  const goals: readonly Goal[] = problem.goals ?? [
    { id: 'end', share: 1, kind: 'latest', events: 'all ends' },
  ];
  let best: number[] | null = null;
  const placed: Placed[] = [];
  const place = (index: number): void => {
    const task = problem.tasks[index];
    if (task === undefined) {
      const values = goals.map((goal) => worth(problem, goal, placed));
      if (best !== null && !isLess(values, best)) return;
      if (limit !== undefined && worth(problem, limit.goal, placed) > limit.most) return;
      if (anyChangeovers(problem, placed)) best = values;
      return;
    }
    const fact = problem.past?.begun.find(({ id }) => id === task.id);
    const from = fact?.start ?? 0;
    for (let start = from; start <= (fact?.start ?? problem.horizon); start += 1) {
      for (let end = fact?.end ?? start; end <= (fact?.end ?? problem.horizon); end += 1) {
        // Only what is known to be wrong by this task alone is cut off here.
        const now = problem.past?.now ?? 0;
        if (fact === undefined) {
          if (end - start < task.minLength || end - start > task.maxLength) continue;
          if (start < Math.max(now, task.notBefore ?? 0)) continue;
          if (task.endBy !== null && end > task.endBy) continue;
        }
        placed.push({ id: task.id, start, end });
        if (lagsHold(problem, placed)) place(index + 1);
        placed.pop();
      }
    }
    if (task.optional === true && fact === undefined) place(index + 1);
  };
  place(0);
  return best;
}

/** Lags between tasks that have not begun; the others are left to the checker. */
function lagsHold(problem: PlannerProblem, placed: readonly Placed[]): boolean {
  const last = placed[placed.length - 1];
  return problem.lags.every((lag) => {
    if (lag.from !== last?.id && lag.to !== last?.id) return true;
    if (problem.past?.begun.some(({ id }) => id === lag.from || id === lag.to)) return true;
    const from = placed.find(({ id }) => id === lag.from);
    const to = placed.find(({ id }) => id === lag.to);
    if (from === undefined || to === undefined) return true;
    const gap = to[lag.toAnchor] - from[lag.fromAnchor];
    return (lag.min === null || gap >= lag.min) && (lag.max === null || gap <= lag.max);
  });
}

/** Whether some way to place the changeovers keeps every rule. */
export function anyChangeovers(problem: PlannerProblem, placed: readonly Placed[]): boolean {
  let ways: PlacedChangeover[][] = [[]];
  for (const resource of problem.stateful) {
    const uses = problem.tasks
      .flatMap((task, index) => {
        const one = placed.find(({ id }) => id === task.id);
        const fact = problem.past?.begun.find(({ id }) => id === task.id);
        if (one === undefined || task.needs?.resource !== resource.id) return [];
        const least = fact?.end == null ? task.minLength : one.end - one.start;
        return [{ ...one, state: task.needs.state, long: least > 0 ? 1 : 0, index }];
      })
      .sort((a, b) => a.start - b.start || a.long - b.long || a.index - b.index);
    let state = resource.initial;
    let free = 0;
    for (const use of uses) {
      if (use.state !== state) {
        const length = resource.changeover[state]?.[use.state] ?? 0;
        const demands = resource.changeoverDemands?.[state]?.[use.state] ?? {};
        const known = problem.past?.begun.some(({ id }) => id === use.id) === true;
        if (length > 0) {
          const latest = use.start - length;
          const moves = Object.keys(demands).length > 0 && !known;
          const times: number[] = [];
          for (
            let time = latest;
            time >= (moves ? Math.max(free, problem.past?.now ?? 0) : latest);
            time -= 1
          )
            times.push(time);
          const from = state;
          const of = { resource: resource.id, from, to: use.state };
          ways = ways.flatMap((way) =>
            times.map((start) => [...way, { ...of, start, end: start + length }]),
          );
        }
        state = use.state;
        free = use.end;
      }
      free = Math.max(free, use.end);
    }
  }
  return ways.some((changeovers) => wrongWith(problem, { placed, changeovers }).length === 0);
}

function isLess(a: readonly number[], b: readonly number[]): boolean {
  for (let index = 0; index < a.length; index += 1) {
    const difference = (a[index] ?? 0) - (b[index] ?? 0);
    if (difference !== 0) return difference < 0;
  }
  return false;
}
