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
  /** True if a plan may do without it; then nothing that names it is asked of it. */
  readonly optional?: boolean;
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
  /** Units of resources that a changeover takes while it lasts; pairs that are absent take none. */
  readonly changeoverDemands?: Readonly<
    Record<StateId, Readonly<Record<StateId, Readonly<Record<ResourceId, number>>>>>
  >;
}

export type Anchor = 'start' | 'end';

/** The start or the end of a task. */
export interface TaskEvent {
  readonly task: TaskId;
  readonly anchor: Anchor;
}

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

/** Of these optional tasks at least `least` and at most `most` are in the plan. */
export interface Choice {
  readonly id: string;
  readonly tasks: readonly TaskId[];
  readonly least: number;
  readonly most: number;
}

/** A task that has begun, and is over if its end is known. */
export interface Begun {
  readonly id: TaskId;
  readonly start: number;
  readonly end: number | null;
}

/**
 * What is done is done: tasks that have begun stay as they are, and no other begins before `now`. Lengths,
 * windows, lags, resources and states that concern the past alone are facts and no longer rules; one that
 * still runs ends at `now` or later.
 */
export interface Past {
  readonly now: number;
  readonly begun: readonly Begun[];
}

/** One part of a sum that is to be small; each counts its weight for each unit. Left out tasks count 0. */
export type GoalTerm =
  /** Time of the event. */
  | { readonly kind: 'completion'; readonly event: TaskEvent; readonly weight: number }
  /** Time that the event is before or after `due`. */
  | {
      readonly kind: 'lateness';
      readonly event: TaskEvent;
      readonly due: number;
      readonly early: number;
      readonly late: number;
    }
  /** Time from one event to another; 0 if it is negative. */
  | {
      readonly kind: 'span';
      readonly from: TaskEvent;
      readonly to: TaskEvent;
      readonly weight: number;
    }
  /** Time of a stateful resource in changeovers, the first from its initial state included. */
  | { readonly kind: 'changeover'; readonly resource: ResourceId; readonly weight: number }
  /**
   * Time of a stateful resource in use, or held between two uses of one state. Holding never counts more
   * than the changeover from the initial state, since by then it would rather be left and made again.
   */
  | { readonly kind: 'stateOn'; readonly resource: ResourceId; readonly weight: number }
  /** Neighbours of different groups (none is a group too) on a resource; those of no length don't stand there. */
  | { readonly kind: 'switches'; readonly resource: ResourceId; readonly weight: number }
  /** Time by which starts differ from an earlier plan. */
  | { readonly kind: 'moved'; readonly from: readonly Placed[]; readonly weight: number }
  /** 1 if the task is not in the plan. */
  | { readonly kind: 'leftOut'; readonly task: TaskId; readonly weight: number };

/** What a plan should make small, and its share of the search's time (of the sum of all shares). */
export type Goal =
  | {
      readonly id: string;
      readonly share: number;
      /** The latest of these events, or of the ends of all tasks, up to the next `origin + k × step`. */
      readonly kind: 'latest';
      readonly events: readonly TaskEvent[] | 'all ends';
      readonly grid?: { readonly step: number; readonly origin: number };
    }
  | {
      readonly id: string;
      readonly share: number;
      readonly kind: 'sum';
      readonly terms: readonly GoalTerm[];
    };

export interface PlannerProblem {
  /** No task ends after this. */
  readonly horizon: number;
  readonly tasks: readonly Task[];
  readonly resources: readonly Resource[];
  readonly stateful: readonly StatefulResource[];
  readonly lags: readonly Lag[];
  readonly spanLimits: readonly SpanLimit[];
  /** None if left out. */
  readonly choices?: readonly Choice[];
  /** In levels: a later one may cost nothing of an earlier. Only the latest end if left out. */
  readonly goals?: readonly Goal[];
  readonly past?: Past | null;
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
  /**
   * How much is searched; `full` if left out. `first`: the first plan that keeps every rule, as it was found.
   * `brief`: less search, where a caller compares several problems. Neither makes a best attempt if it is stuck.
   */
  readonly search?: 'first' | 'brief' | 'full';
}

/** An engine: pure, and deterministic for a given problem and seed. */
export type Planner = (problem: PlannerProblem, options: PlannerOptions) => PlannerAnswer;
