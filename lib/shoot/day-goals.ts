import type { Goal, PlannerProblem } from '#lib/planner/problem';
import type { DayLevel } from '#lib/shoot/plan';
import { HANDS } from '#lib/shoot/problem-parts';
import type { DayProblem } from '#lib/shoot/to-problem';

/** What a day is made small by, the most important first. */
export const DAY_LEVELS = [
  'wrap',
  'danger',
  'oven',
  'switches',
] as const satisfies readonly DayLevel[];

/** Wrap is looked for on a grid of so many minutes of the clock. */
const GRID_MIN = 5;

/** Shares of the search's time. */
const SHARES: Readonly<Record<DayLevel, number>> = { wrap: 50, danger: 20, oven: 20, switches: 10 };

/**
 * The day's problem with its goals, in levels: wrap (the washing-up done) on the clock's 5-minute grid; minutes
 * that perishable food stands unchilled, summed; minutes that ovens are on or change their temperature; times
 * that the hands go from one segment to another.
 */
export function withDayGoals({ problem, originMin }: DayProblem): PlannerProblem {
  const ovens = problem.stateful.filter(({ id }) => id.startsWith('oven:'));
  const goals: readonly Goal[] = [
    {
      id: 'wrap',
      share: SHARES.wrap,
      kind: 'latest',
      events: 'all ends',
      // Time 0 is the day's start; the grid is the clock's.
      grid: { step: GRID_MIN, origin: -(originMin % GRID_MIN) },
    },
    {
      id: 'danger',
      share: SHARES.danger,
      kind: 'sum',
      terms: problem.spanLimits.flatMap(({ spans }) =>
        spans.map((span) => ({
          kind: 'span',
          from: { task: span.from, anchor: span.fromAnchor },
          to: { task: span.to, anchor: span.toAnchor },
          weight: 1,
        })),
      ),
    },
    {
      id: 'oven',
      share: SHARES.oven,
      kind: 'sum',
      terms: ovens.flatMap(({ id: resource }) => [
        { kind: 'stateOn', resource, weight: 1 },
        { kind: 'changeover', resource, weight: 1 },
      ]),
    },
    {
      id: 'switches',
      share: SHARES.switches,
      kind: 'sum',
      terms: [{ kind: 'switches', resource: HANDS, weight: 1 }],
    },
  ];
  return { ...problem, goals };
}
