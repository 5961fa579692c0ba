import type { CameraClock } from '#lib/shoot/camera-clock';
import type { PlanEntry } from '#lib/shoot/plan';
import type { Said } from '#lib/episode/said-line';
import type { Display, Weighed } from '#lib/shoot/scale-entries';

/**
 * The log of a filming day: what was entered while it happened, as events that devices make themselves.
 * The state of the day is their fold, whatever way and in whatever order they arrived.
 */

/** A row of the shooting order: a step, or an entry that is no step (washing up, heating an oven). */
export type RowRef = { readonly stepId: string } | { readonly entryId: string };

interface Made {
  /** Made by the device, the same each time that the event is sent. */
  readonly id: string;
  readonly deviceId: string;
  /** Counts up from 1 on its device. */
  readonly deviceSeq: number;
  /** An instant as `toISOString` writes it, so that text order is the order of time. */
  readonly at: string;
}

/** What is marked about a row; of the marks of one row the last counts. */
export const ROW_KINDS = ['started', 'done', 'skipped', 'redo', 'takenBack'] as const;

/**
 * `started`: it is under way. `done`, `skipped`: it needs nobody any more. `redo`: it is made again, from the
 * beginning. `takenBack`: not done (or skipped) after all; of a row that is neither, not started after all.
 */
export interface RowEvent extends Made {
  readonly kind: (typeof ROW_KINDS)[number];
  readonly refs: RowRef;
  readonly payload: Readonly<Record<string, never>>;
}

/** About one row, or about the day. */
type AboutRow = RowRef | Readonly<Record<string, never>>;

export interface NoteEvent extends Made {
  readonly kind: 'note';
  readonly refs: AboutRow;
  readonly payload: { readonly text: string };
}

/** Something to get later; `pickupRef` is the row that it makes, which is marked like any other. */
export interface PickupEvent extends Made {
  readonly kind: 'pickup';
  readonly refs: AboutRow;
  /** Minutes that it takes; `PICKUP_MIN` where nobody said. */
  readonly payload: { readonly text: string; readonly minutes?: number | undefined };
}

/** A take of a shot, which ended when this was pressed: good, or to be made again. */
export interface TakeEvent extends Made {
  readonly kind: 'take';
  readonly refs: AboutRow;
  readonly payload: { readonly shotId: string; readonly good: boolean };
}

/** A shot that the day does without. */
export interface WithoutEvent extends Made {
  readonly kind: 'without';
  readonly refs: AboutRow;
  readonly payload: { readonly shotId: string };
}

/** An inside temperature that was read, in thousandths of a degree Celsius. */
export interface TemperatureEvent extends Made {
  readonly kind: 'temperature';
  readonly refs: { readonly stepId: string };
  readonly payload: { readonly milliC: number };
}

/** A row takes so many more minutes from now; it is under way, if it was not. */
export interface LongerEvent extends Made {
  readonly kind: 'longer';
  readonly refs: RowRef;
  readonly payload: { readonly minutes: number };
}

/** Where a row stands in an order that was taken: minutes after local midnight of the filming day. */
export interface OrderedRow {
  /** The entry's id in the plan. */
  readonly id: string;
  readonly startMin: number;
  readonly endMin: number;
  readonly ovenId: string | null;
}

/** A change of an oven in an order that was taken; not a step, so its words travel with it. */
export interface OrderedHeat extends OrderedRow {
  readonly kind: 'preheat' | 'coolDown';
  readonly title: string;
  /** Where the oven goes, in thousandths of a degree Celsius. */
  readonly milliC: number;
}

/** Another order from now on, taken by the person: every device has it, also without the server. */
export interface ReplannedEvent extends Made {
  readonly kind: 'replanned';
  readonly refs: Readonly<Record<string, never>>;
  readonly payload: {
    readonly rows: readonly OrderedRow[];
    readonly heats: readonly OrderedHeat[];
  };
}

/** A reading of a scale, which becomes one of its dish (`readingId`). */
export interface WeighedEvent extends Made {
  readonly kind: 'weighed';
  readonly refs: AboutRow;
  readonly payload: Weighed;
}

/** A photo of the display, whose number is typed later: until then nothing is known to be weighed. */
export interface DisplayEvent extends Made {
  readonly kind: 'display';
  readonly refs: AboutRow;
  readonly payload: Display;
}

/** A reading, or a photo of a display, that does not count after all. */
export interface StruckOutEvent extends Made {
  readonly kind: 'struckOut';
  readonly refs: Readonly<Record<string, never>>;
  readonly payload: { readonly weighingId: string };
}

/** A line that was said in front of the camera; of one scope the last counts. */
export interface SaidEvent extends Made {
  readonly kind: 'said';
  readonly refs: AboutRow;
  readonly payload: Said;
}

/** A line that was not said after all, or is in no take that is kept. */
export interface UnsaidEvent extends Made {
  readonly kind: 'unsaid';
  readonly refs: Readonly<Record<string, never>>;
  readonly payload: { readonly saidId: string };
}

/** The order before the one that was taken is the day's again. */
export interface OrderBackEvent extends Made {
  readonly kind: 'orderBack';
  readonly refs: Readonly<Record<string, never>>;
  readonly payload: { readonly replannedId: string };
}

/** A picture in which the camera saw the phone's clock; of several the last counts. */
export interface CameraClockEvent extends Made {
  readonly kind: 'cameraClock';
  readonly refs: Readonly<Record<string, never>>;
  readonly payload: CameraClock;
}

export type DayEvent =
  | CameraClockEvent
  | WeighedEvent
  | DisplayEvent
  | StruckOutEvent
  | SaidEvent
  | UnsaidEvent
  | OrderBackEvent
  | RowEvent
  | NoteEvent
  | PickupEvent
  | TakeEvent
  | WithoutEvent
  | TemperatureEvent
  | LongerEvent
  | ReplannedEvent;

/** What a device adds to an entry by itself. */
export type Entry = DistributiveOmit<DayEvent, keyof Made>;
type DistributiveOmit<T, K extends PropertyKey> = T extends unknown ? Omit<T, K> : never;

/** Minutes that a row may take longer at once. */
export const LONGER_MAX = 720;
/** Minutes that something to get later takes where nobody says (common practice, no source). */
export const PICKUP_MIN = 5;
/** Rows of an order, and changes of ovens in it, at most. */
export const ORDER_MAX = 500;

/** Longest note, in UTF-16 units. */
export const NOTE_MAX = 400;

/** Text without what no database keeps: NUL, and halves of surrogate pairs. */
export function storable(text: string): string {
  return text.replaceAll('\0', '').replaceAll(/\p{Surrogate}/gu, '');
}

/** Before a pickup's id: the step that it is once it has a place in the order. */
export const PICKUP_STEP = 'pickup-';

/** The row that an entry of the plan stands for. */
export function rowRefOf(entry: Pick<PlanEntry, 'id' | 'stepId'>): RowRef {
  if (entry.stepId?.startsWith(PICKUP_STEP)) {
    return pickupRef(entry.stepId.slice(PICKUP_STEP.length));
  }
  return entry.stepId === null ? { entryId: entry.id } : { stepId: entry.stepId };
}

/** One text for each row. `rowKey({ stepId: 'bake' })` → `'step bake'` */
export function rowKey(ref: RowRef): string {
  return 'stepId' in ref ? `step ${ref.stepId}` : `entry ${ref.entryId}`;
}

/** The row that a pickup makes, so that it can be done as other rows are. */
export function pickupRef(pickupId: string): RowRef {
  return { entryId: `pickup:${pickupId}` };
}

/** The key of the row that an event is about; null for one about the day. */
export function keyOfEvent({ refs }: Pick<DayEvent, 'refs'>): string | null {
  return 'stepId' in refs || 'entryId' in refs ? rowKey(refs as RowRef) : null;
}

/**
 * Each event once, by (at, deviceId, deviceSeq). What shares its id, or its device and number, with an
 * earlier one is that one sent again.
 *
 * Law: the same for every order and any repetition of its input.
 */
export function inDayOrder(events: readonly DayEvent[]): DayEvent[] {
  const ids = new Set<string>();
  const numbers = new Set<string>();
  return [...events].sort(byTime).filter((event) => {
    const number = `${event.deviceSeq} ${event.deviceId}`;
    if (ids.has(event.id) || numbers.has(number)) return false;
    ids.add(event.id);
    numbers.add(number);
    return true;
  });
}

/**
 * The instant of a new entry: `now`, or a millisecond after the latest that is known of the same row and in the
 * same matter (an order that was taken is one of its own). So what is pressed last counts, also where two
 * devices' clocks differ.
 */
export function instantAfter(now: Date, known: readonly DayEvent[], about: About): string {
  const matter = matterOf(about);
  const times =
    matter === null
      ? []
      : known.filter((event) => matterOf(event) === matter).map(({ at }) => Date.parse(at) + 1);
  return new Date(Math.max(now.getTime(), ...times)).toISOString();
}

type About = Pick<DayEvent, 'kind' | 'refs'>;

/** What stands on a scale is what was put there last. */
const AT_THE_SCALE: ReadonlySet<DayEvent['kind']> = new Set(['weighed', 'display', 'struckOut']);

/** What an entry decides together with others; null for one that only adds to what is there. */
function matterOf(about: About): string | null {
  if (about.kind === 'replanned' || about.kind === 'orderBack') return 'order';
  if (about.kind === 'said' || about.kind === 'unsaid') return 'said';
  if (AT_THE_SCALE.has(about.kind)) return 'scale';
  if (about.kind === 'note' || about.kind === 'pickup') return null;
  return `row ${keyOfEvent(about) ?? ''}`;
}

function byTime(a: DayEvent, b: DayEvent): number {
  return (
    compare(a.at, b.at) ||
    compare(a.deviceId, b.deviceId) ||
    a.deviceSeq - b.deviceSeq ||
    // Only where two events claim one place, so that both orders of arrival choose the same.
    compare(a.id, b.id) ||
    compare(contents(a), contents(b))
  );
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function contents({ kind, refs, payload }: DayEvent): string {
  return JSON.stringify([kind, Object.entries(refs), Object.entries(payload)]);
}
