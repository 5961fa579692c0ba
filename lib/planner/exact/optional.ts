/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import { lower, upper } from './atoms';
import type { Draft, Moment } from './draft';
import type { Atom } from './implications';
import type { Places } from './pairs';
import type { Event, ExactLag, ExactProblem, ExactSetup } from './problem';

/** What concerns optional tasks, taken out of a problem. */
export interface SetApart {
  /** The rest: optional tasks may have no length, no window, no lags and no setups. */
  readonly plain: ExactProblem;
  readonly optional: readonly number[];
  readonly lags: readonly ExactLag[];
  readonly setups: readonly ExactSetup[];
}

/**
 * Takes out of a problem what only holds for optional tasks that are in the plan. An optional task that has
 * begun is in the plan.
 */
export function setApart(problem: ExactProblem): SetApart {
  const begun = new Set(problem.frozen.map(({ task }) => task));
  const optional = problem.tasks.flatMap((task, index) =>
    task.optional === true && !begun.has(index) ? [index] : [],
  );
  if (optional.length === 0) return { plain: problem, optional, lags: [], setups: [] };
  const apart = new Set(optional);
  const concerned = ({ from, to }: ExactLag): boolean => apart.has(from.task) || apart.has(to.task);
  const concernedBoth = ({ first, second }: ExactSetup): boolean =>
    apart.has(first) || apart.has(second);
  return {
    plain: {
      ...problem,
      tasks: problem.tasks.map((task, index) =>
        apart.has(index) ? { ...task, minLength: 0, notBefore: null, endBy: null } : task,
      ),
      lags: problem.lags.filter((lag) => !concerned(lag)),
      setups: problem.setups.filter((setup) => !concernedBoth(setup)),
    },
    optional,
    lags: problem.lags.filter(concerned),
    setups: problem.setups.filter(concernedBoth),
  };
}

/**
 * Which tasks are in the plan: a flag for each optional task. One that is not has no length and stands at 0,
 * where it takes nothing and binds nobody.
 */
export class Presence {
  private readonly flags = new Map<number, number>();

  constructor(
    private readonly draft: Draft,
    private readonly places: Places,
    problem: ExactProblem,
    optional: readonly number[],
  ) {
    for (const task of optional) {
      const flag = draft.make(0, 1);
      this.flags.set(task, flag);
      draft.chosen.push(flag);
      const { minLength, notBefore, endBy } = problem.tasks[task]!;
      const start = this.momentOf({ task, anchor: 'start' });
      const end = this.momentOf({ task, anchor: 'end' });
      const zero: Moment = [draft.zero, 0];
      const there: Atom[] = [[lower(flag), 1]];
      const away: Atom[] = [[upper(flag), 0]];
      draft.after(start, end, minLength, there);
      if (notBefore !== null && notBefore > 0) draft.after(zero, start, notBefore, there);
      if (endBy !== null) draft.after(end, zero, -endBy, there);
      draft.after(end, start, 0, away);
      draft.after(start, zero, 0, away);
    }
  }

  /** The atom that says that the task is in the plan; none where it always is. */
  of(...tasks: readonly number[]): Atom[] {
    return [...new Set(tasks)].flatMap((task): Atom[] => {
      const flag = this.flags.get(task);
      return flag === undefined ? [] : [[lower(flag), 1]];
    });
  }

  /** The flag of each optional task. */
  get all(): ReadonlyMap<number, number> {
    return this.flags;
  }

  momentOf({ task, anchor }: Event): Moment {
    const { start, end, endOffset } = this.places;
    return anchor === 'start' ? [start[task]!, 0] : [end[task]!, endOffset[task]!];
  }

  /** The lags and setups of optional tasks, where those are in the plan. */
  addApart({ lags, setups }: SetApart): void {
    const { draft } = this;
    for (const { from, to, min } of lags)
      draft.after(this.momentOf(from), this.momentOf(to), min, this.of(from.task, to.task));
    for (const { first, second, between, back } of setups) {
      const order = draft.make(0, 1);
      draft.chosen.push(order);
      this.apart(first, second, between, [lower(order), 1]);
      this.apart(second, first, back, [upper(order), 0]);
    }
  }

  /** `next` begins `gap` after `task` is over, where both are in the plan and `order` holds. */
  apart(task: number, next: number, gap: number, ...order: readonly Atom[]): void {
    const over = this.momentOf({ task, anchor: 'end' });
    const begin = this.momentOf({ task: next, anchor: 'start' });
    this.draft.after(over, begin, gap, [...this.of(task, next), ...order]);
  }
}
