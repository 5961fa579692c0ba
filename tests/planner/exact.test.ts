import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ExactAnswer, ExactOptions, ExactProblem } from '#lib/planner/exact/problem';
import { solve } from '#lib/planner/exact/solve';
import { brokenRules, costOf } from './exact-checker';
import { bestByTrying } from './exact-exhaustive';
import { problems, type Features } from './exact-random';

const NEVER: ExactOptions = { seed: 1, shouldStop: () => false };

/** Solves to the end and has the answer checked by the code that shares nothing with the engine. */
function solved(problem: ExactProblem, options: Partial<ExactOptions> = {}): ExactAnswer {
  const answer = solve(problem, { ...NEVER, ...options });
  expect(['proven', 'infeasible']).toContain(answer.status);
  expect(answer.plan === null).toBe(answer.status === 'infeasible');
  if (answer.plan !== null) {
    expect(brokenRules(problem, answer.plan)).toEqual([]);
    const { plan } = answer;
    expect(answer.goals.map(({ best }) => best)).toEqual(
      problem.goals.map((goal) => costOf(goal, plan)),
    );
  }
  return answer;
}

const values = ({ status, goals }: ExactAnswer): readonly (number | null)[] | null =>
  status === 'infeasible' ? null : goals.map(({ best }) => best);

// [features, how many random problems]
const FEATURES: [string, Features, number][] = [
  ['resources and minimum lags', {}, 400],
  ['maximum lags', { maxLags: true }, 500],
  ['unary resources', { unary: true, maxLags: true }, 400],
  ['lengths of choice', { lengths: true, maxLags: true }, 400],
  ['windows', { windows: true, maxLags: true }, 300],
  ['setups', { setups: true, unary: true }, 300],
  ['setups between all', { allApart: true, maxLags: true, lengths: true, windows: true }, 300],
  ['setups between all, fixed lengths', { allApart: true }, 300],
  ['capacities that change over time', { steps: true, maxLags: true }, 400],
  ['two goals, one of them a weighted sum', { deviations: true }, 400],
  ['frozen starts', { frozen: true, maxLags: true }, 200],
  [
    'everything at once',
    {
      maxLags: true,
      lengths: true,
      windows: true,
      setups: true,
      steps: true,
      frozen: true,
      deviations: true,
    },
    500,
  ],
];

describe('against every start tried one by one', () => {
  test.each(FEATURES)('%s', (_, features, numRuns) => {
    fc.assert(
      fc.property(problems(features), (problem) => {
        expect(values(solved(problem))).toEqual(bestByTrying(problem));
      }),
      { numRuns, seed: 20_261_125 },
    );
  });
});

describe('laws', () => {
  const ANY: Features = { maxLags: true, lengths: true, windows: true, setups: true };
  const options = { numRuns: 200, seed: 7 };

  test('one lag more never shortens', () => {
    fc.assert(
      fc.property(
        problems(ANY),
        fc.nat(),
        fc.nat(),
        fc.integer({ min: -3, max: 4 }),
        (...given) => {
          const [problem, a, b, min] = given;
          const count = problem.tasks.length;
          const lag = {
            name: 'one more',
            from: { task: a % count, anchor: 'start' as const },
            to: { task: b % count, anchor: 'end' as const },
            min,
          };
          const before = values(solved(problem))?.[0] ?? Infinity;
          const after =
            values(solved({ ...problem, lags: [...problem.lags, lag] }))?.[0] ?? Infinity;
          expect(after).toBeGreaterThanOrEqual(before);
        },
      ),
      options,
    );
  });

  test('time in other units gives the same plan in those units', () => {
    const scaled = (problem: ExactProblem, by: number): ExactProblem => ({
      ...problem,
      horizon: problem.horizon * by,
      tasks: problem.tasks.map((task) => ({
        ...task,
        minLength: task.minLength * by,
        maxLength: task.maxLength * by,
        notBefore: task.notBefore === null ? null : task.notBefore * by,
        endBy: task.endBy === null ? null : task.endBy * by,
      })),
      lags: problem.lags.map((lag) => ({ ...lag, min: lag.min * by })),
      setups: problem.setups.map((setup) => ({
        ...setup,
        between: setup.between * by,
        back: setup.back * by,
      })),
    });
    fc.assert(
      fc.property(problems(ANY), fc.constantFrom(2, 7, 60, 3600), (problem, by) => {
        const whole = values(solved(problem));
        const expected = whole === null ? null : [(whole[0] ?? NaN) * by];
        expect(values(solved(scaled(problem, by)))).toEqual(expected);
      }),
      options,
    );
  });

  test('what was done stays as it was, and the rest of a best plan is still as good', () => {
    fc.assert(
      fc.property(problems(ANY), fc.integer({ min: 0, max: 6 }), (problem, now) => {
        const { plan, goals } = solved(problem);
        if (plan === null) return;
        const frozen = plan.starts.flatMap((start, task) =>
          start < now ? [{ task, start, end: plan.ends[task] ?? null }] : [],
        );
        const again = solved({ ...problem, frozen }, { seed: 5 });
        expect(again.goals[0]?.best).toBe(goals[0]?.best);
      }),
      options,
    );
  });

  test('seeds, a plan to begin with and the side worked on first change nothing of the value', () => {
    fc.assert(
      fc.property(problems({ ...ANY, deviations: true }), fc.nat(), (problem, seed) => {
        const first = solved(problem);
        const warmStart = first.plan ?? { starts: [], ends: [] };
        const given = first.plan === null ? {} : { warmStart };
        const again = solved(problem, { seed, side: 'bounds', ...given });
        expect(values(again)).toEqual(values(first));
        expect(solve(problem, { ...NEVER, seed })).toEqual(solve(problem, { ...NEVER, seed }));
      }),
      options,
    );
  });
});

describe('odd and bad problems', () => {
  const task = (name: string, length: number) => ({
    name,
    minLength: length,
    maxLength: length,
    notBefore: null,
    endBy: null,
  });
  const empty: ExactProblem = {
    horizon: 10,
    tasks: [],
    resources: [],
    lags: [],
    setups: [],
    goals: [{ name: 'wrap', kind: 'latest', events: [] }],
    frozen: [],
  };

  test('no tasks at all', () => {
    expect(solved(empty).goals).toEqual([{ name: 'wrap', best: 0, bound: 0, proven: true }]);
  });

  test('no goals: any plan will do', () => {
    const answer = solved({ ...empty, tasks: [task('a', 1)], goals: [] });
    expect(answer).toMatchObject({ status: 'proven', goals: [] });
    expect(answer.plan?.starts).toHaveLength(1);
  });

  test('a cycle of lags that pushes itself on, on a long horizon', () => {
    const start = (index: number) => ({ task: index, anchor: 'start' as const });
    const lags = [
      { name: 'forth', from: start(0), to: start(1), min: 1 },
      { name: 'back', from: start(1), to: start(0), min: 0 },
    ];
    const tasks = [task('a', 1), task('b', 1)];
    expect(solved({ ...empty, horizon: 200_000_000, tasks, lags }).status).toBe('infeasible');
  });

  test('more units asked for than there are', () => {
    const resources = [{ name: 'hands', capacity: [{ from: 0, units: 1 }], demands: [2] }];
    expect(solved({ ...empty, tasks: [task('a', 1)], resources }).status).toBe('infeasible');
  });

  test('a window shorter than the task', () => {
    const tight = { ...task('a', 3), notBefore: 2, endBy: 4 };
    expect(solved({ ...empty, tasks: [tight] }).status).toBe('infeasible');
  });

  test('faults are told and not searched', () => {
    expect(() => solve({ ...empty, horizon: 0.5 }, NEVER)).toThrow('horizon: a whole number');
    const lags = [
      {
        name: 'nowhere',
        from: { task: 0, anchor: 'start' as const },
        to: { task: 9, anchor: 'end' as const },
        min: 0,
      },
    ];
    expect(() => solve({ ...empty, lags }, NEVER)).toThrow('nowhere: there is no task 9');
  });

  test('stopped at once it still says what it knows', () => {
    const tasks = Array.from({ length: 12 }, (_, index) => task(`t${index}`, 1 + (index % 5)));
    const demands = tasks.map((_, index) => 1 + (index % 3));
    const resources = [{ name: 'r', capacity: [{ from: 0, units: 4 }], demands }];
    const events = tasks.map((_, index) => ({ task: index, anchor: 'end' as const }));
    const problem: ExactProblem = {
      ...empty,
      horizon: 60,
      tasks,
      resources,
      goals: [{ name: 'wrap', kind: 'latest', events }],
    };
    const answer = solve(problem, { seed: 1, shouldStop: () => true });
    expect(answer.plan).not.toBeNull();
    if (answer.plan !== null) expect(brokenRules(problem, answer.plan)).toEqual([]);
    const [goal] = answer.goals;
    expect(goal?.bound ?? NaN).toBeLessThanOrEqual(goal?.best ?? NaN);
  });
});
