/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import { lower, upper } from './atoms';
import { Deviations, type CostTerm } from './deviations';
import type { Draft, Moment } from './draft';
import { Grid } from './grid';
import type { Presence } from './optional';
import type { Choice, Deviation, Event, ExactProblem, Goal, Span, SpanSum } from './problem';
import { leastOfRow, MOST_COST, type Rows } from './rows';

/** Makes the variables of goals and of limits on sums. */
export class GoalParts {
  constructor(
    private readonly draft: Draft,
    private readonly presence: Presence,
    private readonly rows: Rows,
    private readonly problem: ExactProblem,
    /** How much later the one variable is than the other at least, or `-Infinity`. */
    private readonly least: (from: number, to: number) => number,
  ) {}

  /** The variable that is to be small. */
  goal(goal: Goal): number {
    const { draft, presence } = this;
    if (goal.kind === 'latest') {
      const step = goal.grid?.step ?? 1;
      const most = this.problem.horizon + step;
      const total = draft.make(Math.min(leastEnd(this.problem, goal.events), most), most);
      for (const event of goal.events)
        draft.after(presence.momentOf(event), [total, 0], 0, presence.of(event.task));
      if (goal.grid !== undefined && step > 1)
        draft.propagators.push(new Grid(goal.name, total, step, goal.grid.origin));
      return total;
    }
    if (goal.kind === 'deviations') return this.sum(goal.name, MOST_COST, this.deviations(goal.of));
    const least = goal.rows.reduce((sum, row) => sum + leastOfRow(this.problem, row), 0);
    const terms = [
      ...this.deviations(goal.deviations),
      ...goal.spans.flatMap((span) => this.span(span)),
      ...goal.rows.flatMap((row) =>
        this.rows.costs(row).map((cost) => ({ bound: lower(cost), offset: 0, weight: 1 })),
      ),
      ...goal.absent.flatMap(({ task, weight }): CostTerm[] => {
        const flag = presence.all.get(task);
        return flag === undefined || weight === 0
          ? []
          : [{ bound: upper(flag), offset: 1, weight }];
      }),
    ];
    const total = this.sum(goal.name, MOST_COST, terms);
    draft.lows[total] = Math.min(least, MOST_COST);
    return total;
  }

  limit({ name, spans, most }: SpanSum): void {
    this.sum(
      name,
      most,
      spans.flatMap((span) => this.span(span)),
    );
  }

  choice({ name, tasks, least, most }: Choice): void {
    const { all } = this.presence;
    const open = tasks.flatMap((task) => all.get(task) ?? []);
    // Tasks that have begun are in the plan.
    const fixed = tasks.length - open.length;
    const count = (bound: (flag: number) => number, offset: number): CostTerm[] =>
      open.map((flag) => ({ bound: bound(flag), offset, weight: 1 }));
    this.sum(name, most - fixed, count(lower, 0));
    this.sum(name, tasks.length - least, count(upper, 1));
  }

  private sum(name: string, most: number, terms: readonly CostTerm[]): number {
    const { draft } = this;
    if (most < 0) {
      // More than there may be, whatever is planned.
      draft.after([draft.zero, 0], [draft.zero, 0], 1);
      return draft.zero;
    }
    const total = draft.make(0, most);
    draft.propagators.push(new Deviations(name, total, terms));
    return total;
  }

  private deviations(of: readonly Deviation[]): CostTerm[] {
    const { draft, presence } = this;
    return of.flatMap(({ event, due, early, late }): CostTerm[] => {
      const there = presence.of(event.task);
      const [variable, offset] = presence.momentOf(event);
      if (there.length === 0) {
        return [
          { bound: upper(variable), offset: due - offset, weight: early },
          { bound: lower(variable), offset: offset - due, weight: late },
        ].filter(({ weight }) => weight > 0);
      }
      const at: Moment = [variable, offset];
      const goal: Moment = [draft.zero, due];
      const most = this.problem.horizon + Math.abs(due);
      return [
        { from: at, to: goal, weight: early },
        { from: goal, to: at, weight: late },
      ].flatMap(({ from, to, weight }) =>
        weight === 0
          ? []
          : [{ bound: lower(draft.span(from, to, most, there)), offset: 0, weight }],
      );
    });
  }

  private span({ from, to, weight }: Span): CostTerm[] {
    const { draft, presence } = this;
    if (weight === 0) return [];
    const there = presence.of(from.task, to.task);
    const begin = presence.momentOf(from);
    const end = presence.momentOf(to);
    const cost = draft.span(begin, end, this.problem.horizon, there);
    if (there.length === 0) {
      const least = this.least(begin[0], end[0]) + end[1] - begin[1];
      draft.lows[cost] = Math.max(draft.lows[cost]!, Math.min(least, this.problem.horizon));
    }
    return [{ bound: lower(cost), offset: 0, weight }];
  }
}

/**
 * What has to be done on a resource by the tasks that must be over, by the most units it ever has: none can all
 * be over before that, wherever they stand.
 */
function leastEnd({ tasks, resources }: ExactProblem, events: readonly Event[]): number {
  const ends = new Set(events.flatMap(({ task, anchor }) => (anchor === 'end' ? [task] : [])));
  let least = 0;
  for (const { capacity, demands } of resources) {
    const most = Math.max(0, ...capacity.map(({ units }) => units));
    let work = 0;
    for (const task of ends) work += demands[task]! * tasks[task]!.minLength;
    if (most > 0) least = Math.max(least, Math.ceil(work / most));
  }
  return least;
}
