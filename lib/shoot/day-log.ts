import type { PlanEntry } from '#lib/shoot/plan';

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

export interface RowEvent extends Made {
  readonly kind: 'done' | 'takenBack';
  readonly refs: RowRef;
  readonly payload: Readonly<Record<string, never>>;
}

export interface NoteEvent extends Made {
  readonly kind: 'note';
  readonly refs: RowRef | Readonly<Record<string, never>>;
  readonly payload: { readonly text: string };
}

export type DayEvent = RowEvent | NoteEvent;

/** Longest note, in UTF-16 units. */
export const NOTE_MAX = 400;

/** Text without what no database keeps: NUL, and halves of surrogate pairs. */
export function storable(text: string): string {
  return text.replaceAll('\0', '').replaceAll(/\p{Surrogate}/gu, '');
}

export interface DayNote {
  readonly id: string;
  readonly at: string;
  readonly text: string;
  /** The key of the row that it is about; null where it is about the day. */
  readonly rowKey: string | null;
}

/** What the day's log says: which rows are done and since when, and the notes in order. */
export interface DayFold {
  readonly doneAt: ReadonlyMap<string, string>;
  readonly notes: readonly DayNote[];
}

/** The row that an entry of the plan stands for. */
export function rowRefOf(entry: Pick<PlanEntry, 'id' | 'stepId'>): RowRef {
  return entry.stepId === null ? { entryId: entry.id } : { stepId: entry.stepId };
}

/** One text for each row. `rowKey({ stepId: 'bake' })` → `'step bake'` */
export function rowKey(ref: RowRef): string {
  return 'stepId' in ref ? `step ${ref.stepId}` : `entry ${ref.entryId}`;
}

/** The key of the row that an event is about; null for a note about the day. */
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
 * The state of the day. A row is done from its first 'done' on, until that is taken back.
 *
 * Law: the same for every order and any repetition of its input.
 *
 * @example foldDay([done at 10:00, takenBack at 10:01, done at 10:05]).doneAt → the row, 10:05
 */
export function foldDay(events: readonly DayEvent[]): DayFold {
  const doneAt = new Map<string, string>();
  const notes: DayNote[] = [];
  for (const event of inDayOrder(events)) {
    const key = keyOfEvent(event);
    if (event.kind === 'note') {
      notes.push({ id: event.id, at: event.at, text: event.payload.text, rowKey: key });
    } else if (key !== null) {
      if (event.kind === 'takenBack') doneAt.delete(key);
      else if (!doneAt.has(key)) doneAt.set(key, event.at);
    }
  }
  return { doneAt, notes };
}

/**
 * The instant of a new entry about a row: `now`, or a millisecond after the latest that is known about
 * that row. So what is pressed last counts, also where two devices' clocks differ.
 */
export function instantAfter(now: Date, known: readonly DayEvent[], ref: RowRef): string {
  const key = rowKey(ref);
  const times = known
    .filter((event) => event.kind !== 'note' && keyOfEvent(event) === key)
    .map(({ at }) => Date.parse(at) + 1);
  return new Date(Math.max(now.getTime(), ...times)).toISOString();
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
