import { failed, ok, type Result } from '#lib/result';
import {
  inTimelineOrder,
  type EditList,
  type EditPiece,
  type EditRemark,
} from '#lib/cut/edit-list';
import { linesOf } from '#lib/cut/text-lines';
import { frameRate, FRAME_RATE_IDS, readTimecode, type FrameRate } from '#lib/cut/timecode';

const EVENT =
  /^\s*(\d{1,6})\s+(\S+)\s+(\S+)\s+(C|D|W\d{1,3}|K[BO]?)\s+(?:(\d{1,4})\s+)?(\S+)\s+(\S+)\s+(\S+)\s+(\S+)\s*$/i;
const CLIP = /^\s*\*\s*(?:FROM|TO)\s+CLIP\s+NAME\s*:\s*(.*?)\s*$/i;
const SPEED = /^\s*M2\s+(\S+)\s+(-?\d+(?:\.\d+)?)\s+\S+/i;
const TRANSITIONS = { C: 'cut', D: 'dissolve', W: 'wipe', K: 'key' } as const;

interface Event {
  readonly line: number;
  readonly reel: string;
  readonly kind: EditPiece['transition'];
  readonly frames: readonly [number, number, number, number];
  clip: string;
  speed: number | null;
}

/**
 * The picture events of an edit decision list in the form CMX 3600 (from memory: see `takesEdl`), for its cut points
 * and clip names. The timeline begins at the first record in-point. Events of sound alone are passed over; those that
 * cannot be read are named by their line. `FCM:` decides whether numbers are left out where the rate can do both, else
 * the semicolon before the frames.
 *
 * @param rate frames a second of the edit; the list itself does not say
 * @returns `empty` where no event of picture can be read
 * @example readEdl(text, frameRate('25')).value.pieces[0]?.name // 'barley toast, take 3'
 */
export function readEdl(text: string, rate: FrameRate): Result<EditList> {
  const events: Event[] = [];
  const remarks: EditRemark[] = [];
  let title = '';
  let counted: FrameRate | null = null;
  for (const [index, line] of linesOf(text).entries()) {
    const at = index + 1;
    const last = events.at(-1);
    const [, titled] = /^\s*TITLE:\s*(.*?)\s*$/i.exec(line) ?? [];
    const [, non] = /^\s*FCM:\s*(NON[- ])?DROP/i.exec(line) ?? [];
    const [, clip] = CLIP.exec(line) ?? [];
    const [, reel, perSecond] = SPEED.exec(line) ?? [];
    if (titled !== undefined) title = titled;
    else if (/^\s*FCM:/i.test(line)) counted = twin(rate, non === undefined);
    else if (clip !== undefined && last) last.clip = clip;
    else if (perSecond !== undefined) {
      if (last !== undefined && last.reel === reel) last.speed = Number(perSecond) / rate.nominal;
      else remarks.push(unknownReel(at, reel ?? ''));
    } else if (/^\s*\d/.test(line)) {
      // Where nothing says how frames are numbered, a semicolon does.
      const numbered = counted ?? (line.includes(';') ? twin(rate, true) : rate);
      const read = readEvent(line, at, numbered);
      if ('code' in read) remarks.push(read);
      else if (/V|B/i.test(read.channel)) events.push(read.event);
    }
  }
  const start = events.reduce((least, { frames }) => Math.min(least, frames[2]), Infinity);
  const pieces: EditPiece[] = [];
  for (const event of events) {
    const [sourceFrom, sourceTo, from, to] = event.frames;
    const name = event.clip === '' ? event.reel : event.clip;
    const of = { at: event.line, skipped: false };
    // A dissolve lists what it comes from first, with no length of its own.
    if (to <= from) {
      if (to < from)
        remarks.push({
          ...of,
          code: 'length',
          message: `“${name}” ends before it begins: left out.`,
          skipped: true,
        });
      continue;
    }
    const speed = event.speed ?? 1;
    if (event.speed !== null && event.speed !== 1) {
      remarks.push({
        ...of,
        code: 'speed',
        message: `“${name}” runs at ${Number(speed.toFixed(3))} times its speed.`,
      });
    } else if (sourceTo - sourceFrom !== to - from) {
      remarks.push({
        ...of,
        code: 'length',
        message: `“${name}” takes ${sourceTo - sourceFrom} frames and lasts ${to - from}.`,
      });
    }
    const place = { fromFrame: from - start, toFrame: to - start };
    pieces.push({ name, ...place, sourceFrom, speed, transition: event.kind, at: event.line });
  }
  if (pieces.length === 0) {
    const message =
      'No event of picture could be read: give an edit decision list in the form CMX 3600.';
    return failed({ path: 'edl', code: 'empty', message });
  }
  return ok(inTimelineOrder(title, pieces, remarks));
}

function readEvent(
  line: string,
  at: number,
  rate: FrameRate,
): { readonly event: Event; readonly channel: string } | EditRemark {
  const read = EVENT.exec(line);
  if (!read) {
    const message = `“${line.trim()}” is no event: left out.`;
    return { at, code: 'event', message, skipped: true };
  }
  const [, , reel = '', channel = '', transition = 'C', , ...codes] = read;
  const frames = codes.map((code) => readTimecode(code, rate));
  const wrong = frames.find((frame) => !frame.ok);
  if (wrong && !wrong.ok) {
    const message = `${wrong.problems[0]?.message ?? ''} The event is left out.`;
    return { at, code: 'timecode', message, skipped: true };
  }
  const [a = 0, b = 0, c = 0, d = 0] = frames.map((frame) => (frame.ok ? frame.value : 0));
  const kind = TRANSITIONS[transition.charAt(0).toUpperCase() as keyof typeof TRANSITIONS];
  return { channel, event: { line: at, reel, kind, frames: [a, b, c, d], clip: '', speed: null } };
}

const unknownReel = (at: number, reel: string): EditRemark => ({
  at,
  code: 'reel',
  message: `A speed for the reel “${reel}”, which is not the event above: left out.`,
  skipped: true,
});

/** The same rate with or without numbers left out, where there is one. */
function twin(rate: FrameRate, drop: boolean): FrameRate {
  const all = FRAME_RATE_IDS.map(frameRate);
  const same = ({ num, den }: FrameRate) => num === rate.num && den === rate.den;
  return all.find((one) => same(one) && one.drop > 0 === drop) ?? rate;
}
