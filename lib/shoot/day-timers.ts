import type { DayFold } from '#lib/shoot/fold-day';
import { isUnderWay } from '#lib/shoot/fold-day';
import { rowKey, rowRefOf } from '#lib/shoot/day-log';
import type { OrderRow } from '#lib/shoot/now-and-next';

/** A row that runs by itself, and the instant at which it is over, in milliseconds since 1970. */
export interface DayTimer<R> {
  readonly row: R;
  readonly key: string;
  readonly endsAt: number;
}

const MINUTE_MS = 60_000;

/**
 * What runs by itself, by when it ends: so long after its start as was planned, or until when it was said to take.
 * Ends and no ticks, so that a reload or a locked screen stops none.
 */
export function dayTimers<R extends OrderRow>(rows: readonly R[], fold: DayFold): DayTimer<R>[] {
  return rows
    .flatMap((row): DayTimer<R>[] => {
      const { entry } = row;
      const key = rowKey(rowRefOf(entry));
      const started = fold.startedAt.get(key);
      if (entry.hands || started === undefined || !isUnderWay(fold, key)) return [];
      const longer = fold.longerUntil.get(key);
      const usual = Date.parse(started) + (entry.endMin - entry.startMin) * MINUTE_MS;
      return [{ row, key, endsAt: longer === undefined ? usual : Date.parse(longer) }];
    })
    .sort((a, b) => a.endsAt - b.endsAt || (a.key < b.key ? -1 : 1));
}

/** The rows whose timers have not run out. */
export function stillRunning<R>(timers: readonly DayTimer<R>[], now: number): Set<string> {
  return new Set(timers.filter(({ endsAt }) => endsAt > now).map(({ key }) => key));
}

/**
 * What is left of a timer, rounded up to the second. `leftText(245_000)` → `'4:05'`; from an hour on `'1:04:05'`;
 * once it is out, since when: `leftText(-90_000)` → `'out since 1 min'`.
 */
export function leftText(leftMs: number): string {
  if (leftMs <= 0) return `out since ${Math.floor(-leftMs / MINUTE_MS)} min`;
  const seconds = Math.ceil(leftMs / 1000);
  const two = (value: number) => String(value).padStart(2, '0');
  const hours = Math.floor(seconds / 3600);
  const minutes = Math.floor(seconds / 60) % 60;
  const rest = two(seconds % 60);
  return hours > 0 ? `${hours}:${two(minutes)}:${rest}` : `${minutes}:${rest}`;
}
