import { onScale, waitingReading } from '#lib/episode/scale-so-far';
import type { Weighing } from '#lib/episode/recipe-schema';
import { readWeighing, type TypedWeighing } from '#lib/episode/typed-weighing';
import { failed, ok, type Result } from '#lib/result';
import { inDayOrder, type DayEvent } from '#lib/shoot/day-log';
import type { Display, OnScale, Weighed } from '#lib/shoot/scale-entries';

/**
 * The scale on a filming day. An entry carries the whole reading, so that what is on the scale is known on the device
 * that made it also without the program; the reading of its dish has an id that follows from the entry's own.
 */

/** A reading that was entered on the day. */
export interface DayWeighing {
  readonly recipeId: string;
  readonly weighing: Weighing;
}

/** A photo of a display whose number is still to be typed. */
export interface OpenDisplay extends Display {
  readonly id: string;
  readonly at: string;
}

export interface ScaleFold {
  readonly readings: readonly DayWeighing[];
  readonly displays: readonly OpenDisplay[];
  /** Readings and photos that do not count after all, also of those that were not made on the day. */
  readonly struckOut: ReadonlySet<string>;
  /** Readings of containers that a second reading has answered, also one that was struck out since. */
  readonly answered: ReadonlySet<string>;
}

/**
 * What was weighed on the day. A photo of a display is open until a number is typed for it or it is struck out; a
 * number that is struck out opens it again.
 *
 * Law: the same for every order and any repetition of its input.
 */
export function foldScale(events: readonly DayEvent[]): ScaleFold {
  const ordered = inDayOrder(events);
  const struckOut = new Set(
    ordered.flatMap((event) => (event.kind === 'struckOut' ? event.payload.weighingId : [])),
  );
  const answered = new Set(
    ordered.flatMap((event) => (event.kind === 'weighed' ? (event.payload.answersId ?? []) : [])),
  );
  const typed = new Set<string>();
  const readings = ordered.flatMap((event): DayWeighing[] => {
    if (event.kind !== 'weighed' || struckOut.has(readingId(event.id))) return [];
    const { recipeId, photoId } = event.payload;
    if (photoId !== null) typed.add(photoId);
    return [{ recipeId, weighing: weighingOf(event.id, event.at, event.payload) }];
  });
  const displays = ordered.flatMap((event): OpenDisplay[] => {
    const open = event.kind === 'display' && !typed.has(event.id) && !struckOut.has(event.id);
    return open ? [{ ...event.payload, id: event.id, at: event.at }] : [];
  });
  return { readings, displays, struckOut, answered };
}

/** The id of the reading that an entry becomes: always the same, so that it becomes one, once. */
export function readingId(eventId: string): string {
  return `w-${eventId}`;
}

/** The reading that an entry becomes in its dish. */
export function weighingOf(eventId: string, at: string, weighed: Weighed): Weighing {
  const id = readingId(eventId);
  const { of, grossMg, tareMg, method, scaleId, afterId, lineId, readAt } = weighed;
  const shares = lineId === null ? [] : [{ lineId, share: { num: 1, den: 1 } }];
  return { id, kind: of, grossMg, tareMg, afterId, scaleId, method, at: readAt ?? at, shares };
}

/**
 * The readings of a dish, with those of the day that it does not hold yet.
 * @param counted ids of the readings that `weighings` takes account of: one of them that is not there was taken out
 * @example weighingsNow({ id, weighings: [] }, foldScale([oats weighed]), new Set()) // the oats' reading
 */
export function weighingsNow(
  { id, weighings }: { readonly id: string; readonly weighings: readonly Weighing[] },
  { readings, struckOut, answered }: Omit<ScaleFold, 'displays'>,
  counted: ReadonlySet<string>,
): Weighing[] {
  const there = new Set(weighings.map((one) => one.id));
  const fresh = readings.filter(
    ({ recipeId, weighing }) =>
      recipeId === id && !counted.has(weighing.id) && !there.has(weighing.id),
  );
  return [...weighings, ...fresh.map(({ weighing }) => weighing)].filter(
    (one) => !answered.has(one.id) && !struckOut.has(one.id),
  );
}

/** What the next reading is held against. */
export type Before =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'reading'; readonly weighing: Weighing }
  /** A photo whose number nobody knows yet. */
  | { readonly kind: 'photo'; readonly display: OpenDisplay };

/** What stands on the scale of a dish in a running total, or what waits for its second reading. */
export function beforeIt(
  on: OnScale,
  weighings: readonly Weighing[],
  displays: readonly OpenDisplay[],
): Before {
  if (on.way === 'direct') return { kind: 'nothing' };
  const own = displays.filter(({ recipeId }) => recipeId === on.recipeId);
  if (on.way === 'total') {
    const stands = onScale({ weighings: [...weighings] });
    const photo = own.filter(({ of, way }) => of === 'raw' && way !== 'difference').at(-1);
    if (photo && (stands === null || Date.parse(photo.at) > Date.parse(stands.at)))
      return { kind: 'photo', display: photo };
    return stands ? { kind: 'reading', weighing: stands } : { kind: 'nothing' };
  }
  const waits = waitingReading({ weighings: [...weighings] }, on.lineId);
  const photo = own
    .filter(({ way, lineId }) => way === 'difference' && lineId === on.lineId)
    .at(-1);
  if (photo) return { kind: 'photo', display: photo };
  return waits ? { kind: 'reading', weighing: waits } : { kind: 'nothing' };
}

/** What is being typed, as `readWeighing` and `weighingWords` take it. */
export function typedOf(on: OnScale, nowMg: number, before: Before): TypedWeighing {
  const beforeMg = before.kind === 'reading' ? before.weighing.grossMg : null;
  return { of: on.of, way: on.way, nowMg, containerMg: on.containerMg, otherMg: null, beforeMg };
}

const UNTYPED = 'Type the number of the photo before this one first: this one is held against it.';

/**
 * The entry of a number that the scale shows.
 * @returns a problem where nothing was weighed by it, or where what it is held against waits for its own number
 */
export function weighedEntry(
  on: OnScale,
  nowMg: number,
  before: Before,
  photo: { readonly id: string; readonly at: string } | null = null,
): Result<Weighed> {
  if (before.kind === 'photo') {
    return failed({ path: 'gross', code: 'untyped-photo', message: UNTYPED });
  }
  const read = readWeighing(typedOf(on, nowMg, before));
  if (!read.ok) return read;
  const { waits, grossMg, tareMg, method } = read.value;
  const held = before.kind === 'reading' ? before.weighing : null;
  return ok({
    recipeId: on.recipeId,
    lineId: on.lineId,
    of: waits ? 'container' : on.of,
    grossMg,
    tareMg,
    method,
    // What belongs together was read on one scale.
    scaleId: held?.scaleId ?? on.scaleId,
    afterId: on.way === 'total' ? (held?.id ?? null) : null,
    answersId: on.way === 'difference' ? (held?.id ?? null) : null,
    photoId: photo?.id ?? null,
    readAt: photo?.at ?? null,
  });
}

/** What a photographed display is held against: what it was when it was taken, if that is still there. */
export function beforeDisplay(display: OpenDisplay, weighings: readonly Weighing[]): Before {
  const { beforeId } = display;
  if (beforeId === null) return { kind: 'nothing' };
  const weighing = weighings.find(({ id }) => id === beforeId);
  return weighing ? { kind: 'reading', weighing } : { kind: 'nothing' };
}
