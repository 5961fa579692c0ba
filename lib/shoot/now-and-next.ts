import { rowKey, rowRefOf } from '#lib/shoot/day-log';
import type { DayFold } from '#lib/shoot/fold-day';
import type { PlanEntry } from '#lib/shoot/plan';

/** What is looked at in a row of the day sheet. */
export interface OrderRow {
  readonly entry: Pick<
    PlanEntry,
    'id' | 'kind' | 'stepId' | 'startMin' | 'endMin' | 'hands' | 'ovenId'
  >;
}

export interface NowAndNext<R> {
  /** The first row that asks for somebody; null where none does. */
  readonly now: R | null;
  readonly next: R | null;
  /** Minutes since the planned end of `now`; null where it is not past, or the day is another. */
  readonly behindMin: number | null;
}

/** Minutes after midnight up to which a filming day may still go on: the day and the night after it. */
const DAY_ENDS_MIN = 2880;

/** Whether a minute, counted from the filming day's midnight, belongs to that day or the night after it. */
export function isFilmingNow(nowMin: number): boolean {
  return nowMin >= 0 && nowMin < DAY_ENDS_MIN;
}

/** The marks of the rows that say which are behind. */
type Marks = Pick<DayFold, 'doneAt' | 'skippedAt'>;

/**
 * The one thing now, and the one next, in the order of the sheet. `nowMin` counts from local midnight of
 * the filming day and may lie on another day. `running` are the rows that run by themselves and whose time is
 * not over; they ask for nobody.
 *
 * Law: neither is done, skipped or runs by itself; every row before `now` is behind us or runs.
 */
export function nowAndNext<R extends OrderRow>(
  rows: readonly R[],
  fold: Marks,
  nowMin: number | null,
  running: ReadonlySet<string> = new Set(),
): NowAndNext<R> {
  const [now = null, next = null] = rows.filter(
    (row) => !isBehind(row, rows, fold, nowMin) && !running.has(rowKey(rowRefOf(row.entry))),
  );
  const late = now === null || nowMin === null ? 0 : nowMin - now.entry.endMin;
  const today = nowMin !== null && isFilmingNow(nowMin);
  return { now, next, behindMin: today && late > 0 ? late : null };
}

/**
 * Whether a row needs nobody any more: it was marked done or skipped; an appointment also once its time is over,
 * an oven's heating or cooling also once a step that waited for it in that oven is done.
 */
export function isBehind(
  { entry }: OrderRow,
  rows: readonly OrderRow[],
  { doneAt, skippedAt }: Marks,
  nowMin: number | null,
): boolean {
  const key = rowKey(rowRefOf(entry));
  if (doneAt.has(key) || skippedAt.has(key)) return true;
  if (entry.kind === 'appointment') return nowMin !== null && nowMin >= entry.endMin;
  if (entry.kind !== 'preheat' && entry.kind !== 'coolDown') return false;
  return rows.some(
    ({ entry: other }) =>
      other.kind === 'step' &&
      other.ovenId === entry.ovenId &&
      other.startMin >= entry.endMin &&
      doneAt.has(rowKey(rowRefOf(other))),
  );
}
