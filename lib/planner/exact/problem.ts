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

/** So much for each unit of time that the event is before or after `due`. */
export interface Deviation {
  readonly event: Event;
  readonly due: number;
  readonly early: number;
  readonly late: number;
}

/** What is to be small: the latest of some events, or a weighted sum of deviations. */
export type Goal =
  | { readonly name: string; readonly kind: 'latest'; readonly events: readonly Event[] }
  | { readonly name: string; readonly kind: 'deviations'; readonly of: readonly Deviation[] };

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
  /** One after another: a later goal may not cost anything of an earlier one. */
  readonly goals: readonly Goal[];
  readonly frozen: readonly Frozen[];
}

export interface ExactPlan {
  readonly starts: readonly number[];
  readonly ends: readonly number[];
}

/** `best` and `bound` of a goal: null where nothing is known yet. */
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
  /** Asked every few conflicts; true ends the search with what is known. The only clock there is. */
  readonly shouldStop: () => boolean;
  readonly onProgress?: (progress: Progress) => void;
  /** A plan to begin with; where it breaks a rule it is a hint. */
  readonly warmStart?: ExactPlan;
  /** Which side this search works on first: plans (the rule) or bounds (for the second thread). */
  readonly side?: 'plans' | 'bounds';
  readonly exchange?: Exchange;
}
