import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  firstRate,
  goneOn,
  goneOnSince,
  leftMs,
  leftText,
  moved,
  otherRate,
  otherSize,
  placeText,
  READING_MOVES,
  READING_RATE,
  READING_SIZES,
  READING_START,
  readingOffset,
  readingPace,
  type ReadingItem,
  type ReadingPlace,
} from '#lib/cut/reading-pace';

const point = (words: number): ReadingItem => ({ kind: 'point', words });
const stop: ReadingItem = { kind: 'stop' };
const items = [stop, point(150), point(75), stop, point(300)];
const pace = readingPace(items, 150);

const someItems = fc.array(
  fc.oneof(fc.constant(stop), fc.integer({ min: 1, max: 200 }).map(point)),
  { minLength: 1, maxLength: 12 },
);
const rate = fc.integer({ min: READING_RATE.min, max: READING_RATE.max });

describe('the pace of reading', () => {
  // 300 words at 150 words a minute are 120 s: a rate's own definition. Numbers count as the words they take.
  it('says when each sentence begins and how long all of it takes', () => {
    expect(pace).toEqual({
      beginsMs: [0, 0, 60_000, 90_000, 90_000],
      lengthsMs: [0, 60_000, 30_000, 0, 120_000],
      totalMs: 210_000,
    });
    expect(readingPace([], 150).totalMs).toBe(0);
  });

  it('goes on through sentences and stops at the next shot', () => {
    const going: ReadingPlace = { item: 1, share: 0, going: true };
    expect(goneOn(going, items, pace, 30_000)).toEqual({ item: 1, share: 0.5, going: true });
    expect(goneOn(going, items, pace, 75_000)).toEqual({ item: 2, share: 0.5, going: true });
    expect(goneOn(going, items, pace, 500_000)).toEqual({ item: 3, share: 0, going: false });
  });

  it('goes on from a shot at the press, and is over at the end', () => {
    const second = moved({ item: 3, share: 0, going: false }, items, 'next');
    expect(second).toEqual({ item: 4, share: 0, going: true });
    const over = goneOn(second, items, pace, 120_000);
    expect(over).toEqual({ item: 4, share: 1, going: false });
    expect(moved(over, items, 'go')).toEqual(over);
    expect(moved(over, items, 'next')).toEqual(over);
    expect(leftMs(over, pace)).toBe(0);
  });

  it('begins a sentence again before it goes back to the one before', () => {
    expect(moved({ item: 2, share: 0.5, going: true }, items, 'before')).toEqual({
      item: 2,
      share: 0,
      going: true,
    });
    expect(moved({ item: 2, share: 0, going: true }, items, 'before').item).toBe(1);
    // Back to a shot it stands still.
    expect(moved({ item: 1, share: 0, going: true }, items, 'before')).toEqual(READING_START);
  });

  it('comes to the same place in pieces as in one', () => {
    const pieces = fc.array(fc.integer({ min: 0, max: 20_000 }), { maxLength: 12 });
    fc.assert(
      fc.property(someItems, rate, pieces, (all, perMinute, parts) => {
        const of = readingPace(all, perMinute);
        const start = moved(READING_START, all, 'go');
        const whole = parts.reduce((sum, part) => sum + part, 0);
        const inOne = goneOn(start, all, of, whole);
        const inParts = parts.reduce((place, part) => goneOn(place, all, of, part), start);
        expect(inParts.item).toBe(inOne.item);
        expect(inParts.share).toBeCloseTo(inOne.share, 6);
      }),
    );
  });

  it('never runs over a shot by itself, and what is left never grows', () => {
    fc.assert(
      fc.property(someItems, rate, fc.nat(600_000), (all, perMinute, ms) => {
        const of = readingPace(all, perMinute);
        const from = moved(READING_START, all, 'go');
        const to = goneOn(from, all, of, ms);
        const passed = all.slice(from.item + 1, to.item);
        expect(passed.every(({ kind }) => kind === 'point')).toBe(true);
        expect(leftMs(to, of)).toBeLessThanOrEqual(leftMs(from, of));
      }),
    );
  });

  it('stays within the items whatever is pressed', () => {
    fc.assert(
      fc.property(someItems, fc.array(fc.constantFrom(...READING_MOVES)), (all, moves) => {
        const place = moves.reduce((at, move) => moved(at, all, move), READING_START);
        expect(place.item).toBeGreaterThanOrEqual(0);
        expect(place.item).toBeLessThan(all.length);
        if (place.going) expect(all[place.item]?.kind).toBe('point');
      }),
    );
    expect(moved(READING_START, [], 'next')).toEqual(READING_START);
  });

  it('lies between two sentences by the share that is read; where motion is reduced, at the beginning', () => {
    const lies = [
      { top: 40, height: 100 },
      { top: 140, height: 300 },
    ];
    const place = { item: 1, share: 0.5, going: true };
    expect(readingOffset(place, lies, false)).toBe(250);
    expect(readingOffset(place, lies, true)).toBe(100);
    expect(readingOffset({ ...place, item: 9 }, lies, false)).toBe(0);
  });

  it('says where it is and what is left, in words', () => {
    expect(items.map((_, item) => placeText({ item, share: 0, going: false }, items))).toEqual([
      'Shot before sentence 1 of 3',
      'Sentence 1 of 3',
      'Sentence 2 of 3',
      'Shot before sentence 3 of 3',
      'Sentence 3 of 3',
    ]);
    expect(placeText({ item: 1, share: 0, going: false }, [point(3), stop])).toBe(
      'Shot after all sentences',
    );
    expect(leftText({ item: 1, share: 0.5, going: false }, pace)).toBe('3:00');
    const soon = { thenMs: 1000, nowMs: 31_000 };
    expect(goneOnSince({ item: 1, share: 0, going: true }, items, pace, soon).share).toBe(0.5);
    const back = { thenMs: 31_000, nowMs: 1000 };
    expect(goneOnSince({ item: 1, share: 0, going: true }, items, pace, back).share).toBe(0);
  });

  it('is faster and slower by steps, within what can be chosen', () => {
    // About 150 words a minute: National Center for Voice and Speech, as `speaking-rate.ts` cites it.
    expect([firstRate(null), firstRate(172), firstRate(400)]).toEqual([150, 172, READING_RATE.max]);
    expect(otherRate(150, 1)).toBe(160);
    expect(otherRate(READING_RATE.min, -1)).toBe(READING_RATE.min);
    expect(otherRate(READING_RATE.max, 1)).toBe(READING_RATE.max);
    expect([otherSize(0, -1), otherSize(0, 1), otherSize(READING_SIZES.length - 1, 1)]).toEqual([
      0,
      1,
      READING_SIZES.length - 1,
    ]);
  });
});
