import { expect } from 'vitest';
import type { ExactPlannerOptions, ProvenAnswer } from '#lib/planner/answer';
import { planExactly } from '#lib/planner/plan-exactly';
import type { PlannerProblem } from '#lib/planner/problem';
import { worth, wrongWith } from './face-checker';

/** Plans to the end and has the answer looked at by code that shares nothing with the planner. */
export function planned(
  problem: PlannerProblem,
  options: Partial<ExactPlannerOptions> = {},
): ProvenAnswer {
  const answer = planExactly(problem, { seed: 1, explain: false, ...options });
  expect(['proven', 'infeasible']).toContain(answer.status);
  if (answer.status === 'infeasible') {
    expect(answer.placed).toEqual([]);
    return answer;
  }
  expect(wrongWith(problem, answer)).toEqual([]);
  const values = (problem.goals ?? []).map((goal) => worth(problem, goal, answer.placed));
  expect(answer.levels.map(({ value }) => value)).toEqual(values);
  expect(answer.levels.map(({ bound }) => bound)).toEqual(values);
  return answer;
}

/** The values of the levels; null where there is no plan. */
export const valuesOf = ({ status, levels }: ProvenAnswer): readonly (number | null)[] | null =>
  status === 'infeasible' ? null : levels.map(({ value }) => value);
