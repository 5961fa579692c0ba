import type { ExactAnswer, ExactProblem } from '#lib/planner/exact/problem';
import { solve } from '#lib/planner/exact/solve';
import {
  emptyExchange,
  NO_BEST,
  NO_BOUND,
  type ThreadMessage,
  type ThreadTask,
} from './search-thread';
import { startThread } from './typescript-thread';

/**
 * Solves here, or with two searches in threads of their own: one works on plans, the other on the bound, and
 * each learns what the other has proven of the first goal. The answer is the better plan with the better bound.
 */
export async function planInThreads(
  problem: ExactProblem,
  seed: number,
  milliseconds: number,
  threads: 1 | 2,
): Promise<ExactAnswer> {
  const until = Date.now() + milliseconds;
  if (threads === 1) return solve(problem, { seed, shouldStop: () => Date.now() >= until });
  const shared = emptyExchange();
  const sides = ['plans', 'bounds'] as const;
  const answers = await Promise.all(
    sides.map((side, index) => inThread({ problem, seed: seed + index, side, until, shared })),
  );
  return together(answers, shared);
}

function inThread(workerData: ThreadTask): Promise<ExactAnswer> {
  return new Promise((resolve, reject) => {
    const worker = startThread(new URL('./search-thread.ts', import.meta.url), workerData);
    worker.on('message', (message: ThreadMessage) => {
      if (message.kind === 'answer') resolve(message.answer);
    });
    worker.on('error', reject);
    worker.on('exit', (code) => reject(new Error(`A search ended with ${code} and no answer`)));
  });
}

/** The better of two answers, proven where the bound that both know reaches its value. */
function together(answers: readonly ExactAnswer[], shared: SharedArrayBuffer): ExactAnswer {
  const final = answers.find(({ status }) => status === 'infeasible' || status === 'proven');
  const statistics = {
    conflicts: answers.reduce((sum, answer) => sum + answer.statistics.conflicts, 0),
    decisions: answers.reduce((sum, answer) => sum + answer.statistics.decisions, 0),
  };
  if (final !== undefined) return { ...final, statistics };
  const [best = NO_BEST, bound = NO_BOUND] = new Int32Array(shared);
  const value = (answer: ExactAnswer): number => answer.goals[0]?.best ?? Infinity;
  const chosen = answers.reduce((a, b) => (value(b) < value(a) ? b : a));
  const [first, ...later] = chosen.goals;
  if (first === undefined) return { ...chosen, statistics };
  const least = bound === NO_BOUND ? first.bound : Math.max(bound, first.bound ?? bound);
  const proven = first.best !== null && first.best === best && least === best;
  const goals = [{ ...first, bound: least, proven }, ...later];
  const status = proven && later.length === 0 ? 'proven' : chosen.status;
  return { ...chosen, goals, status, statistics };
}
