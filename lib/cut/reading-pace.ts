import { secondsToSay, USUAL_WORDS_PER_MINUTE } from '#lib/cut/speaking-rate';
import { printRuntime } from '#lib/units/print';

/** Something on the way of a reading to the camera: a sentence of so many spoken words, or a shot, at which it stops. */
export type ReadingItem =
  { readonly kind: 'point'; readonly words: number } | { readonly kind: 'stop' };

/** When each item begins if it is read without a pause, and how long all of it takes. */
export interface ReadingPace {
  readonly beginsMs: readonly number[];
  readonly lengthsMs: readonly number[];
  readonly totalMs: number;
}

/** Where the reading is: the item, the share of it that is read, and whether it goes on by itself. */
export interface ReadingPlace {
  readonly item: number;
  /** From 0 to 1. */
  readonly share: number;
  readonly going: boolean;
}

/** What moves the reading: by keys, a pedal, a tap or another device. */
export const READING_MOVES = ['go', 'stop', 'toggle', 'next', 'before', 'first', 'last'] as const;
export type ReadingMove = (typeof READING_MOVES)[number];

export const READING_START: ReadingPlace = { item: 0, share: 0, going: false };

/** Words a minute that can be chosen, and the step between two of them. */
export const READING_RATE = { min: 60, max: 300, step: 10 } as const;

/** Sizes of the letters, in rem: from a phone at hand to a screen behind the camera (common practice, no source). */
export const READING_SIZES = [1.5, 2, 2.5, 3.25, 4.25, 5.5] as const;

/**
 * The pace of a reading at so many words a minute. A stop takes no time of its own: nobody knows how long a shot waits.
 * @example readingPace([{ kind: 'point', words: 300 }], 150).totalMs // 120000
 */
export function readingPace(items: readonly ReadingItem[], perMinute: number): ReadingPace {
  const lengthsMs = items.map((item) =>
    item.kind === 'stop' ? 0 : Math.round(secondsToSay(item.words, perMinute) * 1000),
  );
  let totalMs = 0;
  const beginsMs = lengthsMs.map((length) => {
    const begins = totalMs;
    totalMs += length;
    return begins;
  });
  return { beginsMs, lengthsMs, totalMs };
}

/**
 * The place after so much time. A stop that is come to ends the going; so does the end. Law: going on in pieces comes to
 * the same place as in one.
 */
export function goneOn(
  place: ReadingPlace,
  items: readonly ReadingItem[],
  { lengthsMs }: ReadingPace,
  ms: number,
): ReadingPlace {
  if (!place.going) return place;
  let { item, share } = place;
  let left = ms;
  while (item < items.length) {
    const length = lengthsMs[item] ?? 0;
    const rest = length * (1 - share);
    if (left < rest) return { item, share: share + left / length, going: true };
    left -= rest;
    if (item === items.length - 1) return { item, share: 1, going: false };
    item += 1;
    share = 0;
    if (items[item]?.kind === 'stop') return { item, share, going: false };
  }
  return { ...READING_START };
}

/** The place after a move. `next` at a shot goes on from it, as a pedal does; past the ends nothing moves. */
export function moved(
  place: ReadingPlace,
  items: readonly ReadingItem[],
  move: ReadingMove,
): ReadingPlace {
  const { item, share, going } = place;
  const last = Math.max(0, items.length - 1);
  const at = (to: number, goes: boolean): ReadingPlace => {
    const place = Math.min(last, Math.max(0, to));
    return { item: place, share: 0, going: goes && items[place]?.kind === 'point' };
  };
  const isStop = items[item]?.kind === 'stop';
  const isOver = item === last && (share === 1 || isStop);
  switch (move) {
    case 'first':
      return at(0, false);
    case 'last':
      return at(last, false);
    case 'before':
      // A sentence that has begun is begun again first.
      return at(share > AGAIN_FROM ? item : item - 1, going);
    case 'next':
      return isOver ? { ...place, going: false } : at(item + 1, going || isStop);
    case 'stop':
      return { ...place, going: false };
    case 'go':
      if (isOver) return { ...place, going: false };
      return isStop ? at(item + 1, true) : { ...place, going: items.length > 0 };
    case 'toggle':
      return moved(place, items, going ? 'stop' : 'go');
  }
}

/** So much of a sentence may be read before "before" begins it again (common practice, no source). */
const AGAIN_FROM = 0.15;

/** What is left to read, in milliseconds, shots not counted. */
export function leftMs(
  { item, share }: ReadingPlace,
  { beginsMs, lengthsMs, totalMs }: ReadingPace,
): number {
  const read = (beginsMs[item] ?? 0) + share * (lengthsMs[item] ?? 0);
  return Math.max(0, Math.round(totalMs - read));
}

/** What is left to read, as it is shown: '2:10', full seconds begun counted. */
export function leftText(place: ReadingPlace, pace: ReadingPace): string {
  return printRuntime(Math.ceil(leftMs(place, pace) / 1000));
}

/** 'Sentence 3 of 12', or 'Shot before sentence 4 of 12'. */
export function placeText({ item }: ReadingPlace, items: readonly ReadingItem[]): string {
  const count = (some: readonly ReadingItem[]) =>
    some.filter(({ kind }) => kind === 'point').length;
  const all = count(items);
  const before = count(items.slice(0, item));
  if (items[item]?.kind === 'point') return `Sentence ${before + 1} of ${all}`;
  return before < all ? `Shot before sentence ${before + 1} of ${all}` : 'Shot after all sentences';
}

/** The place after the time between two instants of one clock, in milliseconds. */
export function goneOnSince(
  place: ReadingPlace,
  items: readonly ReadingItem[],
  pace: ReadingPace,
  { thenMs, nowMs }: { readonly thenMs: number; readonly nowMs: number },
): ReadingPlace {
  return goneOn(place, items, pace, Math.max(0, nowMs - thenMs));
}

/** Where an item lies down the page, in pixels. */
export interface Lies {
  readonly top: number;
  readonly height: number;
}

/**
 * How far down from its first item the reading is, in pixels: within an item by the share that is read. Where motion is to be
 * reduced it is the item's beginning, so that the page steps instead of gliding.
 */
export function readingOffset(
  { item, share }: ReadingPlace,
  lies: readonly Lies[],
  stepping: boolean,
): number {
  const here = lies[item];
  const top = lies[0]?.top ?? 0;
  if (!here) return 0;
  return here.top - top + (stepping ? 0 : share * here.height);
}

/** The rate to begin with: the person's own, else the usual one, within what can be chosen. */
export function firstRate(perMinute: number | null): number {
  const { min, max } = READING_RATE;
  return Math.min(max, Math.max(min, perMinute ?? USUAL_WORDS_PER_MINUTE));
}

/** A rate that is faster (1) or slower (-1) by a step, within what can be chosen. */
export function otherRate(perMinute: number, by: 1 | -1): number {
  return firstRate(perMinute + by * READING_RATE.step);
}

/** The size of letters that is larger (1) or smaller (-1) by a step, by its place among those there are. */
export function otherSize(size: number, by: 1 | -1): number {
  return Math.min(READING_SIZES.length - 1, Math.max(0, size + by));
}
