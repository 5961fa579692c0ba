import { inDayOrder, type DayEvent } from '#lib/shoot/day-log';

/**
 * A picture in which the phone's clock is seen: the instant that it shows, and the number of that frame in the
 * camera's count, at so many frames a second (`num / den`, exactly), with or without numbers left out.
 */
export interface CameraClock {
  /** As `toISOString` writes it. */
  readonly clockAt: string;
  /** Counted from 0 at 00:00:00:00. */
  readonly frame: number;
  readonly rate: { readonly num: number; readonly den: number; readonly dropFrame: boolean };
}

/**
 * The camera's clock of a day: what was entered last, so that a mistake is put right by entering it again. Null where
 * nothing was.
 */
export function cameraClockOf(events: readonly DayEvent[]): CameraClock | null {
  const last = inDayOrder(events).findLast((event) => event.kind === 'cameraClock');
  return last?.payload ?? null;
}

/**
 * Seconds after midnight of a clock as a phone shows it; from 24:00:00 it is the next day.
 * @example readClockSecond('14:03:27') // 50607
 */
export function readClockSecond(text: string): number | null {
  const read = /^(\d{1,2})[:.]([0-5]\d)[:.]([0-5]\d)$/.exec(text.trim());
  if (!read) return null;
  const [hours = 0, minutes = 0, seconds = 0] = read.slice(1).map(Number);
  return hours < 48 ? (hours * 60 + minutes) * 60 + seconds : null;
}
