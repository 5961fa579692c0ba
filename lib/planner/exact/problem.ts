/**
 * What the exact engine is asked and what it answers, in plain data. Tasks and resources are known by their
 * place in the lists; names travel through for explanations. Times are whole units of the caller's choice.
 */

export type Anchor = 'start' | 'end';

/** The start or the end of a task. */
export interface Event {
  readonly task: number;
  readonly anchor: Anchor;
}

export interface ExactTask {
  readonly name: string;
  /** Shortest and longest length; equal where the plan may not choose. */
  readonly minLength: number;
  readonly maxLength: number;
  /** Earliest start and latest end; null for none of its own. */
  readonly notBefore: number | null;
  readonly endBy: number | null;
  /** True if a plan may do without it; lags, setups, goals and limits then take no notice of it. */
  readonly optional?: boolean;
}

export interface ExactResource {
  readonly name: string;
  /** Steps in ascending order of `from`, the first at or before 0: so many units from then on. */
  readonly capacity: readonly { readonly from: number; readonly units: number }[];
  /** Units taken by each task from its start to its end, by the tasks' order. */
  readonly demands: readonly number[];
}

/** `to` is at least `min` after `from`; a negative `min` says that `from` is at most so long after `to`. */
export interface ExactLag {
  readonly name: string;
  readonly from: Event;
  readonly to: Event;
  readonly min: number;
}

/** One after the other: `second` starts `between` after `first` ends, or `first` `back` after `second`. */
export interface ExactSetup {
  readonly name: string;
  readonly first: number;
  readonly second: number;
  readonly between: number;
  readonly back: number;
}

/** Time from one event to another, 0 if it is negative, times a weight. */
export interface Span {
  readonly from: Event;
  readonly to: Event;
  readonly weight: number;
}

/** The sum of the spans is at most `most`. */
export interface SpanSum {
  readonly name: string;
  readonly spans: readonly Span[];
  readonly most: number;
}

/** Of these optional tasks at least `least` and at most `most` are in the plan. */
export interface Choice {
  readonly name: string;
  readonly tasks: readonly number[];
  readonly least: number;
  readonly most: number;
}

/** A task that stands in a row; if it began in the past it may have another task's start. */
export interface RowUser {
  readonly task: number;
  readonly begin: Event;
  readonly kind: number;
  /** It is over or under way: what rules ask of two such users is not looked at. */
  readonly past: boolean;
}

/**
 * A resource that is in one state (kind) at a time. Its users stand in a row by their starts; of equal starts
 * those that may have no length come first, then the order of the list. Neighbours of one kind may overlap;
 * one of another kind begins when all before it are over and the change is made.
 */
export interface States {
  readonly name: string;
  readonly users: readonly RowUser[];
  readonly initial: number;
  /** `[from][to]`: the time of a change, null where they cannot follow each other directly. */
  readonly change: readonly (readonly (number | null)[])[];
  /** Tasks of length 0 or more that make the change to the user (by its task) from a kind. */
  readonly changeTasks: readonly {
    readonly user: number;
    readonly from: number;
    readonly task: number;
  }[];
}

/**
 * What a row costs. A user whose neighbour before it is of another kind: `change[from][to]` and `on` for each
 * unit of its length; the first of all `first[kind]` and the same. One that follows its own kind: `on` for
 * each unit from the latest end before it to its own end, at most its length and `keep[kind]`.
 */
export interface RowCost {
  readonly name: string;
  readonly users: readonly RowUser[];
  readonly change: readonly (readonly number[])[];
  readonly first: readonly number[];
  readonly on: number;
  /** Null where keeping has no limit. */
  readonly keep: readonly (number | null)[];
  /** Users of no length do not stand in the row. */
  readonly onlyLong: boolean;
}

/** So much for each unit of time that the event is before or after `due`. */
export interface Deviation {
  readonly event: Event;
  readonly due: number;
  readonly early: number;
  readonly late: number;
}

/** What is to be small: the latest of some events (up to the next `origin + k × step`), or a sum. */
export type Goal =
  | {
      readonly name: string;
      readonly kind: 'latest';
      readonly events: readonly Event[];
      readonly grid?: { readonly step: number; readonly origin: number };
    }
  | { readonly name: string; readonly kind: 'deviations'; readonly of: readonly Deviation[] }
  | {
      readonly name: string;
      readonly kind: 'sum';
      readonly deviations: readonly Deviation[];
      readonly spans: readonly Span[];
      readonly rows: readonly RowCost[];
      readonly absent: readonly { readonly task: number; readonly weight: number }[];
    };

/** A task that has begun: its start, and its end if that is known, are not to be changed. */
export interface Frozen {
  readonly task: number;
  readonly start: number;
  readonly end: number | null;
}

export interface ExactProblem {
  /** No task ends after this. */
  readonly horizon: number;
  readonly tasks: readonly ExactTask[];
  readonly resources: readonly ExactResource[];
  readonly lags: readonly ExactLag[];
  readonly setups: readonly ExactSetup[];
  readonly spanSums?: readonly SpanSum[];
  readonly choices?: readonly Choice[];
  readonly states?: readonly States[];
  /** One after another: a later goal may not cost anything of an earlier one. */
  readonly goals: readonly Goal[];
  readonly frozen: readonly Frozen[];
}

export interface ExactPlan {
  readonly starts: readonly number[];
  readonly ends: readonly number[];
  /** Optional tasks that are not in the plan; their times mean nothing. */
  readonly absent?: readonly number[];
}

/**
 * `best` and `bound` of a goal: null where nothing is known yet. The bound is of plans no worse in the goals
 * before than what was reached there.
 */
export interface GoalAnswer {
  readonly name: string;
  readonly best: number | null;
  readonly bound: number | null;
  readonly proven: boolean;
}

/**
 * - `proven`: the plan is best in every goal, in their order;
 * - `gap`: a plan, of which it is not known whether there is a better one;
 * - `infeasible`: there is no plan, proven;
 * - `stopped`: neither a plan nor a proof in the time given.
 */
export type ExactStatus = 'proven' | 'gap' | 'infeasible' | 'stopped';

export interface ExactAnswer {
  readonly status: ExactStatus;
  readonly plan: ExactPlan | null;
  readonly goals: readonly GoalAnswer[];
  readonly statistics: { readonly conflicts: number; readonly decisions: number };
}

/** Told whenever a goal has a better plan or a better bound. */
export interface Progress {
  readonly goal: number;
  readonly best: number | null;
  readonly bound: number;
  readonly plan: ExactPlan | null;
}

/** Bounds shared with another search of the same problem and first goal, as between two threads. */
export interface Exchange {
  /** The other's best value of the first goal; Infinity if it has none. */
  best(): number;
  /** The other's proven bound of the first goal. */
  bound(): number;
  publish(best: number, bound: number): void;
}

export interface ExactOptions {
  readonly seed: number;
  /**
   * Asked every few conflicts; true ends the work on this goal with what is known, and the next goal begins.
   * The only clock there is.
   */
  readonly shouldStop: (goal?: number) => boolean;
  readonly onProgress?: (progress: Progress) => void;
  /** A plan to begin with; where it breaks a rule it is a hint. */
  readonly warmStart?: ExactPlan;
  /** Which side this search works on first: plans (the rule) or bounds (for the second thread). */
  readonly side?: 'plans' | 'bounds';
  readonly exchange?: Exchange;
}
