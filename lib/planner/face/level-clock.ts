import type { ExactPlannerOptions } from '#lib/planner/answer';
import type { WholeProblem } from '#lib/planner/face/defaults';

/** When the time of each level is over. */
export interface LevelClock {
  isOver(level: number): boolean;
  /** Since the clock was made; null where there is no clock. */
  seconds(): number | null;
}

/**
 * The time of each level by its share of all. A level's time begins when the one before ends, at the latest
 * when its own share begins, so that what one level leaves goes to the next.
 */
export function levelClock({ goals }: WholeProblem, options: ExactPlannerOptions): LevelClock {
  const { now, limitSeconds, shouldStop } = options;
  const begun = now?.() ?? 0;
  const seconds = (): number | null => (now === undefined ? null : now() - begun);
  const all = goals.reduce((sum, { share }) => sum + share, 0);
  let sum = 0;
  const until = goals.map(({ share }, level) => {
    sum += share;
    // The last has what is left; where nobody has a share all may take all.
    return level === goals.length - 1 || all === 0 ? 1 : sum / all;
  });
  return {
    seconds,
    isOver: (level) => {
      if (shouldStop?.(level) === true) return true;
      if (limitSeconds === undefined) return false;
      return (seconds() ?? 0) >= limitSeconds * (until[level] ?? 1);
    },
  };
}
