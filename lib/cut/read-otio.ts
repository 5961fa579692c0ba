import { z } from 'zod';
import { failed, ok, type Result } from '#lib/result';
import {
  inTimelineOrder,
  type EditList,
  type EditPiece,
  type EditRemark,
} from '#lib/cut/edit-list';
import type { FrameRate } from '#lib/cut/timecode';

const time = z.object({ value: z.number(), rate: z.number().positive() });
const range = z.object({ start_time: time, duration: time });
const item = z.object({
  OTIO_SCHEMA: z.string(),
  name: z.string().nullish(),
  source_range: range.nullish(),
  kind: z.string().nullish(),
  media_reference: z.object({ available_range: range.nullish() }).nullish(),
  media_references: z.record(z.string(), z.object({ available_range: range.nullish() })).nullish(),
  active_media_reference_key: z.string().nullish(),
  effects: z.array(z.object({ time_scalar: z.number().nullish() })).nullish(),
  children: z.array(z.unknown()).nullish(),
});
type Item = z.infer<typeof item>;
const timeline = z.object({
  OTIO_SCHEMA: z.string().regex(/^Timeline\./),
  name: z.string().nullish(),
  tracks: item,
});

/** Nested deeper than any edit by hand. */
const DEEPEST = 40;

/**
 * The first picture track of an OpenTimelineIO timeline (JSON, from memory of its schemas: `Timeline.1`, `Stack.1`,
 * `Track.1`, `Clip.1` and `Clip.2`, `Gap.1`, `Transition.1`, `LinearTimeWarp.1`), for its cut points and clip names.
 * Times at other rates are brought to the edit's, to the nearest frame. Transitions take no time of the track.
 * @returns `json`, `form` or `empty` in words
 */
export function readOtio(text: string, rate: FrameRate): Result<EditList> {
  const json = parseJson(text);
  if (!json.ok) return json;
  const read = timeline.safeParse(json.value);
  if (!read.success) {
    const [issue] = read.error.issues;
    const where = issue?.path.join('.') ?? '';
    const message = `This is no OpenTimelineIO timeline: ${where === '' ? 'the whole' : where} is not as its schema has it.`;
    return failed({ path: where, code: 'form', message });
  }
  const tracks = childrenOf(read.data.tracks);
  const isPicture = (one: Item) => is(one, 'Track') && (one.kind ?? 'Video') === 'Video';
  const pictures = tracks.filter(isPicture);
  const [track] = pictures;
  const remarks: EditRemark[] = [];
  if (pictures.length > 1) {
    const message = `Only the first of ${pictures.length} picture tracks is read.`;
    remarks.push({ at: 1, code: 'track', message, skipped: true });
  }
  const pieces: EditPiece[] = [];
  // Not rounded until it is a place: a hundred roundings would be frames.
  let from = 0;
  for (const [index, raw] of (track?.children ?? []).entries()) {
    const at = index + 1;
    const one = item.safeParse(raw);
    if (!one.success) {
      const message = `Number ${at} of the track is not as its schema has it: left out, and what follows moves up.`;
      remarks.push({ at, code: 'event', message, skipped: true });
      continue;
    }
    const child = one.data;
    if (is(child, 'Transition')) continue;
    const length = lengthOf(child, rate, 0);
    if (length === null) {
      const message = `“${nameOf(child)}” says no length: left out, and what follows moves up.`;
      remarks.push({ at, code: 'length', message, skipped: true });
      continue;
    }
    const counted = child.source_range?.duration.rate;
    if (
      counted !== undefined &&
      !isRate(counted, rate) &&
      !remarks.some(({ code }) => code === 'rate')
    ) {
      const message = `From “${nameOf(child)}” on, times are counted at ${perSecond(counted)} a second: they are brought to ${rate.words}.`;
      remarks.push({ at, code: 'rate', message, skipped: false });
    }
    const [speed] = (child.effects ?? []).flatMap(({ time_scalar }) => time_scalar ?? []);
    const [fromFrame, toFrame] = [from, from + length].map(Math.round) as [number, number];
    if (is(child, 'Gap') && pieces.length === 0 && toFrame > 0) {
      const message = `${toFrame} frames before the first clip are empty.`;
      remarks.push({ at, code: 'gap', message, skipped: false });
    }
    if (!is(child, 'Gap') && toFrame > fromFrame) {
      const name = nameOf(child);
      if (speed !== undefined && speed !== 1) {
        remarks.push({
          at,
          code: 'speed',
          message: `“${name}” runs at ${speed} times its speed.`,
          skipped: false,
        });
      }
      const start = child.source_range?.start_time;
      const sourceFrom = start ? Math.round(framesOf(start, rate)) : null;
      const place = { fromFrame, toFrame, sourceFrom };
      pieces.push({ name, ...place, speed: speed ?? 1, transition: 'cut', at });
    }
    from += length;
  }
  if (pieces.length === 0) {
    const message = 'There is no clip on a picture track in it.';
    return failed({ path: 'tracks', code: 'empty', message });
  }
  return ok(inTimelineOrder(read.data.name ?? '', pieces, remarks));
}

function parseJson(text: string): Result<unknown> {
  try {
    return ok(JSON.parse(text) as unknown);
  } catch (error) {
    const why = error instanceof Error ? error.message : '';
    return failed({ path: '', code: 'json', message: `This is not JSON to its end: ${why}.` });
  }
}

const is = ({ OTIO_SCHEMA }: Item, kind: string): boolean => OTIO_SCHEMA.startsWith(`${kind}.`);
const nameOf = ({ name, OTIO_SCHEMA }: Item): string => name ?? OTIO_SCHEMA;

/** What can be read of an item's children; what is no item is passed over. */
function childrenOf({ children }: Item): Item[] {
  return (children ?? []).flatMap((child) => {
    const read = item.safeParse(child);
    return read.success ? [read.data] : [];
  });
}

/** A time in frames of the edit, with what is left of a frame. */
const framesOf = ({ value, rate: own }: z.infer<typeof time>, { num, den }: FrameRate): number =>
  (value * num) / (own * den);

/** Rates that slow ones are written as (23.98, 29.97) lie within this share of the exact one. */
const SAME_RATE = 5e-4;
const isRate = (counted: number, { num, den }: FrameRate): boolean =>
  Math.abs((counted * den) / num - 1) < SAME_RATE;
const perSecond = (rate: number): string => String(Number(rate.toFixed(3)));

/** How long an item stands on its track: its own range, its media's, or of a group what stands in it. */
function lengthOf(one: Item, rate: FrameRate, depth: number): number | null {
  const key = one.active_media_reference_key ?? 'DEFAULT_MEDIA';
  const media = one.media_reference ?? one.media_references?.[key];
  const own = one.source_range ?? media?.available_range;
  if (own) return framesOf(own.duration, rate);
  if (depth > DEEPEST) return null;
  const inner = childrenOf(one).filter((child) => !is(child, 'Transition'));
  if (inner.length === 0) return null;
  const lengths = inner.map((child) => lengthOf(child, rate, depth + 1));
  if (lengths.some((length) => length === null)) return null;
  const known = lengths.map((length) => length ?? 0);
  return is(one, 'Stack') ? Math.max(...known) : known.reduce((sum, length) => sum + length, 0);
}
