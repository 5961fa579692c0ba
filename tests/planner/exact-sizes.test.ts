import { describe, expect, test } from 'vitest';
import type { ExactAnswer, ExactProblem } from '#lib/planner/exact/problem';
import { solve } from '#lib/planner/exact/solve';
import { readJobShop } from '#lib/planner/read-job-shop';
import { startsOnlyProblem, wrapOf } from '#lib/planner/read-starts';
import { brokenRules, costOf } from './exact-checker';
import { randomDay } from './random-days';

/** Solves until the clock was asked so often, and holds the answer to what it says of itself. */
function checked(problem: ExactProblem, asks = Infinity): ExactAnswer {
  let asked = 0;
  const answer = solve(problem, { seed: 1, shouldStop: () => (asked += 1) > asks });
  const [goal] = problem.goals;
  if (answer.plan !== null && goal !== undefined) {
    expect(brokenRules(problem, answer.plan)).toEqual([]);
    expect(answer.goals[0]?.best).toBe(costOf(goal, answer.plan));
  }
  return answer;
}

/** Fisher & Thompson 1963, 6 jobs on 6 machines: least makespan 55; here with lengths times `unit`. */
function ft06(unit: number): string {
  const rows = [
    '2 1 0 3 1 6 3 7 5 3 4 6',
    '1 8 2 5 4 10 5 10 0 10 3 4',
    '2 5 3 4 5 8 0 9 1 1 4 7',
    '1 5 0 5 2 5 3 3 4 8 5 9',
    '2 9 1 3 4 5 5 4 0 3 3 1',
    '1 3 3 3 5 9 0 10 4 4 2 1',
  ].map((row) =>
    row
      .split(' ')
      .map((cell, index) => (index % 2 === 1 ? Number(cell) * unit : cell))
      .join(' '),
  );
  return ['6 6', ...rows].join('\n');
}

describe('long and short times, many tasks', () => {
  test('hours told in seconds: ft06 takes 55 hours, proven', () => {
    const read = readJobShop(ft06(3600));
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const answer = checked(read.value);
    expect(answer).toMatchObject({ status: 'proven', goals: [{ best: 198_000, bound: 198_000 }] });
  });

  test('a horizon of eight years in seconds costs nothing', () => {
    const day = randomDay(24, 3);
    const { goals: short } = checked(day);
    const { status, goals: long } = checked({ ...day, horizon: 250_000_000 });
    expect(status).toBe('proven');
    expect(long[0]?.best).toBe(short[0]?.best);
  });

  test('lengths of 0 take no time and no units, and keep their lags', () => {
    // Task 1 asks for the one unit at 3, in the midst of 2 or 3, but for no time; 4 comes 5 after it.
    const problem = startsOnlyProblem({
      lengths: [0, 0, 4, 4, 0],
      capacities: [1],
      demands: [[0, 1, 1, 1, 0]],
      lags: [
        [0, 1, 3],
        [1, 4, 5],
        [2, 4, 4],
        [3, 4, 4],
      ],
      horizon: 40,
      goal: wrapOf(4),
    });
    expect(checked(problem)).toMatchObject({ status: 'proven', goals: [{ best: 8, bound: 8 }] });
  });

  test('only lengths of 0: over at once', () => {
    const problem = startsOnlyProblem({
      lengths: [0, 0, 0],
      capacities: [1],
      demands: [[1, 1, 1]],
      lags: [[0, 2, 0]],
      horizon: 0,
      goal: wrapOf(2),
    });
    expect(checked(problem)).toMatchObject({ status: 'proven', goals: [{ best: 0, bound: 0 }] });
  });

  test('2,000 tasks: a plan that keeps every rule and a bound that is none too high', () => {
    const day = randomDay(2000, 1);
    const { plan, goals, status } = checked(day, 20);
    expect(plan).not.toBeNull();
    const { best = null, bound = null } = goals[0] ?? {};
    expect(bound ?? NaN).toBeLessThanOrEqual(best ?? NaN);
    expect(['gap', 'proven']).toContain(status);
    // One pair of hands: their work alone takes so long, which no plan can be below.
    const hands = day.resources[0]?.demands ?? [];
    const work = day.tasks.reduce(
      (sum, { minLength }, task) => sum + (hands[task] ? minLength : 0),
      0,
    );
    expect(bound ?? NaN).toBeGreaterThanOrEqual(work);
    expect(best ?? NaN).toBeLessThan(1.25 * work);
    console.log(`2,000 tasks: ${bound} to ${best}, ${work} of it by hand`);
  }, 180_000);
});
