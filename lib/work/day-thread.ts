import { parentPort } from 'node:worker_threads';
import type { DayFacts } from '#lib/shoot/day-facts';
import { solveDay, type DayProgress, type SolvedDay } from '#lib/shoot/solve-day';

/** A day to be searched in a thread of its own. */
export interface DayTask {
  readonly facts: DayFacts;
  readonly seed: number;
  /** One number that both sides see: 1 ends the search with what is known. */
  readonly stop: SharedArrayBuffer;
}

/** What the thread says: each better plan or bound, and at the end its answer. */
export type DayMessage =
  | { readonly kind: 'progress'; readonly progress: DayProgress }
  | { readonly kind: 'solved'; readonly solved: SolvedDay };

if (parentPort !== null) {
  const port = parentPort;
  const say = (message: DayMessage): void => port.postMessage(message);
  port.on('message', ({ facts, seed, stop }: DayTask) => {
    const flag = new Int32Array(stop);
    const solved = solveDay(facts, {
      seed,
      shouldStop: () => Atomics.load(flag, 0) === 1,
      onProgress: (progress) => say({ kind: 'progress', progress }),
    });
    say({ kind: 'solved', solved });
  });
}
