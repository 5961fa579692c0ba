import { parentPort, workerData } from 'node:worker_threads';
import type { ExactAnswer, ExactPlan, ExactProblem, Exchange } from '#lib/planner/exact/problem';
import { solve } from '#lib/planner/exact/solve';

/** What a search in a thread of its own is given. */
export interface ThreadTask {
  readonly problem: ExactProblem;
  readonly seed: number;
  readonly side: 'plans' | 'bounds';
  /** By when to be done, on the machine's own clock in milliseconds. */
  readonly until: number;
  /** Two numbers that all threads of one problem share: best value and proven bound of the first goal. */
  readonly shared: SharedArrayBuffer;
  readonly warmStart?: ExactPlan;
}

/** What a thread says: a better value or bound, and at the end its answer. */
export type ThreadMessage =
  | { readonly kind: 'progress'; readonly best: number | null; readonly bound: number }
  | { readonly kind: 'answer'; readonly answer: ExactAnswer };

/** No value yet, in the shared numbers. */
export const NO_BEST = 2 ** 31 - 1;
export const NO_BOUND = -(2 ** 31);

/** Shared numbers before anything is known. */
export function emptyExchange(): SharedArrayBuffer {
  const shared = new SharedArrayBuffer(8);
  new Int32Array(shared).set([NO_BEST, NO_BOUND]);
  return shared;
}

function exchangeOver(shared: SharedArrayBuffer): Exchange {
  const cells = new Int32Array(shared);
  const improve = (
    cell: number,
    value: number,
    better: (a: number, b: number) => boolean,
  ): void => {
    for (let old = Atomics.load(cells, cell); better(value, old);) {
      const seen = Atomics.compareExchange(cells, cell, old, value);
      if (seen === old) return;
      old = seen;
    }
  };
  return {
    best: () => {
      const best = Atomics.load(cells, 0);
      return best === NO_BEST ? Infinity : best;
    },
    bound: () => Atomics.load(cells, 1),
    publish: (best, bound) => {
      if (Number.isFinite(best)) improve(0, best, (a, b) => a < b);
      improve(1, bound, (a, b) => a > b);
    },
  };
}

if (parentPort !== null) {
  const port = parentPort;
  const { problem, seed, side, until, shared, warmStart } = workerData as ThreadTask;
  const say = (message: ThreadMessage): void => port.postMessage(message);
  const answer = solve(problem, {
    seed,
    side,
    exchange: exchangeOver(shared),
    shouldStop: () => Date.now() >= until,
    onProgress: ({ goal, best, bound }) => {
      if (goal === 0) say({ kind: 'progress', best, bound });
    },
    ...(warmStart === undefined ? {} : { warmStart }),
  });
  say({ kind: 'answer', answer });
}
