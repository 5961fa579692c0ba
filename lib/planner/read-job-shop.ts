import type { ExactProblem } from '#lib/planner/exact/problem';
import { startsOnlyProblem } from '#lib/planner/read-starts';
import { reading, Words } from '#lib/planner/read-words';
import type { Result } from '#lib/result';

/**
 * A job shop as it is commonly printed: jobs and machines, then for each job its machines (from 0) with
 * times, in their order; what follows `#` is a remark. The goal is the end of the last job. Never throws.
 */
export function readJobShop(text: string): Result<ExactProblem> {
  return reading(() => {
    const words = new Words(text, /\S+/g, '#');
    const jobs = words.whole('number of jobs', 1, 10_000);
    const machines = words.whole('number of machines', 1, 10_000);
    const lengths: number[] = [];
    const names: string[] = [];
    const demands: number[][] = Array.from({ length: machines }, () => []);
    const lags: [number, number, number][] = [];
    for (let job = 0; job < jobs; job += 1) {
      for (let step = 0; step < machines; step += 1) {
        const machine = words.whole('machine', 0, machines - 1);
        const length = words.whole('time', 0);
        const task = lengths.length;
        if (step > 0) lags.push([task - 1, task, lengths[task - 1] ?? 0]);
        lengths.push(length);
        names.push(`job ${job + 1} on machine ${machine}`);
        demands.forEach((row, other) => row.push(other === machine ? 1 : 0));
      }
    }
    words.end();
    const horizon = lengths.reduce((sum, length) => sum + length, 0);
    const events = lengths.map((_, task) => ({ task, anchor: 'end' as const }));
    return startsOnlyProblem({
      lengths,
      capacities: demands.map(() => 1),
      demands,
      lags,
      horizon,
      goal: { name: 'wrap', kind: 'latest', events },
      names,
    });
  });
}
