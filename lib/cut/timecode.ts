import { failed, ok, type Result } from '#lib/result';

/**
 * How frames are counted: so many a second, exactly `num / den`, and how they are numbered. `nominal` frames are
 * numbered in each second; with `drop`, so many numbers are left out at the beginning of each minute but every
 * tenth, so that the numbers keep with the clock (SMPTE ST 12-1). No frame is left out, only numbers.
 */
export interface FrameRate {
  readonly id: FrameRateId;
  /** As it is said: '29.97 drop frame'. */
  readonly words: string;
  readonly num: number;
  readonly den: number;
  readonly nominal: number;
  /** Numbers left out; 0 where none are. */
  readonly drop: number;
}

export const FRAME_RATE_IDS = [
  '23.976',
  '24',
  '25',
  '29.97df',
  '29.97',
  '30',
  '50',
  '59.94df',
  '59.94',
  '60',
] as const;
export type FrameRateId = (typeof FRAME_RATE_IDS)[number];

/** Name, exact rate, numbers in a second, numbers left out; the slow ones run at 1000/1001 of the whole rate. */
const RATES: Readonly<Record<FrameRateId, readonly [string, number, number, number, number]>> = {
  '23.976': ['23.976', 24_000, 1001, 24, 0],
  '24': ['24', 24, 1, 24, 0],
  '25': ['25', 25, 1, 25, 0],
  '29.97df': ['29.97 drop frame', 30_000, 1001, 30, 2],
  '29.97': ['29.97 non-drop', 30_000, 1001, 30, 0],
  '30': ['30', 30, 1, 30, 0],
  '50': ['50', 50, 1, 50, 0],
  '59.94df': ['59.94 drop frame', 60_000, 1001, 60, 4],
  '59.94': ['59.94 non-drop', 60_000, 1001, 60, 0],
  '60': ['60', 60, 1, 60, 0],
};

/** The rate of a name. `frameRate('29.97df').num` → 30000 */
export function frameRate(id: FrameRateId): FrameRate {
  const [words, num, den, nominal, drop] = RATES[id];
  return { id, words, num, den, nominal, drop };
}

/**
 * The rate of so many frames a second, exactly; null where it is none of ours. A bare rate does not say whether
 * numbers are left out.
 * @example rateOf({ num: 30000, den: 1001 })?.id // '29.97'
 */
export function rateOf(
  rate: { readonly num: number; readonly den: number },
  dropFrame = false,
): FrameRate | null {
  const all = FRAME_RATE_IDS.map(frameRate);
  const fits = ({ num, den, drop }: FrameRate) =>
    num * rate.den === rate.num * den && drop > 0 === dropFrame;
  return all.find(fits) ?? null;
}

/**
 * The rate of an episode with its numbering; drop frame says nothing where no numbers are left out. Null where timecode
 * is written at no such rate.
 * @example episodeRate({ rate: { num: 25, den: 1 }, dropFrame: true })?.id // '25'
 */
export function episodeRate({
  rate,
  dropFrame,
}: {
  readonly rate: { readonly num: number; readonly den: number };
  readonly dropFrame: boolean;
}): FrameRate | null {
  return rateOf(rate, dropFrame) ?? rateOf(rate);
}

const MINUTES_IN_DAY = 24 * 60;

/** Frames until the numbers begin again at 00:00:00:00. 29.97 drop frame → 2,589,408 */
export function framesInDay({ nominal, drop }: FrameRate): number {
  return nominal * 60 * MINUTES_IN_DAY - drop * (MINUTES_IN_DAY - MINUTES_IN_DAY / 10);
}

/**
 * The number of a frame, counted from 0 at 00:00:00:00; a semicolon before the frames says that numbers are left out.
 * After a day, and before 0, the numbers come round.
 *
 * Law: `readTimecode(printTimecode(f, rate), rate)` is f, for every f of the day.
 *
 * @example printTimecode(1800, frameRate('29.97df')) // '00:01:00;02'
 */
export function printTimecode(frame: number, rate: FrameRate): string {
  if (!Number.isSafeInteger(frame)) throw new Error(`${frame} is no whole number of frames`);
  const { nominal, drop } = rate;
  const day = framesInDay(rate);
  const number = withDropped(((frame % day) + day) % day, rate);
  const second = Math.floor(number / nominal);
  const parts = [Math.floor(second / 3600), Math.floor(second / 60) % 60, second % 60];
  return `${parts.map(pad).join(':')}${drop > 0 ? ';' : ':'}${pad(number % nominal)}`;
}

/** A frame's place among all numbers, those left out counted as well. */
function withDropped(frame: number, { nominal, drop }: FrameRate): number {
  if (drop === 0) return frame;
  const perMinute = nominal * 60 - drop;
  const perTen = perMinute * 10 + drop;
  const inTen = frame % perTen;
  // The first minute of ten has all its numbers.
  const minutes = inTen < nominal * 60 ? 0 : 1 + Math.floor((inTen - nominal * 60) / perMinute);
  return frame + drop * (9 * Math.floor(frame / perTen) + minutes);
}

const FORM = /^(\d{1,2}):(\d{1,2}):(\d{1,2})([:;.,])(\d{1,2})$/;

/**
 * The frame that a timecode numbers. Hours, minutes, seconds and frames, as '10:02:33:14'; a semicolon, full stop
 * or comma before the frames says drop frame, and is refused of a rate that leaves out no numbers. A colon is taken
 * of any rate, since many displays have no other.
 *
 * @returns the frame, or `form`, `range` or `dropped` (a number that this rate leaves out) in words
 * @example readTimecode('00:01:00;02', frameRate('29.97df')) // ok(1800)
 */
export function readTimecode(text: string, rate: FrameRate): Result<number> {
  const read = FORM.exec(text.trim());
  if (!read) return refused('form', 'Write hours, minutes, seconds and frames, as 10:02:33:14.');
  const [, hours, minutes, seconds, mark, frames] = read;
  const [hour, minute, second, frame] = [hours, minutes, seconds, frames].map(Number) as [
    number,
    number,
    number,
    number,
  ];
  const { nominal, drop, words } = rate;
  if (mark !== ':' && drop === 0) {
    const said = `A “${mark}” before the frames says drop frame, and ${words} leaves out no numbers: choose the drop frame rate, or write a colon.`;
    return refused('form', said);
  }
  if (hour > 23) return refused('range', `Hours go up to 23, not ${hour}.`);
  if (minute > 59) return refused('range', `Minutes go up to 59, not ${minute}.`);
  if (second > 59) return refused('range', `Seconds go up to 59, not ${second}.`);
  if (frame >= nominal) {
    return refused('range', `At ${words} frames go up to ${nominal - 1}, not ${frame}.`);
  }
  if (second === 0 && frame < drop && minute % 10 !== 0) {
    const next = `${pad(hour)}:${pad(minute)}:00;${pad(drop)}`;
    return refused('dropped', `At ${words} this number is left out: the minute begins at ${next}.`);
  }
  const inAll = hour * 60 + minute;
  const number = (inAll * 60 + second) * nominal + frame;
  return ok(number - drop * (inAll - Math.floor(inAll / 10)));
}

/** Frames that begin within so many milliseconds, to the nearest. `framesIn(1001, frameRate('29.97'))` → 30 */
export function framesIn(
  milliseconds: number,
  { num, den }: Pick<FrameRate, 'num' | 'den'>,
): number {
  return Math.round((milliseconds * num) / (1000 * den));
}

/** When a frame begins, in seconds after frame 0, as an exact fraction. At 25, frame 50 → 50/25 */
export function secondsOf(
  frame: number,
  { num, den }: FrameRate,
): { readonly num: number; readonly den: number } {
  return { num: frame * den, den: num };
}

/** Seconds from a frame to another; null where either is unknown or the second is no later. */
export function secondsBetween(
  from: number | null | undefined,
  to: number | null | undefined,
  { num, den }: Pick<FrameRate, 'num' | 'den'>,
): number | null {
  if (from == null || to == null || to <= from) return null;
  return ((to - from) * den) / num;
}

/** The first frame that begins at a second or after it: its second, rounded down, is that one again. */
export function firstFrameAt(second: number, { num, den }: Pick<FrameRate, 'num' | 'den'>): number {
  return Math.ceil((second * num) / den);
}

/** A number of frames in words, by the seconds of the timecode: 80 at 25 → '3 s and 5 frames'; 12 → '12 frames'. */
export function frameLength(frames: number, { nominal }: FrameRate): string {
  const seconds = Math.floor(frames / nominal);
  const rest = frames % nominal;
  const counted = rest === 1 ? '1 frame' : `${rest} frames`;
  if (seconds === 0) return counted;
  return rest === 0 ? `${seconds} s` : `${seconds} s and ${counted}`;
}

/**
 * The frame at another rate that begins nearest to when this one does. 50 at 25 → 60 at 30
 * Law: at a rate that is as fast or faster, and back again, it is the same frame.
 */
export function frameAtRate(
  frame: number,
  from: Pick<FrameRate, 'num' | 'den'>,
  to: Pick<FrameRate, 'num' | 'den'>,
): number {
  return Math.round((frame * from.den * to.num) / (from.num * to.den));
}

const pad = (value: number): string => String(value).padStart(2, '0');

function refused(code: 'form' | 'range' | 'dropped', message: string): Result<number> {
  return failed({ path: '', code, message });
}
