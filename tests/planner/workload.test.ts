import { expect, test } from 'vitest';
import { modelOf } from '#lib/planner/exact/model';
import { solve } from '#lib/planner/exact/solve';
import { workloadBound } from '#lib/planner/exact/workload';
import { startsOnlyProblem, wrapOf } from '#lib/planner/read-starts';

/** Four tasks of 3 at 2 of 5 units, all after 2 and each with 1 to follow it. */
const problem = startsOnlyProblem({
  lengths: [2, 3, 3, 3, 3, 0],
  capacities: [5],
  demands: [[0, 2, 2, 2, 2, 0]],
  lags: [1, 2, 3, 4].flatMap((task): [number, number, number][] => [
    [0, task, 2],
    [task, 5, 4],
  ]),
  horizon: 40,
  goal: wrapOf(5),
});

test('the work on a resource, after its head and before its tail, is a bound of the wrap', () => {
  const model = modelOf(problem);
  const [goal] = problem.goals;
  if (!model?.engine.propagateAll() || goal?.kind !== 'latest') throw new Error('no such problem');
  // 4 · 3 · 2 units shared by 5 take 4.8, in whole times 5; 2 before and 1 after: worked out by hand.
  expect(workloadBound(model, goal.events)).toBe(2 + 5 + 1);
  // Two at a time is all there is room for: 2 + 6 + 1.
  expect(solve(problem, { seed: 1, shouldStop: () => false })).toMatchObject({
    status: 'proven',
    goals: [{ best: 9, bound: 9 }],
  });
});

test('work that does not fit before the horizon has no plan', () => {
  const short = { ...problem, horizon: 7 };
  expect(solve(short, { seed: 1, shouldStop: () => false }).status).toBe('infeasible');
});
