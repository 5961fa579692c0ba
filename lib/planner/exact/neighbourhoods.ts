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
