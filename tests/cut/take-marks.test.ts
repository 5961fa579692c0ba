import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { takeMarks, takesCsv, type Take } from '#lib/cut/take-marks';
import { takesEdl } from '#lib/cut/takes-edl';
import { takesOtio } from '#lib/cut/takes-otio';
import { FRAME_RATE_IDS, frameRate, framesInDay, readTimecode } from '#lib/cut/timecode';

const SEEN_AT = '2026-06-06T08:00:00.000Z';
const at = (seconds: number): string =>
  new Date(Date.parse(SEEN_AT) + Math.round(seconds * 1000)).toISOString();

const take = (seconds: number, more: Partial<Take> = {}): Take => ({
  slate: '2B',
  take: 1,
  shot: 'Steam against the window',
  framing: 'low, back light',
  segment: 'Barley skillet',
  good: true,
  at: at(seconds),
  clock: '10:00:02',
  note: '',
  ...more,
});
const seen = (timecode: string, id: (typeof FRAME_RATE_IDS)[number]) => {
  const rate = frameRate(id);
  const frame = readTimecode(timecode, rate);
  if (!frame.ok) throw new Error(frame.problems[0]?.message);
  return { clockAt: SEEN_AT, frame: frame.value, rate };
};
const codes = (takes: readonly Take[], of: ReturnType<typeof seen>) =>
  takeMarks(takes, of).map(({ timecode }) => timecode);

describe('the frame in which a take ended', () => {
  it('is counted on from the picture of the clock, back as well, at the exact rate', () => {
    expect(codes([take(2), take(-2)], seen('10:00:00:00', '25'))).toEqual([
      '10:00:02:00',
      '09:59:58:00',
    ]);
    // An hour of the clock is 107,892.1 frames of 29.97: drop frame keeps with the clock, non-drop falls behind.
    expect(codes([take(3600)], seen('09:00:00;00', '29.97df'))).toEqual(['10:00:00;00']);
    expect(codes([take(3600)], seen('09:00:00:00', '29.97'))).toEqual(['09:59:56:12']);
    expect(codes([take(3600)], seen('09:00:00:00', '23.976'))).toEqual(['09:59:56:10']);
  });

  it('goes on past midnight', () => {
    expect(codes([take(120)], seen('23:59:00:00', '50'))).toEqual(['00:01:00:00']);
  });

  it('is off by no more than half a frame', () => {
    const rates = fc.constantFrom(...FRAME_RATE_IDS).map(frameRate);
    fc.assert(
      fc.property(rates, fc.nat(2_000_000), fc.nat(86_400_000), (rate, start, ms) => {
        const frame = start % framesInDay(rate);
        const [mark] = takeMarks([take(ms / 1000)], { clockAt: SEEN_AT, frame, rate });
        const exact = frame + (ms / 1000) * (rate.num / rate.den);
        expect(Math.abs((mark?.frame ?? NaN) - exact)).toBeLessThanOrEqual(0.5 + 1e-6);
      }),
    );
  });
});

describe('takes as a table', () => {
  it('read back by a general reader, with timecode or without', () => {
    const takes = [take(2, { note: '=late, "again"', good: false })];
    const read = (text: string): Record<string, string>[] =>
      parse(text, { columns: true, record_delimiter: '\r\n' });
    const of = seen('10:00:00:00', '25');
    expect(read(takesCsv(takeMarks(takes, of)))).toEqual([
      {
        slate: '2B',
        take: '1',
        'good or again': 'again',
        shot: 'Steam against the window',
        framing: 'low, back light',
        segment: 'Barley skillet',
        'ended at (clock)': '10:00:02',
        'ended at (timecode)': '10:00:02:00',
        frame: '900050',
        note: `'=late, "again"`,
      },
    ]);
    expect(read(takesCsv(takes))[0]).toMatchObject({ 'ended at (timecode)': '', frame: '' });
  });
});

/** The columns of a CMX 3600 event line, as the format is described (from memory). */
const EVENT = /^(\d{3}) {2}(\S{1,8}) +(V|A|A2|AA|B) +(C) +(\S{11}) (\S{11}) (\S{11}) (\S{11})$/;

describe('takes as an edit decision list', () => {
  const rate = frameRate('29.97df');
  const of = seen('10:00:00;00', '29.97df');

  it('has a title, the frame code mode, and for each take an event of one frame with its comments', () => {
    const marks = takeMarks(
      [take(60), take(61.5, { take: 2, good: false, note: 'Lid “rattles”' })],
      of,
    );
    expect(takesEdl('Crème brûlée at 190 °C', marks, rate)).toBe(
      [
        'TITLE: Creme brulee at 190 deg C',
        'FCM: DROP FRAME',
        '* FRAMES A SECOND: 30000/1001',
        '001  AX       V     C        10:00:59;28 10:00:59;29 10:00:59;28 10:00:59;29',
        '* FROM CLIP NAME: 2B take 1, good',
        '* COMMENT: Barley skillet',
        '* COMMENT: Steam against the window, low, back light',
        '* COMMENT: ended at 10:00:02',
        '002  AX       V     C        10:01:01;15 10:01:01;16 10:01:01;15 10:01:01;16',
        '* FROM CLIP NAME: 2B take 2, again',
        '* COMMENT: Barley skillet',
        '* COMMENT: Steam against the window, low, back light',
        '* COMMENT: ended at 10:00:02',
        '* COMMENT: Lid "rattles"',
        '',
      ].join('\n'),
    );
  });

  it('has events that the format allows, out one frame after in, whatever the takes say', () => {
    const texts = fc.string({ unit: 'grapheme', maxLength: 40 });
    const takes = fc.array(
      fc.tuple(fc.nat(80_000), texts, texts).map(([s, shot, note]) => take(s, { shot, note })),
      { maxLength: 6 },
    );
    fc.assert(
      fc.property(takes, texts, (some, title) => {
        const lines = takesEdl(title, takeMarks(some, of), rate).trimEnd().split('\n');
        const events = lines.flatMap((line) => EVENT.exec(line) ?? []);
        expect(lines.filter((line) => EVENT.test(line))).toHaveLength(some.length);
        for (const line of lines) {
          expect(line).toMatch(/^(TITLE: ?|FCM: |\* |\d{3} {2})[ -~]*$/);
        }
        expect(events.length).toBe(some.length * 9);
        for (const line of lines.filter((one) => EVENT.test(one))) {
          const [, , , , , from = '', to = '', recFrom, recTo] = EVENT.exec(line) ?? [];
          const [a, b] = [readTimecode(from, rate), readTimecode(to, rate)];
          if (!a.ok || !b.ok) throw new Error(line);
          expect((b.value - a.value + framesInDay(rate)) % framesInDay(rate)).toBe(1);
          expect([recFrom, recTo]).toEqual([from, to]);
        }
      }),
    );
  });

  it('says how many takes its three digits leave out', () => {
    const many = Array.from({ length: 1002 }, (_, index) => take(index));
    const text = takesEdl('Many', takeMarks(many, of), rate);
    expect(text).toContain('\n999  AX');
    expect(text).toContain('* 3 TAKES MORE STAND IN THE TABLE ALONE\n');
  });
});

describe('takes as OpenTimelineIO markers', () => {
  const rate = frameRate('23.976');
  const of = seen('01:00:00:00', '23.976');
  const marks = takeMarks([take(10, { take: 2, good: false }), take(4)], of);
  const read = JSON.parse(takesOtio('One oven', marks, rate));

  it('begin at the first take and stand where the takes ended, one frame long', () => {
    expect(read).toMatchObject({
      OTIO_SCHEMA: 'Timeline.1',
      name: 'One oven',
      global_start_time: { OTIO_SCHEMA: 'RationalTime.1', value: 86_400 + 96 },
      tracks: { OTIO_SCHEMA: 'Stack.1' },
    });
    expect(read.global_start_time.rate).toBeCloseTo(23.976, 3);
    expect(read.tracks.markers).toMatchObject([
      {
        OTIO_SCHEMA: 'Marker.2',
        name: '2B take 2, again',
        color: 'RED',
        marked_range: {
          OTIO_SCHEMA: 'TimeRange.1',
          start_time: { value: 144 },
          duration: { value: 1 },
        },
        metadata: { 'scale-and-slate': { slate: '2B', take: 2, good: false } },
      },
      { name: '2B take 1, good', color: 'GREEN', marked_range: { start_time: { value: 0 } } },
    ]);
    expect(read.tracks.children[0].children[0].source_range.duration.value).toBe(145);
  });

  it('of no take are none', () => {
    const none = JSON.parse(takesOtio('Nothing', [], rate));
    expect(none.tracks.markers).toEqual([]);
    expect(none.global_start_time.value).toBe(0);
  });
});
