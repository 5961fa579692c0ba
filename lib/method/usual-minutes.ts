import { LONGEST_STEP_S } from '#lib/episode/step-limits';
import type { ActionKind, ReadStep } from '#lib/method/method-step';

/** Shortest, usual and longest time of a step, in seconds. */
export interface StepTime {
  readonly lowS: number;
  readonly usualS: number;
  readonly highS: number;
}

/** Minutes of a step whose text says none, by what is done: common practice, no source. Shown as a guess. */
const GUESSES: Readonly<Record<ActionKind, readonly [number, number, number]>> = {
  oven: [20, 30, 45],
  boil: [5, 10, 20],
  fry: [4, 6, 10],
  heat: [3, 5, 10],
  grill: [3, 5, 8],
  airFry: [10, 15, 20],
  microwave: [1, 2, 4],
  chill: [30, 60, 120],
  freeze: [60, 120, 240],
  wait: [5, 10, 20],
  put: [1, 1, 2],
  set: [1, 1, 2],
  check: [0.5, 1, 2],
  prep: [3, 5, 10],
};

/**
 * The times of a step: its usual one is the middle of what is said, or the end that is said where the other is left
 * open; a guess where nothing is. Seven days at most. Of '20 to 25 minutes' → 1200, 1350, 1500 s.
 */
export function stepTime({ minutes, kind }: Pick<ReadStep, 'minutes' | 'kind'>): StepTime {
  if (minutes === null) {
    const [low, usual, high] = GUESSES[kind];
    return { lowS: low * 60, usualS: usual * 60, highS: high * 60 };
  }
  const low = minutes.low ?? minutes.high ?? 0;
  const high = minutes.high ?? minutes.low ?? 0;
  const seconds = (value: number) => Math.min(LONGEST_STEP_S, Math.round(value * 60));
  return { lowS: seconds(low), usualS: seconds((low + high) / 2), highS: seconds(high) };
}
