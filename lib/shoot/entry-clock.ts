import { clockText } from '#lib/shoot/day-words';
import { minuteOf } from '#lib/shoot/local-time';
import { printDay } from '#lib/units/print-date';

const DAY_MIN = 1440;

/**
 * When an entry was made, by the clock of the kitchen: on the filming day and in the night after it as a
 * clock time, on any other day with its date.
 *
 * @example entryClock('2026-05-02T08:05:00.000Z', '2026-05-02', 'UTC') → "08:05"
 * @example entryClock('2026-05-09T08:05:00.000Z', '2026-05-02', 'UTC') → "Sat 9 May, 08:05"
 */
export function entryClock(at: string, date: string, zone: string): string {
  const minute = minuteOf(new Date(at), date, zone);
  const days = Math.floor(minute / DAY_MIN);
  if (days === 0 || days === 1) return clockText(minute);
  const other = new Date(Date.parse(`${date}T00:00:00Z`) + days * 86_400_000);
  return `${printDay(other.toISOString().slice(0, 10))}, ${clockText(minute - days * DAY_MIN)}`;
}
