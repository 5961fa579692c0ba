import { TZDate } from '@date-fns/tz';

/**
 * The instant of a clock minute of a local date: the wall clock of `zone` decides, so that 09:05 stays
 * 09:05 on a day when the clocks change. Minutes past 1440 fall on the next day.
 *
 * @example instantOf('2026-03-29', 545, 'Europe/Copenhagen') → 2026-03-29T07:05:00Z (summer time began)
 */
export function instantOf(date: string, minute: number, zone: string): Date {
  const [year = 1970, month = 1, day = 1] = date.split('-').map(Number);
  const local = new TZDate(year, month - 1, day, Math.floor(minute / 60), minute % 60, zone);
  return new Date(local.getTime());
}

/** Clock minutes of an instant after local midnight of `date`; rounded to the nearest minute. */
export function minuteOf(instant: Date, date: string, zone: string): number {
  const rounded = Math.round(instant.getTime() / 60_000) * 60_000;
  const local = new TZDate(rounded, zone);
  const [year = 1970, month = 1, day = 1] = date.split('-').map(Number);
  const days =
    (Date.UTC(local.getFullYear(), local.getMonth(), local.getDate()) -
      Date.UTC(year, month - 1, day)) /
    86_400_000;
  return days * 1440 + local.getHours() * 60 + local.getMinutes();
}

/** An instant by the clock of a zone, to the second. `localClock(new Date('2026-05-02T08:05:09Z'), 'UTC')` → `'08:05:09'` */
export function localClock(instant: Date, zone: string): string {
  const local = new TZDate(instant.getTime(), zone);
  return [local.getHours(), local.getMinutes(), local.getSeconds()]
    .map((part) => String(part).padStart(2, '0'))
    .join(':');
}

/**
 * The instant of a clock time to the second, so many seconds after local midnight of `date`: the wall clock of `zone`
 * decides. From 86,400 on it is the next day.
 */
export function instantOfSecond(date: string, second: number, zone: string): Date {
  const minute = Math.floor(second / 60);
  return new Date(instantOf(date, minute, zone).getTime() + (second - minute * 60) * 1000);
}

/**
 * An instant as a clock time of a filming day, to the second: in the night after it the hours count on, so that
 * `instantOfSecond` finds the same instant again.
 * @example dayClock(00:10:05 of the day after, date, zone) → '24:10:05'
 */
export function dayClock(instant: Date, date: string, zone: string): string {
  const midnight = instantOf(date, 1440, zone).getTime();
  const clock = localClock(instant, zone);
  if (instant.getTime() < midnight) return clock;
  return `${Number(clock.slice(0, 2)) + 24}${clock.slice(2)}`;
}
