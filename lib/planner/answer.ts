import type { Placed, ResourceId, StateId, TaskId } from '#lib/planner/problem';

/** A changeover of a stateful resource, as late as the plan has it. */
export interface PlacedChangeover {
  readonly resource: ResourceId;
  readonly from: StateId;
  readonly to: StateId;
  readonly start: number;
  readonly end: number;
}

/**
 * - `proven`: no plan is better;
 * - `gap`: a plan, of which it is not known whether there is a better one;
 * - `infeasible`: no plan keeps every rule, proven;
 * - `stopped`: neither a plan nor a proof in the time given.
 */
export type ProofStatus = 'proven' | 'gap' | 'infeasible' | 'stopped';

/**
 * One goal of a plan. `bound`: no plan that is as good in the levels before has a lower value. After a
 * level with a gap, the later ones are bounded and proven for plans no worse than what that level reached.
 */
export interface LevelAnswer {
  readonly id: string;
  readonly value: number | null;
  readonly bound: number | null;
  readonly status: ProofStatus;
}

/** Rules that cannot be kept together, by their ids (see `brokenRules`). */
export interface Clash {
  readonly ids: readonly string[];
  /** True if it is proven that without any one of them the others can be kept. */
  readonly smallest: boolean;
}

/** The exact planner's answer: the plan (empty if there is none) and what is proven of it. */
export interface ProvenAnswer {
  readonly status: ProofStatus;
  readonly placed: readonly Placed[];
  /** Optional tasks that are not in the plan. */
  readonly leftOut: readonly TaskId[];
  readonly changeovers: readonly PlacedChangeover[];
  readonly levels: readonly LevelAnswer[];
  readonly statistics: {
    readonly conflicts: number;
    readonly decisions: number;
    /** By the clock given; null without one. */
    readonly seconds: number | null;
  };
  /** Where it is infeasible and explaining was asked for. */
  readonly clash: Clash | null;
}

/** Told whenever a level has a better plan or a better bound. */
export interface PlannerProgress {
  /** The goal's place in the problem's goals. */
  readonly level: number;
  readonly best: number | null;
  readonly bound: number | null;
  /** Since the beginning; null without a clock. */
  readonly seconds: number | null;
  /** The best plan so far. */
  readonly placed: readonly Placed[];
}

export interface ExactPlannerOptions {
  readonly seed: number;
  /** Seconds from any moment on; the domain has no clock of its own. */
  readonly now?: () => number;
  /** Seconds for all levels, by their shares; needs `now`. What a level leaves goes to those after it. */
  readonly limitSeconds?: number;
  /** Asked every few conflicts; true ends this level with what is known. */
  readonly shouldStop?: (level: number) => boolean;
  readonly onProgress?: (progress: PlannerProgress) => void;
  /** A plan to begin with; where it breaks a rule it is a hint. Without one the planner by rules is asked. */
  readonly warmStart?: readonly Placed[];
  /** False where nobody reads which rules clash. */
  readonly explain?: boolean;
}
