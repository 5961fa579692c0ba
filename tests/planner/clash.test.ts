import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planExactly } from '#lib/planner/plan-exactly';
import type { Lag, PlannerProblem, Task } from '#lib/planner/problem';
import { aTask } from './a-task';
import { wrongWith } from './face-checker';
import { bestOfAll } from './face-exhaustive';
import { faceProblems, type FaceFeatures } from './face-random';

const FAR = 60;

/** The problem with these rules alone, in the test's own words: others are made so wide that they say nothing. */
function only(problem: PlannerProblem, ids: readonly string[]): PlannerProblem {
  const has = ({ id }: { readonly id: string }) => ids.includes(id);
  return {
    ...problem,
    goals: [],
    horizon: ids.includes('horizon') ? problem.horizon : FAR,
    tasks: problem.tasks.map((task) => ({
      ...task,
      notBefore: has(task) ? task.notBefore : 0,
      endBy: has(task) ? task.endBy : FAR,
      needs: ids.includes('oven') ? task.needs : null,
    })),
    stateful: problem.stateful.filter(has),
    resources: problem.resources.map((resource) =>
      has(resource) ? resource : { ...resource, capacity: [{ from: 0, units: FAR }] },
    ),
    lags: problem.lags.filter(has),
    spanLimits: problem.spanLimits.filter(has),
    choices: (problem.choices ?? []).filter(has),
  };
}

const ALL: FaceFeatures = {
  tasks: 3,
  lengths: true,
  windows: true,
  maxLags: true,
  steps: true,
  optional: true,
  states: 'odd',
  changes: true,
  limits: true,
  past: true,
  goals: ['completion'],
};

describe('rules that clash', () => {
  test('cannot be kept together, and can without any one of them', () => {
    let infeasible = 0;
    let several = 0;
    fc.assert(
      fc.property(faceProblems(ALL), (problem) => {
        const { status, clash } = planExactly(problem, { seed: 1 });
        if (status !== 'infeasible') {
          expect(clash).toBeNull();
          return;
        }
        infeasible += 1;
        expect(clash?.smallest).toBe(true);
        const ids = clash?.ids ?? [];
        if (ids.length > 1) several += 1;
        expect(ids).not.toEqual([]);
        if (ids.includes('horizon')) expect(bestOfAll(only(problem, ids))).toBeNull();
        else expect(planExactly(only(problem, ids), { seed: 1 }).status).toBe('infeasible');
        for (const id of ids) {
          const rest = only(
            problem,
            ids.filter((other) => other !== id),
          );
          const answer = planExactly(rest, { seed: 1 });
          expect(answer.status, `without ${id} of ${ids.join(', ')}`).toBe('proven');
          expect(wrongWith(rest, answer)).toEqual([]);
        }
      }),
      { numRuns: 500, seed: 4 },
    );
    // The sample is worth something.
    expect(infeasible).toBeGreaterThan(100);
    expect(several).toBeGreaterThan(15);
  }, 60_000);
});

describe('bad problems are named', () => {
  const task = (id: string, more: Partial<Task> = {}) => aTask(id, 2, more);
  const lag = (
    id: string,
    from: string,
    to: string,
    min: number | null,
    max: number | null,
  ): Lag => ({
    id,
    from,
    fromAnchor: 'start',
    to,
    toAnchor: 'start',
    min,
    max,
  });
  const base: PlannerProblem = {
    horizon: 20,
    tasks: [task('a'), task('b'), task('c')],
    resources: [{ id: 'hands', capacity: [{ from: 0, units: 1 }] }],
    stateful: [],
    lags: [],
    spanLimits: [],
  };
  const clash = (more: Partial<PlannerProblem>) => {
    const { status, clash: found } = planExactly({ ...base, ...more }, { seed: 1 });
    return [status, found?.ids, found?.smallest];
  };

  test('a cycle of lags that pushes itself on, among others that do not', () => {
    const lags = [
      lag('a to b', 'a', 'b', 3, null),
      lag('b to c', 'b', 'c', 3, null),
      lag('a to c', 'a', 'c', null, 5),
      lag('c some time', 'a', 'c', 1, null),
    ];
    expect(clash({ lags })).toEqual(['infeasible', ['a to b', 'a to c', 'b to c'], true]);
    expect(clash({ lags, horizon: 200_000_000 })).toEqual([
      'infeasible',
      ['a to b', 'a to c', 'b to c'],
      true,
    ]);
  });

  test('more units asked for than there are', () => {
    const tasks = [task('a', { demands: { hands: 2 } }), task('b')];
    expect(clash({ tasks })).toEqual(['infeasible', ['hands'], true]);
  });

  test('a window shorter than its task', () => {
    const tasks = [task('a', { notBefore: 4, endBy: 5 }), task('b')];
    expect(clash({ tasks })).toEqual(['infeasible', ['a'], true]);
  });

  test('three tasks for two hands’ time before the horizon', () => {
    const tasks = ['a', 'b', 'c'].map((id) => task(id, { demands: { hands: 1 } }));
    expect(clash({ tasks, horizon: 5 })).toEqual(['infeasible', ['hands', 'horizon'], true]);
  });

  test('a state that cannot be reached', () => {
    const tasks = [task('a', { needs: { resource: 'oven', state: 'hot' } })];
    const stateful = [{ id: 'oven', initial: 'cold', changeover: {} }];
    expect(clash({ tasks, stateful })).toEqual(['infeasible', ['oven'], true]);
  });

  test('stopped while it looks, the rules named are still infeasible', () => {
    const lags = [
      lag('a to b', 'a', 'b', 3, null),
      lag('b to a', 'b', 'a', -2, null),
      lag('a to c', 'a', 'c', null, 5),
    ];
    const answer = planExactly({ ...base, lags }, { seed: 1, shouldStop: () => true });
    expect(answer.status).toBe('infeasible');
    const left = lags.filter(({ id }) => answer.clash?.ids.includes(id) === true);
    expect(planExactly({ ...base, lags: left }, { seed: 1 }).status).toBe('infeasible');
  });
});
