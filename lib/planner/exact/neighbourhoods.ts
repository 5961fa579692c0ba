/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import type { Model } from './model';
import type { ExactPlan } from './problem';

/**
 * Marks the tasks of one neighbourhood of a plan as free: those that are under way in a window of time, or
 * a few chosen by chance. At least two are free where there are two.
 */
export function chooseFree(
  { start }: Model,
  plan: ExactPlan,
  free: Uint8Array,
  random: () => number,
): void {
  const count = start.length;
  free.fill(0);
  const end = Math.max(1, ...plan.ends);
  if (random() < 0.7) {
    const length = end * (0.15 + 0.35 * random());
    const from = (end - length) * random();
    for (let task = 0; task < count; task += 1) {
      if (plan.ends[task]! > from && plan.starts[task]! < from + length) free[task] = 1;
    }
    return;
  }
  const share = 0.15 + 0.3 * random();
  for (let task = 0; task < count; task += 1) {
    if (random() < share) free[task] = 1;
  }
}

/** One run in so many is a visit at first; after so many visits in vain, one in twice as many. */
const EVERY = 3;
const IN_VAIN = 8;
/** The rarest: one run in EVERY × 2 ** MOST_DOUBLINGS. */
const MOST_DOUBLINGS = 4;

/** Which runs visit a neighbourhood: the more often that was in vain, the more runs are for the proof. */
export class Visits {
  private inVain = 0;

  /** Whether run `run` is a visit; if so it counts as in vain until a plan is found. */
  isDue(run: number): boolean {
    const doublings = Math.min(MOST_DOUBLINGS, Math.floor(this.inVain / IN_VAIN));
    if (run % (EVERY << doublings) !== 0) return false;
    this.inVain += 1;
    return true;
  }

  /** There is a better plan. */
  found(): void {
    this.inVain = 0;
  }
}
