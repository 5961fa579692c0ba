import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pointsAtRate } from '#lib/cut/change-rate';
import { chapterFaults, chapterLines, chapterList } from '#lib/cut/chapters';
import { changesOf, cutRemarks, moveCut, type CutPoints } from '#lib/cut/cut-points';
import { cutMends } from '#lib/cut/cut-mends';
import { takePoints } from '#lib/cut/take-points';
import {
  firstFrameAt,
  frameAtRate,
  frameLength,
  frameRate,
  FRAME_RATE_IDS,
} from '#lib/cut/timecode';

const at25 = frameRate('25');
const point = (id: string, inFrame: number | null, outFrame: number | null): CutPoints => ({
  id,
  title: id.toUpperCase(),
  inFrame,
  outFrame,
});

/** Segments one after another from frame 0 on, each at least a frame long. */
const row = fc
  .array(fc.integer({ min: 1, max: 5000 }), { minLength: 1, maxLength: 8 })
  .map((lengths) => {
    let from = 0;
    return lengths.map((length, index) => point(`s${index}`, from, (from += length)));
  });

const frames = fc.option(fc.nat({ max: 20_000 }));
const anyPoints = fc
  .array(fc.tuple(frames, frames), { minLength: 1, maxLength: 8 })
  .map((all) => all.map(([from, to], index) => point(`s${index}`, from, to)));

describe('where segments stand', () => {
  it.each([
    ['a gap', [point('a', 0, 50), point('b', 62, 100)], 'gap', '12 frames between “A” and “B”'],
    [
      'an overlap',
      [point('a', 0, 90), point('b', 10, 100)],
      'overlap',
      '3 s and 5 frames before “A” is over',
    ],
    ['what is before the first', [point('a', 25, 50)], 'gap', '1 s before “A”'],
    ['no end', [point('a', 0, null), point('b', 50, 100)], 'half', '“A” has no end yet'],
    ['an end alone', [point('a', null, 50)], 'half', 'no beginning'],
    ['no length', [point('a', 0, 0)], 'length', 'ends where it begins'],
    ['another order', [point('a', 0, 50), point('b', 0, 50)], 'order', '“B” begins before “A”'],
  ])('is told of %s', (_name, points, code, words) => {
    const [remark] = cutRemarks(points, at25);
    expect(remark?.code).toBe(code);
    expect(remark?.message).toContain(words);
  });

  it('is told of nothing in a row without gaps', () => {
    fc.assert(
      fc.property(row, (points) => {
        expect(cutRemarks(points, at25)).toEqual([]);
      }),
    );
  });

  it('has one remark less once a gap’s or an overlap’s mend is taken', () => {
    fc.assert(
      fc.property(row, fc.nat(), fc.integer({ min: -40, max: 40 }), (points, which, by) => {
        const at = which % points.length;
        const odd = points.map((one, index) =>
          index === at ? { ...one, inFrame: Math.max(0, (one.inFrame ?? 0) + by) } : one,
        );
        const remarks = cutRemarks(odd, at25);
        if (remarks.some(({ code }) => code === 'length')) return;
        for (const { mend } of remarks) {
          if (!mend) continue;
          const mended = odd.map((one) =>
            one.id === mend.change.id ? { ...one, ...mend.change } : one,
          );
          const lengthless = mended.some(
            ({ inFrame, outFrame }) => (outFrame ?? 1) <= (inFrame ?? 0),
          );
          if (!lengthless) expect(cutRemarks(mended, at25)).toHaveLength(remarks.length - 1);
        }
      }),
    );
  });
});

describe('a cut that is moved', () => {
  it('moves for both segments that share it, and for nobody else', () => {
    fc.assert(
      fc.property(row, fc.nat(), fc.integer({ min: -100, max: 100 }), (points, which, by) => {
        const own = points[which % points.length];
        if (!own) return;
        const moved = moveCut(points, own.id, 'inFrame', by);
        const at = points.indexOf(own);
        expect(moved[at]?.inFrame).toBe(Math.max(0, (own.inFrame ?? 0) + by));
        if (at > 0) expect(moved[at - 1]?.outFrame).toBe(moved[at]?.inFrame);
        expect(changesOf(points, moved).length).toBeLessThanOrEqual(2);
      }),
    );
  });

  it('is there again when it is moved back', () => {
    fc.assert(
      fc.property(row, fc.nat(), fc.nat({ max: 500 }), (points, which, by) => {
        const { id } = points[which % points.length] ?? point('none', 0, 1);
        const away = moveCut(points, id, 'outFrame', by);
        expect(moveCut(away, id, 'outFrame', -by)).toEqual(points);
      }),
    );
  });

  it('leaves a segment alone that does not touch', () => {
    const points = [point('a', 0, 40), point('b', 50, 100)];
    expect(moveCut(points, 'b', 'inFrame', 1)[0]).toEqual(points[0]);
  });
});

describe('offers that are taken', () => {
  it('let the one above end where the next begins, if it ended there or had no end', () => {
    const points = [point('a', 0, 50), point('b', 50, 100), point('c', null, null)];
    const taken = takePoints(points, [
      { id: 'b', inFrame: 60, outFrame: null },
      { id: 'c', inFrame: 110, outFrame: null },
    ]);
    expect(taken).toEqual([point('a', 0, 60), point('b', 60, 100), point('c', 110, null)]);
  });

  it('keep an end that was set apart, and take the list’s own', () => {
    const points = [point('a', 0, 40), point('b', 50, 100)];
    expect(takePoints(points, [{ id: 'b', inFrame: 55, outFrame: 90 }])).toEqual([
      point('a', 0, 40),
      point('b', 55, 90),
    ]);
  });

  it('leave no segment that ends before it begins, and no other segment changed', () => {
    const offers = fc.array(
      fc.record({ which: fc.nat({ max: 7 }), inFrame: fc.nat({ max: 20_000 }) }),
      {
        maxLength: 4,
      },
    );
    fc.assert(
      fc.property(anyPoints, offers, (points, wanted) => {
        const sound = points.map((one) =>
          (one.outFrame ?? 1e9) > (one.inFrame ?? -1) ? one : { ...one, outFrame: null },
        );
        const list = wanted.flatMap(({ which, inFrame }) => {
          const own = sound[which % sound.length];
          return own ? [{ id: own.id, inFrame, outFrame: null }] : [];
        });
        const taken = takePoints(sound, list);
        taken.forEach((one, index) => {
          const touched = [one.id, taken[index + 1]?.id].some((id) =>
            list.some((each) => each.id === id),
          );
          if (!touched) expect(one).toEqual(sound[index]);
          if (one.inFrame !== null && one.outFrame !== null) {
            expect(one.outFrame).toBeGreaterThan(one.inFrame);
          }
        });
      }),
    );
  });
});

describe('another rate', () => {
  it('keeps the times: frame 50 at 25 is frame 60 at 30, 1001 frames at 29.97 are 1,002 at 30', () => {
    // 1001 frames at 30000/1001 are 33.4 s (SMPTE ST 12-1 rate), which is 1002 frames at 30.
    expect(frameAtRate(50, at25, frameRate('30'))).toBe(60);
    expect(frameAtRate(1000, frameRate('29.97'), frameRate('30'))).toBe(1001);
  });

  it('or keeps the frames that were counted', () => {
    const points = [point('a', 0, 50)];
    expect(pointsAtRate(points, at25, frameRate('50'), 'frames')).toEqual(points);
    expect(pointsAtRate(points, at25, frameRate('50'), 'times')).toEqual([point('a', 0, 100)]);
  });

  it('as fast or faster and back again is as it was, and slower keeps every segment a frame', () => {
    const rates = fc.constantFrom(...FRAME_RATE_IDS).map(frameRate);
    fc.assert(
      fc.property(row, rates, rates, (points, a, b) => {
        const [slow, fast] = a.num * b.den <= b.num * a.den ? [a, b] : [b, a];
        const there = pointsAtRate(points, slow, fast, 'times');
        expect(pointsAtRate(there, fast, slow, 'times')).toEqual(points);
        for (const { inFrame, outFrame } of pointsAtRate(points, fast, slow, 'times')) {
          expect(outFrame).toBeGreaterThan(inFrame ?? 0);
        }
      }),
    );
  });

  it('finds the first frame of a second, whatever the rate', () => {
    fc.assert(
      fc.property(fc.nat({ max: 86_399 }), fc.constantFrom(...FRAME_RATE_IDS), (second, id) => {
        const { num, den } = frameRate(id);
        const frame = firstFrameAt(second, { num, den });
        // Exactly, in whole numbers: the frame begins in that second, the one before does not.
        const secondOf = (one: number) => (BigInt(one) * BigInt(den)) / BigInt(num);
        expect(secondOf(frame)).toBe(BigInt(second));
        if (frame > 0) expect(secondOf(frame - 1)).toBe(BigInt(second - 1));
      }),
    );
  });
});

it.each([
  [1, '1 frame'],
  [12, '12 frames'],
  [25, '1 s'],
  [80, '3 s and 5 frames'],
])('%i frames at 25 are %s', (count, words) => {
  expect(frameLength(count, at25)).toBe(words);
});

describe('mends of the chapters of a cut', () => {
  // Rules of chapter lists in descriptions: common practice, no source.
  const starts = (...seconds: number[]) =>
    seconds.map((second, index) =>
      point(`s${index}`, second * 25, (seconds[index + 1] ?? second + 60) * 25),
    );

  it('move an in-point, and the end of the one above that shares the cut', () => {
    const points = starts(0, 9, 30);
    const [move] = cutMends(points, at25);
    expect(move).toEqual({
      words: 'begin “S1” 1 s later, at 0:10',
      takes: {
        kind: 'times',
        changes: [
          { id: 's0', inFrame: 0, outFrame: 250 },
          { id: 's1', inFrame: 250, outFrame: 750 },
        ],
      },
    });
  });

  it('join the second of two chapters with the first, and move no segment', () => {
    const points = starts(0, 9, 30, 60);
    const joins = cutMends(points, at25).filter(({ takes }) => takes.kind === 'join');
    expect(joins).toEqual([
      { words: 'join “S0” with “S1”', takes: { kind: 'join', id: points[1]?.id } },
    ]);
    const segments = points.map((one, index) => ({ ...one, chapter: index !== 1 }));
    const { chapters } = chapterList({ segments, rate: at25 });
    expect(chapterLines(chapters)).toEqual(['0:00 S0, S1', '0:30 S2', '1:00 S3']);
  });

  it('keep joined segments together where the order changes', () => {
    const points = [
      point('a', 0, 500),
      point('b', 1000, 1250),
      { ...point('b2', 1250, 1500), chapter: false },
      point('c', 500, 1000),
    ];
    const [mend] = cutMends(points, at25);
    expect(mend?.takes).toEqual({ kind: 'order', ids: ['a', 'c', 'b', 'b2'] });
  });

  it('put segments in the order of their times, those without a time in their places', () => {
    const points = [
      point('a', 0, 500),
      point('b', 1000, 1500),
      point('n', null, null),
      point('c', 500, 1000),
    ];
    expect(cutMends(points, at25)[0]?.takes).toEqual({ kind: 'order', ids: ['a', 'c', 'n', 'b'] });
  });

  it('leave fewer broken rules once they are taken, at any rate', () => {
    const second = fc.record({ second: fc.nat({ max: 60 }), chapter: fc.boolean() });
    const seconds = fc.array(second, { minLength: 3, maxLength: 6 });
    fc.assert(
      fc.property(seconds, fc.constantFrom(...FRAME_RATE_IDS), (list, id) => {
        const rate = frameRate(id);
        const points = list.map(({ second, chapter }, index) => ({
          ...point(`s${index}`, firstFrameAt(second, rate), null),
          chapter,
        }));
        const { faults } = chapterList({ segments: points, rate });
        for (const { takes } of cutMends(points, rate)) {
          const after =
            takes.kind === 'order'
              ? takes.ids.flatMap((one) => points.find(({ id: own }) => own === one) ?? [])
              : takes.kind === 'join'
                ? points.map((one) => (one.id === takes.id ? { ...one, chapter: false } : one))
                : points.map((one) => ({
                    ...one,
                    ...takes.changes.find(({ id: own }) => own === one.id),
                  }));
          expect(after).toHaveLength(points.length);
          const { chapters } = chapterList({ segments: after, rate });
          expect(chapterFaults(chapters).length, chapterLines(chapters).join()).toBeLessThan(
            faults.length,
          );
        }
      }),
    );
  });
});
