import type { ExactProblem } from '#lib/planner/exact/problem';
import { startsOnlyProblem, wrapOf } from '#lib/planner/read-starts';
import { reading, Words } from '#lib/planner/read-words';
import type { Result } from '#lib/result';

/**
 * A single-mode project in the PSPLIB text format `.sm` (Kolisch, Sprecher, "PSPLIB", EJOR 96, 1997):
 * precedence, requests and durations, availability of renewable resources. Never throws on any text.
 */
export function readPsplib(text: string): Result<ExactProblem> {
  return reading(() => {
    const words = new Words(text, /[^\s:]+/g, null);
    words.skipTo('supersource/sink');
    words.mark(')');
    const count = words.whole('number of jobs', 1, 100_000);
    words.skipTo('renewable');
    const resources = words.whole('number of renewable resources', 0, 1000);
    words.skipTo('PRECEDENCE');
    words.skipTo('successors');
    const successors: number[][] = [];
    for (let job = 1; job <= count; job += 1) {
      words.whole(`job number ${job}`, job, job);
      words.whole('one mode', 1, 1);
      const several = words.whole('number of successors', 0, count);
      successors.push(words.wholes(several, 'successor', 1, count));
    }
    words.skipTo('REQUESTS/DURATIONS');
    while (!/^-+$/.test(words.next)) words.take('a line of dashes');
    words.take('a line of dashes');
    const lengths: number[] = [];
    const demands: number[][] = Array.from({ length: resources }, () => []);
    for (let job = 1; job <= count; job += 1) {
      words.whole(`job number ${job}`, job, job);
      words.whole('one mode', 1, 1);
      lengths.push(words.whole('duration', 0));
      for (const row of demands) row.push(words.whole('request', 0));
    }
    words.skipTo('RESOURCEAVAILABILITIES');
    for (let resource = 1; resource <= resources; resource += 1) {
      words.mark('R');
      words.whole(`resource number ${resource}`, resource, resource);
    }
    const capacities = words.wholes(resources, 'available units', 0);
    const lags = successors.flatMap((row, job) =>
      row.map((next) => [job, next - 1, lengths[job] ?? 0] as const),
    );
    const horizon = lengths.reduce((sum, length) => sum + length, 0);
    const goal = wrapOf(count - 1);
    return startsOnlyProblem({
      lengths,
      capacities,
      demands,
      lags,
      horizon,
      goal,
      firstNumber: 1,
    });
  });
}
