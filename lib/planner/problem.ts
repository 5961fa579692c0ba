/**
 * The planner's face: a problem of plain data in, a plan of plain data out.
 * It knows tasks, resources, states and lags, and no kitchen. Time is in whole units of the caller's choice.
 * Whatever engine answers (by rules, exact) speaks this language, so callers never change.
 */

/** Names travel through, so that a caller can explain an answer in its own words. */
export type TaskId = string;
export type ResourceId = string;
export type StateId = string;

export interface Task {
  readonly id: TaskId;
  /** Shortest and longest length; equal where the plan may not choose. */
  readonly minLength: number;
  readonly maxLength: number;
  /** Earliest start and latest end; null for no limit of its own. */
  readonly notBefore: number | null;
  readonly endBy: number | null;
  /** Units of each cumulative resource it takes from start to end; one of no length takes none. */
  readonly demands: Readonly<Record<ResourceId, number>>;
  /** The state that a stateful resource must be in throughout; null if it needs none. */
  readonly needs: { readonly resource: ResourceId; readonly state: StateId } | null;
  /** Tasks of one group belong together (a segment); null for none. */
  readonly group: string | null;
}

/** A resource with so many units, which may change over time; hands and camera have capacity 1. */
export interface Resource {
  readonly id: ResourceId;
  /** Steps in ascending order of `from`; the first starts at or before 0. */
  readonly capacity: readonly { readonly from: number; readonly units: number }[];
}

/** A resource that is in one state at a time; tasks that need the same state may share it. */
export interface StatefulResource {
  readonly id: ResourceId;
  readonly initial: StateId;
  /** Units of time from state to state. Pairs that are absent cannot follow each other directly. */
  readonly changeover: Readonly<Record<StateId, Readonly<Record<StateId, number>>>>;
}

export type Anchor = 'start' | 'end';

/** `to`'s anchor is at least `min` and at most `max` after `from`'s anchor. */
export interface Lag {
  readonly id: string;
  readonly from: TaskId;
  readonly fromAnchor: Anchor;
  readonly to: TaskId;
  readonly toAnchor: Anchor;
  readonly min: number | null;
  readonly max: number | null;
}

/** The sum of the spans between pairs of anchors is at most `limit`. A negative span counts as 0. */
export interface SpanLimit {
  readonly id: string;
  readonly spans: readonly {
    readonly from: TaskId;
    readonly fromAnchor: Anchor;
    readonly to: TaskId;
    readonly toAnchor: Anchor;
  }[];
  readonly limit: number;
}

export interface PlannerProblem {
  /** No task ends after this. */
  readonly horizon: number;
  readonly tasks: readonly Task[];
  readonly resources: readonly Resource[];
  readonly stateful: readonly StatefulResource[];
  readonly lags: readonly Lag[];
  readonly spanLimits: readonly SpanLimit[];
}

export interface Placed {
  readonly id: TaskId;
  readonly start: number;
  readonly end: number;
}

/**
 * `feasible`: every rule holds. `stuck`: the engine found no plan; `broken` names the constraints
 * (lag, span limit, window or resource ids) that its best attempt breaks, `placed` is that attempt.
 */
export interface PlannerAnswer {
  readonly status: 'feasible' | 'stuck';
  readonly placed: readonly Placed[];
  readonly broken: readonly string[];
}

export interface PlannerOptions {
  readonly seed: number;
  /** True where a caller compares several problems: less search, and no best attempt if it is stuck. */
  readonly brief?: boolean;
}

/** An engine: pure, and deterministic for a given problem and seed. */
export type Planner = (problem: PlannerProblem, options: PlannerOptions) => PlannerAnswer;
