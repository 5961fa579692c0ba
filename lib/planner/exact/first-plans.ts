/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import { mirrored, ScheduleGenerator, type StartsProblem } from './schedule-generation';

/** Placings of tasks at most, each about a microsecond for ten tasks. */
const PLACINGS = 8_000;
/** Rounds of forward, backward, forward at most, and how many without gain end them. */
const ROUNDS = 40;
const IDLE = 15;

/**
 * Good starts in milliseconds: schedule generation by latest start with more and more chance in it, each
 * plan justified to the right and to the left again (Valls, Ballestín, Quintanilla, EJOR 165, 2005), which
 * never makes it longer. `value` is what a plan costs; it ends early at `bound`, and once there is a plan when
 * `shouldStop` says so.
 *
 * @returns the best starts found, or null
 */
export function firstPlans(
  problem: StartsProblem,
  value: (starts: ArrayLike<number>) => number,
  bound: number,
  random: () => number,
  shouldStop: () => boolean,
): Int32Array | null {
  const horizon = Math.max(0, ...problem.high.map((high, task) => high + problem.lengths[task]!));
  const forward = new ScheduleGenerator(problem);
  const backward = new ScheduleGenerator(mirrored(problem, horizon));
  const tails = tailsOf(problem);
  let best: Int32Array | null = null;
  let least = Infinity;
  let idle = 0;
  const priority = new Float64Array(problem.lengths.length);
  const enough = (): boolean => forward.placings + backward.placings > PLACINGS;
  for (let round = 0; round < ROUNDS && idle < IDLE && least > bound; round += 1) {
    if ((round > 1 && enough()) || (round > 0 && shouldStop())) break;
    idle += 1;
    const noise = round === 0 ? 0 : 0.05 + 0.4 * random();
    const scale = Math.max(1, ...tails);
    // Half of the rounds begin with the tasks' own order by tail, half with that of the best plan.
    const base = best !== null && round % 2 === 1 ? best.map((start) => start) : null;
    for (let task = 0; task < priority.length; task += 1) {
      const own = base === null ? -tails[task]! : base[task]!;
      priority[task] = own + noise * scale * random();
    }
    let starts = forward.run(priority);
    for (let pass = 0; pass < 3 && starts !== null; pass += 1) {
      const cost = value(starts);
      if (cost < least) {
        least = cost;
        best = starts;
        idle = 0;
      } else if (pass > 0) break;
      if (least <= bound || pass === 2 || (round > 0 && enough()) || shouldStop()) break;
      for (let task = 0; task < priority.length; task += 1)
        priority[task] = -(starts[task]! + problem.lengths[task]!);
      const right = backward.run(priority);
      if (right === null) break;
      for (let task = 0; task < priority.length; task += 1)
        priority[task] = horizon - right[task]! - problem.lengths[task]!;
      starts = forward.run(priority);
    }
  }
  return best;
}

/** The longest way from each task's start to the end of the plan, over lags that lead forwards. */
function tailsOf({ lengths, lags }: StartsProblem): number[] {
  const tails = [...lengths];
  for (let round = 0; round < lengths.length; round += 1) {
    let changed = false;
    for (const [i, j, w] of lags) {
      if (w <= 0 || w + tails[j]! <= tails[i]!) continue;
      tails[i] = w + tails[j]!;
      changed = true;
    }
    if (!changed) break;
  }
  return tails;
}
