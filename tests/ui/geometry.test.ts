import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  balance,
  barPercents,
  fullHours,
  placeBlocks,
  lanesOf,
  stageMarks,
  stripMarks,
  stripSpan,
  whisker,
} from '../../app/_ui/geometry';

const known = { value: 100, low: 90, high: 120, likelyLow: 95, likelyHigh: 105 };

describe('a whisker', () => {
  test('stands on one scale of ± 20 %, with its value in the middle', () => {
    const drawing = whisker(known);
    expect(drawing.tick).toBe(80);
    expect(drawing.hard).toEqual({ from: 43, to: 154, fromEnd: 'bound', toEnd: 'bound' });
    expect(drawing.likely).toEqual({ from: 61.5, to: 98.5, fromEnd: 'bound', toEnd: 'bound' });
    expect(drawing.graduations).toHaveLength(9);
  });

  test('is cut where a bound lies beyond the scale', () => {
    expect(whisker({ ...known, low: 79, high: 121 }).hard).toEqual({
      from: 6,
      to: 154,
      fromEnd: 'cut',
      toEnd: 'cut',
    });
  });

  test('is free on the side that has no bound, and claims no likely range there', () => {
    const atLeast = whisker({ ...known, high: null, likelyHigh: null });
    expect(atLeast.hard).toMatchObject({ fromEnd: 'bound', to: 154, toEnd: 'free' });
    expect(atLeast.likely).toBeNull();
    const atMost = whisker({ ...known, low: null, likelyLow: null });
    expect(atMost.hard).toMatchObject({ from: 6, fromEnd: 'free', toEnd: 'bound' });
  });

  test('has no tick where the figure is open', () => {
    const open = whisker({ value: 12, low: null, high: null, likelyLow: null, likelyHigh: null });
    expect(open).toMatchObject({ tick: null, hard: null, likely: null });
  });

  test('of 0 is drawn: cut at a bound above it, level with one at it', () => {
    const zero = { value: 0, low: 0, likelyLow: 0 };
    expect(whisker({ ...zero, high: 0.5, likelyHigh: 0.4 }).hard).toEqual({
      from: 80,
      to: 154,
      fromEnd: 'bound',
      toEnd: 'cut',
    });
    expect(whisker({ ...zero, high: 0, likelyHigh: 0 }).hard).toMatchObject({ from: 80, to: 80 });
  });

  test('keeps hard around likely around value, inside the drawing', () => {
    const part = fc.double({ min: 0, max: 1e4, noNaN: true });
    fc.assert(
      fc.property(part, part, part, part, part, (value, a, b, c, d) => {
        const drawing = whisker({
          value,
          likelyLow: value - a,
          low: value - a - b,
          likelyHigh: value + c,
          high: value + c + d,
        });
        const xs = [
          0,
          drawing.hard?.from ?? NaN,
          drawing.likely?.from ?? NaN,
          drawing.tick ?? NaN,
          drawing.likely?.to ?? NaN,
          drawing.hard?.to ?? NaN,
          drawing.width,
        ];
        expect(xs).toEqual([...xs].sort((x, y) => x - y));
      }),
    );
  });
});

describe('a balance', () => {
  test('is level where the statement agrees, and the heavier side hangs lower', () => {
    const level = balance('agrees', 'said');
    expect(level.left.y).toBe(level.right.y);
    const said = balance('off', 'said');
    expect(said.left.y).toBeGreaterThan(said.right.y);
    const breakdown = balance('off', 'breakdown');
    expect(breakdown.left.y).toBeLessThan(breakdown.right.y);
  });

  test('tips less at the edge than when off, and lacks a pan when nothing can be said', () => {
    const tilt = (state: 'edge' | 'off') => {
      const { left, right } = balance(state, 'said');
      return left.y - right.y;
    };
    expect(tilt('edge')).toBeGreaterThan(0);
    expect(tilt('off')).toBeGreaterThan(tilt('edge'));
    expect(balance('unknown', 'said').rightPan).toBe(false);
    expect(balance('edge', 'said').rightPan).toBe(true);
  });
});

describe('blocks down a column', () => {
  const blocks = fc
    .array(fc.record({ start: fc.nat(600), length: fc.integer({ min: 1, max: 120 }) }), {
      maxLength: 25,
    })
    .map((list) =>
      list.map(({ start, length }, i) => ({
        id: String(i),
        startMin: start,
        endMin: start + length,
      })),
    );

  test('that overlap never share a lane and always agree on how many there are', () => {
    fc.assert(
      fc.property(blocks, (list) => {
        const placed = placeBlocks(list, 0, 0.1);
        expect(placed.size).toBe(list.length);
        for (const a of list) {
          for (const b of list) {
            if (a.id === b.id || a.endMin <= b.startMin || b.endMin <= a.startMin) continue;
            expect(placed.get(a.id)?.lane).not.toBe(placed.get(b.id)?.lane);
            expect(placed.get(a.id)?.lanes).toBe(placed.get(b.id)?.lanes);
          }
        }
        for (const a of list) {
          const { topRem = NaN, heightRem = NaN } = placed.get(a.id) ?? {};
          expect(heightRem).toBeGreaterThanOrEqual((a.endMin - a.startMin) * 0.1);
          for (const b of list) {
            if (b.startMin < a.endMin) continue;
            expect(topRem + heightRem).toBeLessThanOrEqual(
              (placed.get(b.id)?.topRem ?? NaN) + 1e-9,
            );
          }
        }
        for (const each of placed.values()) expect(each.lane).toBeLessThan(each.lanes);
      }),
    );
  });

  test('that follow each other keep the whole width', () => {
    const placed = placeBlocks(
      [
        { id: 'a', startMin: 540, endMin: 560 },
        { id: 'b', startMin: 560, endMin: 570 },
      ],
      540,
      0.5,
    );
    expect(placed.get('a')).toEqual({
      topRem: 0,
      heightRem: 10,
      lane: 0,
      lanes: 1,
      tight: false,
      target: true,
      // 10 rem less 0.3 of frame hold 8 whole lines of 1.1.
      textLines: 8,
    });
    expect(placed.get('b')).toEqual({
      topRem: 10,
      heightRem: 5,
      lane: 0,
      lanes: 1,
      tight: false,
      target: true,
      textLines: 4,
    });
  });
});

test('a block too short to be hit grows into free time, and leads nowhere where there is none', () => {
  const at = (id: string, startMin: number, endMin: number) => ({ id, startMin, endMin });
  const placed = placeBlocks([at('a', 0, 2), at('b', 2, 4), at('c', 20, 22)], 0, 0.2);
  expect(placed.get('a')).toMatchObject({ heightRem: 0.4, tight: true, target: false });
  expect(placed.get('b')).toMatchObject({ heightRem: 1.625, tight: false, target: true });
  expect(placed.get('c')).toMatchObject({ heightRem: 1.625, tight: false, target: true });
});

test('the hours of a day reach around its first and last minute', () => {
  expect(fullHours(545, 679)).toEqual([540, 600, 660, 720]);
  expect(fullHours(540, 600)).toEqual([540, 600]);
});

test('bars are drawn to the longest, and not at all beside nothing', () => {
  expect(barPercents([5, 10, 0])).toEqual([50, 100, 0]);
  expect(barPercents([0, 0])).toEqual([0, 0]);
  expect(barPercents([])).toEqual([]);
});

test('a rule of stages has a tick for each at the same distance, and stands at the one reached', () => {
  // 160 wide less 6 at each end: five steps of 29.6.
  const { ticks, at } = stageMarks(6, 5);
  expect(ticks.map((x) => Math.round(x * 10) / 10)).toEqual([6, 35.6, 65.2, 94.8, 124.4, 154]);
  expect(at).toBe(ticks.at(-1));
  expect(stageMarks(6, 0).at).toBe(6);
});

describe('the strip of an episode', () => {
  test('a stretch of time has its share of the width', () => {
    expect(stripSpan(0, 30_000, 60_000)).toEqual({ left: 0, width: 50 });
    expect(stripSpan(45_000, 90_000, 60_000)).toEqual({ left: 75, width: 25 });
  });

  test('no mark covers another of its lane, on a wide page or on a phone', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 600_000 }), { maxLength: 120 }), (times) => {
        const marks = stripMarks(times, 600_000);
        for (const [width, across] of [
          ['wide', 38],
          ['narrow', 11],
        ] as const) {
          for (const a of marks) {
            expect(a.left).toBeGreaterThanOrEqual(0);
            expect(a.left).toBeLessThanOrEqual(100);
            for (const b of marks) {
              if (a === b || a[width] === null || a[width] !== b[width]) continue;
              expect(Math.abs(a.left - b.left)).toBeGreaterThan(100 / across - 1e-6);
            }
          }
        }
      }),
    );
  });

  test('a handful of marks all have a lane, however close', () => {
    const marks = stripMarks([1000, 1000, 1100, 1200, 59_000], 60_000);
    expect(marks.map(({ wide }) => wide)).toEqual([0, 1, 2, 3, 0]);
    expect(lanesOf(marks.map(({ wide }) => wide))).toBe(4);
    expect(lanesOf([])).toBe(0);
  });
});
