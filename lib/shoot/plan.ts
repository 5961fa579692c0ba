/**
 * The shooting order as plain data: what `shooting-order.json` holds, what the day sheet, the calendar
 * file and the pages show. Minutes count from local midnight of the filming day and may pass 1440.
 */

/** What an entry is: a step of the person's, or something the day itself needs. */
export type EntryKind = 'step' | 'preheat' | 'coolDown' | 'washUp' | 'cameraMove' | 'appointment';

export interface PlanEntry {
  readonly id: string;
  readonly kind: EntryKind;
  /** The step it carries out; null for entries that are no step. */
  readonly stepId: string | null;
  readonly segmentId: string | null;
  readonly title: string;
  readonly startMin: number;
  readonly endMin: number;
  readonly hands: boolean;
  readonly onCamera: boolean;
  readonly ovenId: string | null;
  readonly milliC: number | null;
  readonly racks: number;
  readonly burners: number;
  /** Why it stands here: the binding rule in words ("after Mix and press", "oven free at 11:40"). */
  readonly why: string;
}

/** How long a perishable lot stands unchilled over the day, against its limit. */
export interface LotClock {
  readonly perishableId: string;
  readonly segmentId: string;
  readonly name: string;
  readonly minutes: number;
  readonly limitMin: number;
}

/** A must-rule that the plan could not keep, in words, with the steps and segments it concerns. */
export interface BrokenRule {
  readonly rule: string;
  readonly message: string;
  readonly stepIds: readonly string[];
}

/** What a day is made small by. */
export type DayLevel = 'wrap' | 'danger' | 'oven' | 'switches';

/** A level of the day's goals: what the plan has, and what no plan of that kind can have less of. */
export interface LevelProof {
  /** End of the day as a minute of the day; food unchilled, ovens on: minutes; switches: a count. */
  readonly level: DayLevel;
  readonly value: number;
  /** Null where nothing is known. */
  readonly bound: number | null;
  readonly proven: boolean;
}

/**
 * What is known of the plan: `proven`: none is better; `gap`: there may be a better one; `clash`: proven that
 * no plan keeps every rule; `rules`: a plan by rules of thumb, of which nothing is proven.
 */
export interface PlanProof {
  readonly status: 'proven' | 'gap' | 'clash' | 'rules';
  /** The most important first; empty where there is no proof. */
  readonly levels: readonly LevelProof[];
  /** Rules that cannot be kept together, by their ids in the problem: loosen one of them. */
  readonly clash: readonly string[];
}

export interface ShootPlan {
  readonly dayId: string;
  readonly date: string;
  readonly kind: 'asLived' | 'packed';
  readonly startMin: number;
  /** End of the last entry, the washing-up done. */
  readonly wrapMin: number;
  readonly status: 'feasible' | 'stuck';
  /** In order of start, then hands first, then id. */
  readonly entries: readonly PlanEntry[];
  readonly lots: readonly LotClock[];
  readonly broken: readonly BrokenRule[];
  readonly proof: PlanProof;
  /** Rules that cannot be kept together, in words; loosening any one may help. Empty if nothing is proven. */
  readonly clash: readonly string[];
}
