import { describe, expect, test } from 'vitest';
import { completed } from '#lib/planner/face/defaults';
import { faultsOfProblem } from '#lib/planner/face/faults';
import { planExactly } from '#lib/planner/plan-exactly';
import type { Goal, PlannerProblem, Task } from '#lib/planner/problem';
import { aTask } from './a-task';
import { wrongWith } from './face-checker';

const task = (id: string, more: Partial<Task> = {}) => aTask(id, 2, more);
const base: PlannerProblem = {
  horizon: 20,
  tasks: [task('a'), task('b')],
  resources: [{ id: 'hands', capacity: [{ from: 0, units: 1 }] }],
  stateful: [{ id: 'oven', initial: 'cold', changeover: { cold: { hot: 3 } } }],
  lags: [],
  spanLimits: [],
};
const sum = (...terms: Extract<Goal, { kind: 'sum' }>['terms']): Goal[] => [
  { id: 'sum', share: 1, kind: 'sum', terms },
];
const lag = {
  id: 'l',
  from: 'a',
  fromAnchor: 'end',
  to: 'b',
  toAnchor: 'start',
  min: 0,
  max: null,
} as const;

// [what, the problem's change, what is said of it]
const FAULTS: [string, Partial<PlannerProblem>, string][] = [
  ['a horizon that is no number', { horizon: NaN }, 'horizon: a whole number'],
  ['two tasks of one id', { tasks: [task('a'), task('a')] }, 'task "a" is there twice'],
  ['half a minute', { tasks: [task('a', { minLength: 0.5 })] }, 'task "a", shortest length'],
  ['a length below 0', { tasks: [task('a', { minLength: -1 })] }, 'task "a", shortest length'],
  ['lengths turned round', { tasks: [task('a', { maxLength: 1 })] }, 'longest length below'],
  ['endless time', { tasks: [task('a', { endBy: Infinity })] }, 'task "a", end by'],
  [
    'units of nothing known',
    { tasks: [task('a', { demands: { feet: 1 } })] },
    'no resource "feet"',
  ],
  [
    'a state of nothing known',
    { tasks: [task('a', { needs: { resource: 'grill', state: 'hot' } })] },
    'no stateful resource "grill"',
  ],
  ['a lag to nowhere', { lags: [{ ...lag, to: 'z' }] }, 'lag "l": there is no task "z"'],
  ['a lag too long', { lags: [{ ...lag, min: 2 ** 40 }] }, 'lag "l", least'],
  [
    'steps out of order',
    {
      resources: [
        {
          id: 'hands',
          capacity: [
            { from: 0, units: 1 },
            { from: 0, units: 2 },
          ],
        },
      ],
    },
    'ascending order',
  ],
  ['no capacity at 0', { resources: [{ id: 'hands', capacity: [] }] }, 'must begin by 0'],
  [
    'a choice among what must be',
    { choices: [{ id: 'c', tasks: ['a'], least: 1, most: 1 }] },
    'is not optional',
  ],
  [
    'what begins after now',
    { past: { now: 3, begun: [{ id: 'a', start: 4, end: null }] } },
    'begun task "a": starts at 4, after now (3)',
  ],
  [
    'what ends before it starts',
    { past: { now: 9, begun: [{ id: 'a', start: 4, end: 3 }] } },
    'begun task "a": ends at 3, before its start (4)',
  ],
  [
    'a weight below 0',
    { goals: sum({ kind: 'switches', resource: 'hands', weight: -1 }) },
    'goal "sum", switches, weight',
  ],
  [
    'a sum that is too large',
    { goals: sum({ kind: 'completion', event: { task: 'a', anchor: 'end' }, weight: 2 ** 27 }) },
    'could cost 2^30 or more',
  ],
  [
    'a grid of no width',
    {
      goals: [
        { id: 'wrap', share: 1, kind: 'latest', events: 'all ends', grid: { step: 0, origin: 0 } },
      ],
    },
    'goal "wrap", step',
  ],
];

describe('faults are told and nothing is searched', () => {
  test.each(FAULTS)('%s', (_, more, said) => {
    const problem = { ...base, ...more };
    expect(faultsOfProblem(completed(problem)).join('; ')).toContain(said);
    expect(() => planExactly(problem, { seed: 1 })).toThrow(said);
  });

  test('a sound problem has none', () => {
    expect(faultsOfProblem(completed(base))).toEqual([]);
  });
});

describe('odd problems', () => {
  test('no tasks at all', () => {
    expect(planExactly({ ...base, tasks: [] }, { seed: 1 })).toMatchObject({
      status: 'proven',
      placed: [],
      levels: [{ id: 'end', value: 0, bound: 0 }],
    });
  });

  test('no goals: any plan will do', () => {
    const answer = planExactly({ ...base, goals: [] }, { seed: 1 });
    expect([answer.status, answer.levels, answer.placed.length]).toEqual(['proven', [], 2]);
  });

  test('tasks of no length take nothing and wait for lags alone', () => {
    const none = { minLength: 0, maxLength: 0, demands: { hands: 1 } };
    const tasks = [task('a', none), task('b', none), task('c', { ...none, demands: { hands: 7 } })];
    const answer = planExactly({ ...base, tasks, lags: [{ ...lag, min: 5 }] }, { seed: 1 });
    expect(answer.levels[0]).toMatchObject({ value: 5, status: 'proven' });
  });

  test('years in seconds', () => {
    const day = 86_400;
    const tasks = ['a', 'b', 'c'].map((id) =>
      task(id, { minLength: 900 * day, maxLength: 900 * day, demands: { hands: 1 } }),
    );
    const problem = { ...base, horizon: 3000 * day, tasks };
    const answer = planExactly(problem, { seed: 1 });
    expect(answer.levels[0]).toMatchObject({ value: 2700 * day, status: 'proven' });
    expect(planExactly({ ...problem, horizon: 2600 * day }, { seed: 1 }).clash).toEqual({
      ids: ['hands', 'horizon'],
      smallest: true,
    });
  });

  test('hundreds of tasks, stopped at once, still have a plan and an honest gap', () => {
    const tasks = Array.from({ length: 300 }, (_, index) =>
      task(`t${index}`, {
        minLength: 1 + ((index * 7) % 5),
        maxLength: 1 + ((index * 7) % 5),
        demands: { hands: index % 3 === 0 ? 1 : 0, burners: index % 4 },
      }),
    );
    const resources = [...base.resources, { id: 'burners', capacity: [{ from: 0, units: 4 }] }];
    const problem = { ...base, horizon: 2000, tasks, resources };
    const answer = planExactly(problem, { seed: 1, shouldStop: () => true });
    expect(wrongWith(problem, answer)).toEqual([]);
    expect(answer.placed).toHaveLength(300);
    const [level] = answer.levels;
    expect(level?.bound ?? NaN).toBeLessThanOrEqual(level?.value ?? NaN);
    // Units of burners times their length, by four burners.
    const work = tasks.reduce((all, one) => all + (one.demands['burners'] ?? 0) * one.minLength, 0);
    expect(level?.bound ?? NaN).toBeGreaterThanOrEqual(Math.ceil(work / 4));
  });
});
