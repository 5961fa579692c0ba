import type { Goal, GoalTerm } from '#lib/planner/problem';
import { HANDS, ovenStateId, type DayProblem } from '#lib/shoot/to-problem';
import type { DayFacts } from '#lib/shoot/day-facts';

/** Minutes of the clock on which a wrap is told. */
const WRAP_GRID_MIN = 5;

/**
 * What a filming day should be good at, the most important first: its wrap with the washing-up done, on
 * five minutes of the clock; minutes of food in the danger zone, summed over its lots; minutes that ovens
 * are on or change; neighbouring hand tasks of different segments. Half of the time goes to the wrap.
 */
export function dayGoals({ problem, originMin }: DayProblem, facts: DayFacts): Goal[] {
  const spans = problem.spanLimits.flatMap((limit) =>
    limit.spans.map((span): GoalTerm => ({
      kind: 'span',
      from: { task: span.from, anchor: span.fromAnchor },
      to: { task: span.to, anchor: span.toAnchor },
      weight: 1,
    })),
  );
  const ovens = facts.ovens.flatMap(({ id }): GoalTerm[] => [
    { kind: 'stateOn', resource: ovenStateId(id), weight: 1 },
    { kind: 'changeover', resource: ovenStateId(id), weight: 1 },
  ]);
  return [
    {
      id: 'wrap',
      share: 50,
      kind: 'latest',
      events: 'all ends',
      // Minus 0 is no time of day.
      grid: { step: WRAP_GRID_MIN, origin: 0 - (originMin % WRAP_GRID_MIN) },
    },
    { id: 'danger zone', share: 20, kind: 'sum', terms: spans },
    { id: 'ovens', share: 20, kind: 'sum', terms: ovens },
    {
      id: 'switches',
      share: 10,
      kind: 'sum',
      terms: [{ kind: 'switches', resource: HANDS, weight: 1 }],
    },
  ];
}
