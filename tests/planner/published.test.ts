import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { ExactAnswer, ExactProblem } from '#lib/planner/exact/problem';
import { solve } from '#lib/planner/exact/solve';
import { readJobShop } from '#lib/planner/read-job-shop';
import { readProblem } from '#lib/planner/read-problem';
import type { Result } from '#lib/result';
import { brokenRules, costOf } from './exact-checker';
import { DATA, instancesIn, sampleOf } from './planner-data';

/** Clock ticks after which an instance is given up, so that the test is bounded without a clock. */
const TICKS = 60;

function problemOf(read: Result<ExactProblem>): ExactProblem {
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

function checked(problem: ExactProblem, ticks = TICKS): ExactAnswer {
  let asked = 0;
  const shouldStop = (): boolean => (asked += 1) > ticks;
  const answer = solve(problem, { seed: 1, shouldStop });
  if (answer.plan !== null) {
    expect(brokenRules(problem, answer.plan)).toEqual([]);
    const [goal] = problem.goals;
    if (goal !== undefined) expect(answer.goals[0]?.best).toBe(costOf(goal, answer.plan));
  }
  return answer;
}

// Fisher, Thompson, "Probabilistic learning combinations of local job-shop scheduling rules", in Muth,
// Thompson (eds.), Industrial Scheduling, Prentice-Hall 1963: 6 jobs, 6 machines; least makespan 55.
const FT06 = `6 6
2 1 0 3 1 6 3 7 5 3 4 6
1 8 2 5 4 10 5 10 0 10 3 4
2 5 3 4 5 8 0 9 1 1 4 7
1 5 0 5 2 5 3 3 4 8 5 9
2 9 1 3 4 5 5 4 0 3 3 1
1 3 3 3 5 9 0 10 4 4 2 1`;

// Lawrence, "Resource constrained project scheduling", Carnegie-Mellon University 1984: la01, 10 jobs,
// 5 machines; least makespan 666.
const LA01 = `10 5
1 21 0 53 4 95 3 55 2 34
0 21 3 52 4 16 2 26 1 71
3 39 4 98 1 42 2 31 0 12
1 77 0 55 4 79 2 66 3 77
0 83 3 34 2 64 1 19 4 37
1 54 2 43 4 79 0 92 3 62
3 69 4 77 1 87 2 87 0 93
2 38 0 60 1 41 3 24 4 83
3 17 1 49 4 25 0 44 2 98
4 77 3 79 2 43 1 75 0 96`;

describe('job shops typed in', () => {
  test('ft06 takes 55, proven', () => {
    const answer = checked(problemOf(readJobShop(FT06)), Infinity);
    expect(answer).toMatchObject({ status: 'proven', goals: [{ best: 55, bound: 55 }] });
  });

  test('la01 takes 666, proven', () => {
    const answer = checked(problemOf(readJobShop(LA01)), Infinity);
    expect(answer).toMatchObject({ status: 'proven', goals: [{ best: 666, bound: 666 }] });
  });
});

describe('published sets beside the project', () => {
  const instances = instancesIn(DATA);

  // [set, how many of it]
  const SAMPLES: [string, number][] = [
    ['j30', 24],
    ['j60', 8],
    ['sm_j10', 40],
    ['sm_j20', 20],
    ['ubo10', 30],
    ['jobshop', 5],
    ['rcpsp-wet', 3],
    ['days', 1],
  ];

  test.each(SAMPLES)('%s: what is proven equals the reference', (set, count) => {
    const sample = sampleOf(instances, set, count);
    if (sample.length === 0) {
      console.log(`${set}: absent (${DATA}), nothing was compared`);
      return;
    }
    const faults: string[] = [];
    let proven = 0;
    for (const { name, path, known } of sample) {
      const answer = checked(problemOf(readProblem(path, readFileSync(path, 'utf8'))));
      const { best = null, bound = null } = answer.goals[0] ?? {};
      const told = `${name}: ${answer.status} ${bound}..${best}, known ${JSON.stringify(known)}`;
      if (answer.status === 'proven' || answer.status === 'infeasible') proven += 1;
      if (known === 'infeasible') {
        if (answer.plan !== null) faults.push(told);
        continue;
      }
      const { lower, upper } = typeof known === 'number' ? { lower: known, upper: known } : known;
      if (answer.status === 'infeasible') faults.push(told);
      if (best !== null && best < lower) faults.push(told);
      if (bound !== null && bound > upper) faults.push(told);
    }
    expect(faults).toEqual([]);
    if (set !== 'rcpsp-wet') expect(proven).toBeGreaterThan(0);
  });
});
