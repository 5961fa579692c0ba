/**
 * The shooting order as plain data: what `shooting-order.json` holds, what the day sheet, the calendar
 * file and the pages show. Minutes count from local midnight of the filming day and may pass 1440.
 */

/** What an entry is: a step of the person's, or something the day itself needs. */
export type EntryKind = 'step' | 'preheat' | 'coolDown' | 'washUp' | 'appointment';

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
}
