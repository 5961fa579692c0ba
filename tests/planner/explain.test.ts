import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bindingsOf } from '#lib/planner/bindings';
import { chainsOf, criticalChain } from '#lib/planner/explain';
import { planExactly } from '#lib/planner/plan-exactly';
import type { PlannerProblem, Task } from '#lib/planner/problem';
import { slackOf } from '#lib/planner/slack';
import { aTask } from './a-task';
import { anyChangeovers } from './face-exhaustive';
import { faceProblems, type FaceFeatures } from './face-random';

const ALL: FaceFeatures = {
  lengths: true,
  windows: true,
  maxLags: true,
  steps: true,
  optional: true,
  states: 'odd',
  limits: true,
  past: true,
  goals: ['completion', 'span', 'leftOut'],
};

/** Those with few rules have a plan more often. */
const problems = fc.oneof(
  faceProblems(ALL),
  faceProblems({ maxLags: true, steps: true, goals: ['lateness', 'moved'], tasks: 3 }),
  faceProblems({ states: 'odd', limits: true, goals: ['moved'], tasks: 3 }),
);

describe('why a task does not start earlier', () => {
  test('something is named exactly where it could not be moved by itself', () => {
    let bound = 0;
    let free = 0;
    fc.assert(
      fc.property(problems, (problem) => {
        const plan = planExactly(problem, { seed: 1, explain: false });
        const bindings = bindingsOf(problem, plan);
        for (const one of plan.placed) {
          if (problem.past?.begun.some(({ id }) => id === one.id)) continue;
          const moved = plan.placed.map((other) =>
            other === one ? { ...one, start: one.start - 1, end: one.end - 1 } : other,
          );
          const could = one.start > 0 && anyChangeovers(problem, moved);
          const named = bindings.get(one.id) ?? [];
          expect(named.length === 0, `${one.id}: ${JSON.stringify(named)}`).toBe(could);
          if (could) free += 1;
          else bound += 1;
        }
      }),
      { numRuns: 1000, seed: 3 },
    );
    expect(bound).toBeGreaterThan(300);
    expect(free).toBeGreaterThan(20);
  }, 60_000);

  test('chains lead from task to task by what is named, back to where nothing is waited for', () => {
    fc.assert(
      fc.property(faceProblems({ ...ALL, changes: true, tasks: 3 }), (problem) => {
        const plan = planExactly(problem, { seed: 1, explain: false });
        const bindings = bindingsOf(problem, plan);
        for (const [task, chain] of chainsOf(problem, plan)) {
          expect(chain[0]?.task).toBe(task);
          chain.forEach(({ because, ...link }, index) => {
            expect(plan.placed.find(({ id }) => id === link.task)?.start).toBe(link.start);
            if (because !== null) expect(bindings.get(link.task)).toContainEqual(because);
            const next = chain[index + 1];
            if (next !== undefined) expect(because?.from?.task).toBe(next.task);
          });
        }
      }),
      { numRuns: 300, seed: 5 },
    );
  }, 60_000);
});

describe('slack', () => {
  test('all tasks as late as their slack allows are a plan again, not over later', () => {
    let moved = 0;
    fc.assert(
      fc.property(problems, fc.integer({ min: 0, max: 2 }), (problem, more) => {
        const plan = planExactly(problem, { seed: 1, explain: false });
        const end = Math.max(0, ...plan.placed.map((one) => one.end)) + more;
        const slack = slackOf(problem, plan, end);
        const late = plan.placed.map((one) => {
          const by = slack.get(one.id) ?? NaN;
          expect(by).toBeGreaterThanOrEqual(0);
          moved += by;
          return { ...one, start: one.start + by, end: one.end + by };
        });
        expect(Math.max(0, ...late.map((one) => one.end))).toBeLessThanOrEqual(end);
        if (plan.placed.length > 0) expect(anyChangeovers(problem, late)).toBe(true);
      }),
      { numRuns: 1000, seed: 6 },
    );
    expect(moved).toBeGreaterThan(300);
  }, 60_000);
});

describe('a small day', () => {
  const task = (id: string, length: number, more: Partial<Task> = {}) =>
    aTask(id, length, { demands: { hands: 1 }, ...more });
  // Knead, let the dough rest, bake in an oven that takes 8 to heat; stir the sauce meanwhile.
  const problem: PlannerProblem = {
    horizon: 100,
    tasks: [
      task('knead', 10),
      task('bake', 20, { demands: {}, needs: { resource: 'oven', state: 'hot' } }),
      task('stir', 5),
      task('serve', 2),
    ],
    resources: [{ id: 'hands', capacity: [{ from: 0, units: 1 }] }],
    stateful: [{ id: 'oven', initial: 'cold', changeover: { cold: { hot: 8 } } }],
    lags: [
      {
        id: 'rest',
        from: 'knead',
        fromAnchor: 'end',
        to: 'bake',
        toAnchor: 'start',
        min: 15,
        max: null,
      },
      {
        id: 'hot',
        from: 'bake',
        fromAnchor: 'end',
        to: 'serve',
        toAnchor: 'start',
        min: 0,
        max: 3,
      },
    ],
    spanLimits: [],
  };
  const plan = planExactly(problem, { seed: 1 });

  test('has a critical chain', () => {
    expect(plan.levels).toEqual([{ id: 'end', value: 47, bound: 47, status: 'proven' }]);
    expect(criticalChain(problem, plan).map(({ task: id, because }) => [id, because?.id])).toEqual([
      ['serve', 'hot'],
      ['bake', 'rest'],
      ['knead', 'knead'],
    ]);
    expect(plan.changeovers).toEqual([
      { resource: 'oven', from: 'cold', to: 'hot', start: 17, end: 25 },
    ]);
  });

  test('has slack where it waits for nothing', () => {
    const slack = slackOf(problem, plan);
    expect(slack.get('knead')).toBe(0);
    expect(slack.get('bake')).toBe(0);
    const stir = plan.placed.find(({ id }) => id === 'stir');
    expect((stir?.start ?? NaN) + (slack.get('stir') ?? NaN)).toBe(40);
  });
});
