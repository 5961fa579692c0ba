import {
  inDayOrder,
  keyOfEvent,
  PICKUP_MIN,
  pickupRef,
  rowKey,
  type DayEvent,
  type ReplannedEvent,
  type RowEvent,
} from '#lib/shoot/day-log';

interface Said {
  readonly id: string;
  readonly at: string;
  /** The key of the row that it is about; null where it is about the day. */
  readonly rowKey: string | null;
}

export interface DayNote extends Said {
  readonly text: string;
}

/** Something to get later, and since when it is there; null while it is not. */
export interface DayPickup extends DayNote {
  readonly minutes: number;
  readonly gotAt: string | null;
}

export interface DayTake extends Said {
  readonly shotId: string;
  readonly good: boolean;
}

export interface DayReading extends Said {
  readonly milliC: number;
}

/** An order that was taken, with the id of its entry. */
export type TakenOrder = ReplannedEvent['payload'] & { readonly id: string; readonly at: string };

/** What the day's log says. Rows go by their keys, instants are as `toISOString` writes them. */
export interface DayFold {
  readonly doneAt: ReadonlyMap<string, string>;
  readonly skippedAt: ReadonlyMap<string, string>;
  /** Since when a row is under way, or was until it was done. */
  readonly startedAt: ReadonlyMap<string, string>;
  /** Until when a row takes, where it was said to take longer. */
  readonly longerUntil: ReadonlyMap<string, string>;
  /** How often a row was begun again. */
  readonly redone: ReadonlyMap<string, number>;
  readonly notes: readonly DayNote[];
  readonly pickups: readonly DayPickup[];
  readonly takes: readonly DayTake[];
  /** Shots that the day does without, though no take of them is good. */
  readonly without: ReadonlySet<string>;
  readonly readings: readonly DayReading[];
  /** The order that was taken last and not taken back; null while the day goes by the plan. */
  readonly order: TakenOrder | null;
}

const MINUTE_MS = 60_000;

/**
 * The state of the day.
 *
 * A row is done from its first 'done' on, until that is taken back, it is skipped or made again; likewise it is
 * skipped. One that was taken back is as it was before, so one that was under way goes on.
 *
 * Law: the same for every order and any repetition of its input.
 *
 * @example foldDay([done at 10:00, takenBack at 10:01, done at 10:05]).doneAt → the row, 10:05
 */
export function foldDay(events: readonly DayEvent[]): DayFold {
  const rows = new Rows();
  const notes: DayNote[] = [];
  const pickups: Omit<DayPickup, 'gotAt'>[] = [];
  const takes: DayTake[] = [];
  const without = new Set<string>();
  const readings: DayReading[] = [];
  const orders = new Map<string, TakenOrder>();
  for (const event of inDayOrder(events)) {
    const key = keyOfEvent(event);
    const said = { id: event.id, at: event.at, rowKey: key };
    switch (event.kind) {
      case 'note':
        notes.push({ ...said, text: event.payload.text });
        break;
      case 'pickup':
        pickups.push({
          ...said,
          text: event.payload.text,
          minutes: event.payload.minutes ?? PICKUP_MIN,
        });
        break;
      case 'take':
        takes.push({ ...said, ...event.payload });
        without.delete(event.payload.shotId);
        break;
      case 'without':
        without.add(event.payload.shotId);
        break;
      case 'temperature':
        readings.push({ ...said, milliC: event.payload.milliC });
        break;
      case 'replanned':
        orders.set(event.id, { ...event.payload, id: event.id, at: event.at });
        break;
      case 'orderBack':
        orders.delete(event.payload.replannedId);
        break;
      case 'longer':
        if (key !== null) rows.longer(key, event.at, event.payload.minutes);
        break;
      case 'started':
      case 'done':
      case 'skipped':
      case 'redo':
      case 'takenBack':
        if (key !== null) rows.mark(key, event.kind, event.at);
        break;
      // What is on the scale, what was said and the camera's clock is told by folds of their own.
      case 'cameraClock':
      case 'weighed':
      case 'display':
      case 'struckOut':
      case 'said':
      case 'unsaid':
        break;
    }
  }
  const { doneAt, skippedAt, startedAt, longerUntil, redone } = rows;
  return {
    doneAt,
    skippedAt,
    startedAt,
    longerUntil,
    redone,
    notes,
    pickups: pickups.map((pickup) => ({
      ...pickup,
      gotAt: doneAt.get(rowKey(pickupRef(pickup.id))) ?? null,
    })),
    takes,
    without,
    readings,
    order: [...orders.values()].at(-1) ?? null,
  };
}

/** Whether a row needs nobody any more, as far as it was marked. */
export function isOver({ doneAt, skippedAt }: DayFold, key: string): boolean {
  return doneAt.has(key) || skippedAt.has(key);
}

/** Whether a row is under way: begun, and neither done nor skipped. */
export function isUnderWay(fold: DayFold, key: string): boolean {
  return fold.startedAt.has(key) && !isOver(fold, key);
}

class Rows {
  readonly doneAt = new Map<string, string>();
  readonly skippedAt = new Map<string, string>();
  readonly startedAt = new Map<string, string>();
  readonly longerUntil = new Map<string, string>();
  readonly redone = new Map<string, number>();

  mark(key: string, kind: RowEvent['kind'], at: string): void {
    switch (kind) {
      case 'started':
        // What is done stays so until that is taken back; what was skipped is made after all.
        this.skippedAt.delete(key);
        if (!this.startedAt.has(key)) this.startedAt.set(key, at);
        break;
      case 'done':
        this.skippedAt.delete(key);
        if (!this.doneAt.has(key)) this.doneAt.set(key, at);
        break;
      case 'skipped':
        this.doneAt.delete(key);
        if (!this.skippedAt.has(key)) this.skippedAt.set(key, at);
        break;
      case 'redo':
        this.open(key);
        this.redone.set(key, (this.redone.get(key) ?? 0) + 1);
        break;
      case 'takenBack':
        if (this.doneAt.delete(key) || this.skippedAt.delete(key)) break;
        this.open(key);
    }
  }

  longer(key: string, at: string, minutes: number): void {
    if (!this.startedAt.has(key)) this.startedAt.set(key, at);
    const until = new Date(Date.parse(at) + minutes * MINUTE_MS).toISOString();
    this.longerUntil.set(key, until);
  }

  private open(key: string): void {
    this.doneAt.delete(key);
    this.skippedAt.delete(key);
    this.startedAt.delete(key);
    this.longerUntil.delete(key);
  }
}
