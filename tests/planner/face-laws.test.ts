import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { PlannerProgress } from '#lib/planner/answer';
import { completed } from '#lib/planner/face/defaults';
import { levelClock } from '#lib/planner/face/level-clock';
import { planExactly } from '#lib/planner/plan-exactly';
import type { Goal, Placed, PlannerProblem, StatefulResource } from '#lib/planner/problem';
import { worth, wrongWith } from './face-checker';
import { bestOfAll } from './face-exhaustive';
import { planned, valuesOf } from './face-planned';
import { faceProblems, type FaceFeatures } from './face-random';

const RICH: FaceFeatures = {
  tasks: 3,
  lengths: true,
  maxLags: true,
  steps: true,
  optional: true,
  states: 'odd',
  limits: true,
  goals: ['span', 'lateness', 'stateOn', 'switches', 'leftOut', 'changeover'],
};
const options = { numRuns: 250, seed: 11 };

describe('laws', () => {
  test('one rule more never shortens', () => {
    fc.assert(
      fc.property(
        faceProblems(RICH),
        fc.nat(),
        fc.nat(),
        fc.integer({ min: -2, max: 4 }),
        fc.nat(2),
        (problem, a, b, min, kind) => {
          const id = (index: number) => problem.tasks[index % problem.tasks.length]?.id ?? '';
          const lag = { from: id(a), fromAnchor: 'start', to: id(b), toAnchor: 'end' } as const;
          const more: PlannerProblem =
            kind === 0
              ? { ...problem, lags: [...problem.lags, { id: 'more', ...lag, min, max: null }] }
              : kind === 1
                ? {
                    ...problem,
                    spanLimits: [
                      ...problem.spanLimits,
                      { id: 'more', limit: Math.max(0, min), spans: [lag] },
                    ],
                  }
                : {
                    ...problem,
                    tasks: problem.tasks.map((task) =>
                      task.id === id(a) ? { ...task, notBefore: min } : task,
                    ),
                  };
          const before = valuesOf(planned(problem));
          const after = valuesOf(planned(more));
          if (before === null) expect(after).toBeNull();
          else expect(after?.[0] ?? Infinity).toBeGreaterThanOrEqual(before[0] ?? NaN);
        },
      ),
      options,
    );
  }, 60_000);

  test('time in other units gives the same plan in those units', () => {
    fc.assert(
      fc.property(
        faceProblems({
          ...RICH,
          optional: false,
          past: true,
          grid: true,
          goals: ['span', 'stateOn', 'changeover', 'completion'],
        }),
        fc.constantFrom(2, 60, 3600),
        (problem, by) => {
          const whole = valuesOf(planned(problem));
          const expected = whole?.map((value) => (value ?? NaN) * by) ?? null;
          expect(valuesOf(planExactly(scaled(problem, by), { seed: 2, explain: false }))).toEqual(
            expected,
          );
        },
      ),
      { ...options, numRuns: 150 },
    );
  }, 120_000);

  test('what was done stays as it was, and the rest of a best plan is still as good', () => {
    fc.assert(
      fc.property(faceProblems(RICH), fc.integer({ min: 1, max: 6 }), (problem, now) => {
        const first = planned(problem);
        if (first.status === 'infeasible') return;
        const begun = first.placed
          .filter(({ start }) => start < now)
          .map(({ id, start, end }) => ({ id, start, end: end <= now ? end : null }));
        // The checker looks whether what has begun is kept.
        expect(valuesOf(planned({ ...problem, past: { now, begun } }, { seed: 5 }))).toEqual(
          valuesOf(first),
        );
      }),
      options,
    );
  }, 60_000);

  test('seeds and a plan to begin with change nothing of the values; equal options give an equal plan', () => {
    fc.assert(
      fc.property(
        faceProblems({ ...RICH, past: true, changes: true }),
        fc.nat(),
        (problem, seed) => {
          const first = planned(problem);
          const warmStart: readonly Placed[] = first.placed;
          expect(valuesOf(planned(problem, { seed, warmStart }))).toEqual(valuesOf(first));
          const again = planExactly(problem, { seed });
          expect(planExactly(problem, { seed })).toEqual(again);
        },
      ),
      { ...options, numRuns: 150 },
    );
  }, 60_000);
});

describe('levels', () => {
  test('one that is not proven keeps its best, and those after it go on', () => {
    let gaps = 0;
    fc.assert(
      fc.property(faceProblems(RICH), (problem) => {
        const answer = planExactly(problem, {
          seed: 1,
          explain: false,
          shouldStop: (level) => level === 0,
        });
        if (answer.placed.length === 0) return;
        expect(wrongWith(problem, answer)).toEqual([]);
        const goals = problem.goals ?? [];
        expect(answer.levels.map(({ value }) => value)).toEqual(
          goals.map((goal) => worth(problem, goal, answer.placed)),
        );
        const [first, second] = answer.levels;
        expect(second?.status).toBe('proven');
        if (first?.status !== 'gap') return;
        gaps += 1;
        expect(answer.status).toBe('gap');
        expect(first.bound ?? NaN).toBeLessThanOrEqual(first.value ?? NaN);
        // Of all plans no worse than what the first level reached, none is better in the second.
        const [goal, next] = goals;
        if (goal === undefined || next === undefined) return;
        const rest = { ...problem, goals: [next] };
        expect(bestOfAll(rest, { goal, most: first.value ?? NaN })).toEqual([second?.value]);
      }),
      { numRuns: 400, seed: 12 },
    );
    expect(gaps).toBeGreaterThan(10);
  }, 60_000);

  test('have their shares of the time, and what earlier ones left', () => {
    const shares = [50, 20, 20, 10];
    const goals = shares.map((share): Goal => ({ id: `${share}`, share, kind: 'sum', terms: [] }));
    let time = 100;
    const empty = { horizon: 1, tasks: [], resources: [], stateful: [], lags: [], spanLimits: [] };
    const clock = levelClock(completed({ ...empty, goals }), {
      seed: 1,
      now: () => time,
      limitSeconds: 10,
    });
    const over = (): boolean[] => shares.map((_, level) => clock.isOver(level));
    time = 104.9;
    expect(over()).toEqual([false, false, false, false]);
    time = 105;
    expect(over()).toEqual([true, false, false, false]);
    time = 109;
    expect(over()).toEqual([true, true, true, false]);
    time = 110;
    expect([...over(), clock.seconds()]).toEqual([true, true, true, true, 10]);
  });

  test('tell of better plans and better bounds, never of worse', () => {
    fc.assert(
      fc.property(faceProblems(RICH), (problem) => {
        const seen: PlannerProgress[] = [];
        const answer = planned(problem, { onProgress: (progress) => seen.push(progress) });
        seen.forEach((progress, index) => {
          const before = seen[index - 1];
          if (before?.level === progress.level) {
            expect(progress.best ?? Infinity).toBeLessThanOrEqual(before.best ?? Infinity);
            expect(progress.bound ?? NaN).toBeGreaterThanOrEqual(before.bound ?? NaN);
          } else expect(progress.level).toBe(before === undefined ? 0 : before.level + 1);
          if (progress.best === null) return;
          const goal = problem.goals?.[progress.level];
          if (goal !== undefined) expect(worth(problem, goal, progress.placed)).toBe(progress.best);
        });
        if (answer.status === 'proven') expect(seen.at(-1)?.placed).toEqual(answer.placed);
      }),
      { numRuns: 150, seed: 13 },
    );
  }, 60_000);
});

/** The same problem in smaller units of time. */
function scaled(problem: PlannerProblem, by: number): PlannerProblem {
  const time = (value: number | null): number | null => (value === null ? null : value * by);
  return {
    ...problem,
    horizon: problem.horizon * by,
    tasks: problem.tasks.map((task) => ({
      ...task,
      minLength: task.minLength * by,
      maxLength: task.maxLength * by,
      notBefore: time(task.notBefore),
      endBy: time(task.endBy),
    })),
    resources: problem.resources.map((resource) => ({
      ...resource,
      capacity: resource.capacity.map(({ from, units }) => ({ from: from * by, units })),
    })),
    stateful: problem.stateful.map((resource) => ({
      ...resource,
      changeover: Object.fromEntries(
        Object.entries(resource.changeover).map(([from, row]) => [
          from,
          Object.fromEntries(Object.entries(row).map(([to, length]) => [to, length * by])),
        ]),
      ) as StatefulResource['changeover'],
    })),
    lags: problem.lags.map((lag) => ({ ...lag, min: time(lag.min), max: time(lag.max) })),
    spanLimits: problem.spanLimits.map((limit) => ({ ...limit, limit: limit.limit * by })),
    goals: (problem.goals ?? []).map((goal) =>
      goal.kind === 'latest' && goal.grid !== undefined
        ? { ...goal, grid: { step: goal.grid.step * by, origin: goal.grid.origin * by } }
        : goal,
    ),
    past:
      problem.past == null
        ? null
        : {
            now: problem.past.now * by,
            begun: problem.past.begun.map(({ id, start, end }) => ({
              id,
              start: start * by,
              end: time(end),
            })),
          },
  };
}
