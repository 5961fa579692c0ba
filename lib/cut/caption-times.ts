/** How a caption format writes a time: the mark before the milliseconds, and whether hours are always there. */
export interface TimeForm {
  readonly mark: '.' | ',';
  readonly hours: 'where needed' | 'always';
}

/** W3C WebVTT, 3.3: hours of two digits or more, left out below one; a full stop; three decimals. */
export const WEBVTT_TIME: TimeForm = { mark: '.', hours: 'where needed' };
/** SubRip has no standard: two digits of hours always, and a comma (from memory). */
export const SUBRIP_TIME: TimeForm = { mark: ',', hours: 'always' };

/**
 * A time of a caption, in whole milliseconds from the beginning.
 * @example printCaptionTime(3_723_500, WEBVTT_TIME) // '01:02:03.500'
 */
export function printCaptionTime(ms: number, { mark, hours }: TimeForm): string {
  if (!Number.isSafeInteger(ms) || ms < 0)
    throw new Error(`${ms} is no whole number of milliseconds`);
  const hour = Math.floor(ms / 3_600_000);
  const parts = [Math.floor(ms / 60_000) % 60, Math.floor(ms / 1000) % 60];
  if (hour > 0 || hours === 'always') parts.unshift(hour);
  const clock = parts.map((part) => String(part).padStart(2, '0')).join(':');
  return `${clock}${mark}${String(ms % 1000).padStart(3, '0')}`;
}

const STRICT = /^(?:(\d{2,}):)?([0-5]\d):([0-5]\d)\.(\d{3})$/;

/**
 * A time exactly as the WebVTT standard lets it be written (3.3 "WebVTT timestamp"), in milliseconds, else null.
 * @example readWebVttTime('00:60.000') // null: seconds go up to 59
 */
export function readWebVttTime(text: string): number | null {
  const read = STRICT.exec(text);
  return read ? milliseconds(read[1], read[2], read[3], read[4]) : null;
}

const LENIENT = /^(?:(\d+):)?(\d{1,2}):(\d{1,2})(?:[.,](\d{1,3}))?$/;

/**
 * A time as files have it that keep to no standard: hours of one digit or none, a comma or a full stop, one to
 * three decimals or none. Null for anything else, minutes and seconds above 59 and times below zero among it.
 * @example readCaptionTime('1:02:03,5') // 3_723_500
 */
export function readCaptionTime(text: string): number | null {
  const read = LENIENT.exec(text);
  if (!read) return null;
  const [, hours, minutes, seconds, decimals] = read;
  if (Number(minutes) > 59 || Number(seconds) > 59) return null;
  return milliseconds(hours, minutes, seconds, (decimals ?? '').padEnd(3, '0'));
}

function milliseconds(
  hours: string | undefined,
  minutes: string | undefined,
  seconds: string | undefined,
  thousandths: string | undefined,
): number | null {
  const ms =
    ((Number(hours ?? 0) * 60 + Number(minutes)) * 60 + Number(seconds)) * 1000 +
    Number(thousandths);
  return Number.isSafeInteger(ms) ? ms : null;
}

/** The two times of a line with an arrow, and what stands behind them. */
export interface ReadTiming {
  readonly startMs: number;
  readonly endMs: number;
  readonly settings: string;
}

const TIMING = /^\s*(\S+?)\s*-->\s*([-\d:.,]+)\s*(.*?)\s*$/;

/**
 * A line `start --> end settings`; null where either is no time.
 * @example readTiming('00:01.000 --> 00:02.500 line:0') // { startMs: 1000, endMs: 2500, settings: 'line:0' }
 */
export function readTiming(
  line: string,
  read: (text: string) => number | null = readCaptionTime,
): ReadTiming | null {
  const [, from, to, settings = ''] = TIMING.exec(line) ?? [];
  if (from === undefined || to === undefined) return null;
  const startMs = read(from);
  const endMs = read(to);
  return startMs === null || endMs === null ? null : { startMs, endMs, settings };
}
