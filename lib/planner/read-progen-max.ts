import type { ExactProblem } from '#lib/planner/exact/problem';
import { startsOnlyProblem, wrapOf } from '#lib/planner/read-starts';
import { reading, Words } from '#lib/planner/read-words';
import type { Result } from '#lib/result';

/**
 * A project with minimum and maximum lags in the text format of ProGen/max, `.sch` (Schwindt 1998): for each
 * task its successors with lags in brackets, then durations and demands, then capacities. Never throws.
 */
export function readProgenMax(text: string): Result<ExactProblem> {
  return reading(() => {
    const words = new Words(text, /[^\s[\]]+/g, null);
    const count = words.whole('number of tasks', 0, 100_000) + 2;
    const resources = words.whole('number of resources', 0, 1000);
    words.wholes(2, 'numbers of other resources, none of which are read', 0, 0);
    const lags: [number, number, number][] = [];
    for (let task = 0; task < count; task += 1) {
      words.whole(`task number ${task}`, task, task);
      words.whole('one mode', 1, 1);
      const several = words.whole('number of successors', 0, count);
      const next = words.wholes(several, 'successor', 0, count - 1);
      for (const other of next)
        lags.push([task, other, words.whole('lag in brackets', -(2 ** 28))]);
    }
    const lengths: number[] = [];
    const demands: number[][] = Array.from({ length: resources }, () => []);
    for (let task = 0; task < count; task += 1) {
      words.whole(`task number ${task}`, task, task);
      words.whole('one mode', 1, 1);
      lengths.push(words.whole('duration', 0));
      for (const row of demands) row.push(words.whole('demand', 0));
    }
    const capacities = words.wholes(resources, 'capacity', 0);
    words.end();
    // A best plan never waits for longer than one length or one lag of each task.
    const reach = [...lengths];
    for (const [task, , lag] of lags) reach[task] = Math.max(reach[task] ?? 0, lag);
    const horizon = reach.reduce((sum, most) => sum + most, 0);
    const goal = wrapOf(count - 1);
    return startsOnlyProblem({ lengths, capacities, demands, lags, horizon, goal });
  });
}
