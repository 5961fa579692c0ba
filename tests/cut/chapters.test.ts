import { describe, expect, it } from 'vitest';
import { chapterFaults, chapterLines, chapterList } from '#lib/cut/chapters';
import { aTalk } from '../support/build';

const at = (...starts: number[]) =>
  starts.map((startS, index) => ({ title: `Part ${index + 1}`, startS }));
const rules = (...starts: number[]) => chapterFaults(at(...starts)).map((fault) => fault.rule);

// Chapter lists in descriptions: first at 0:00, at least three, ascending, each at least 10 s (common practice, no source).
describe('chapters', () => {
  it.each([
    [[0, 9, 30], ['tenSeconds']],
    [[0, 10, 20], []],
    [[0, 60], ['atLeastThree']],
    [[5, 60, 120], ['firstAtZero']],
    [[0, 60, 60], ['ascending']],
    [[0, 90, 60], ['ascending']],
    [[], ['noTimes']],
  ])('starting at %j break %j', (starts, broken) => {
    expect(rules(...starts)).toEqual(broken);
  });

  it('name the broken rule with its place and the mend', () => {
    expect(chapterFaults(at(0, 9, 30))[0]?.message).toBe(
      '"Part 1" lasts 9 s; a chapter needs 10 s, so start the next at 0:10 or later',
    );
  });

  it('hold the last one against the end of the cut', () => {
    const segments = [
      aTalk('a', { inFrame: 0 }),
      aTalk('b', { inFrame: 250 }),
      aTalk('c', { inFrame: 500, outFrame: 525 }),
    ];
    const { faults } = chapterList({ segments, rate: { num: 25, den: 1 } });
    expect(faults.map((fault) => fault.message)).toEqual([
      '"c" lasts 1 s to the end; a chapter needs 10 s',
    ]);
  });

  it('join a segment with the one before where it says so, to where its own cut ends', () => {
    const segments = [
      aTalk('a', { inFrame: 0, outFrame: 250, chapter: false }),
      aTalk('b', { inFrame: 250, outFrame: 375, chapter: false }),
      aTalk('in no cut'),
      aTalk('c', { inFrame: 375, outFrame: null, chapter: false }),
      aTalk('d', { inFrame: 500, outFrame: 1000 }),
      aTalk('e', { inFrame: 1000, outFrame: 1250, chapter: false }),
    ];
    const { chapters } = chapterList({ segments, rate: { num: 25, den: 1 } });
    expect(chapters).toEqual([
      { title: 'a, b, c', startS: 0 },
      { title: 'd, e', startS: 20, endS: 50 },
    ]);
    expect(chapterLines(chapters)).toEqual(['0:00 a, b, c', '0:20 d, e']);
  });

  it('are written m:ss below an hour and h:mm:ss from there', () => {
    expect(chapterLines(at(0, 65, 3725))).toEqual(['0:00 Part 1', '1:05 Part 2', '1:02:05 Part 3']);
  });

  it('come from frames at an exact rate, rounded down', () => {
    const segments = [aTalk('a', { inFrame: 0 }), aTalk('b', { inFrame: 1799 }), aTalk('c')];
    const { chapters } = chapterList({ segments, rate: { num: 30000, den: 1001 } });
    // 1799 frames at 30000/1001 are 60.0266 s (SMPTE ST 12-1, drop-frame table).
    expect(chapters).toEqual([
      { title: 'a', startS: 0 },
      { title: 'b', startS: 60 },
    ]);
  });
});
