import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  FRAME_RATE_IDS,
  frameRate,
  framesIn,
  framesInDay,
  printTimecode,
  rateOf,
  readTimecode,
  secondsOf,
  type FrameRateId,
} from '#lib/cut/timecode';

const read = (text: string, id: FrameRateId) => {
  const frame = readTimecode(text, frameRate(id));
  return frame.ok ? frame.value : (frame.problems[0]?.code ?? '');
};

/*
 * SMPTE ST 12-1, the rule of drop frame: from memory; the check values stand alike in several public test suites of
 * timecode libraries. At 29.97, frames = 108000 h + 1800 m + 30 s + f - 2 (M - floor(M / 10)), M = 60 h + m.
 */
describe('timecode', () => {
  it.each([
    ['00:00:59;29', 1799, '29.97df'],
    ['00:01:00;02', 1800, '29.97df'],
    ['00:09:59;29', 17_981, '29.97df'],
    ['00:10:00;00', 17_982, '29.97df'],
    ['01:00:00;00', 107_892, '29.97df'],
    ['23:59:59;29', 2_589_407, '29.97df'],
    ['00:01:00;04', 3600, '59.94df'],
    ['00:10:00;00', 35_964, '59.94df'],
    ['01:00:00;00', 215_784, '59.94df'],
    ['01:00:00:00', 108_000, '29.97'],
    ['01:00:00:00', 86_400, '23.976'],
    ['01:00:00:00', 90_000, '25'],
    ['00:00:01:00', 50, '50'],
    ['10:02:33:14', 903_839, '25'],
  ] as const)('%s is frame %i at %s, there and back', (text, frame, id) => {
    expect(read(text, id)).toBe(frame);
    expect(printTimecode(frame, frameRate(id))).toBe(text);
  });

  it.each(['00:01:00;00', '00:01:00;01', '23:59:00;01'])('%s is left out at 29.97', (text) => {
    expect(read(text, '29.97df')).toBe('dropped');
  });

  it.each(['00:01:00;00', '00:01:00;03', '10:09:00;02'])('%s is left out at 59.94', (text) => {
    expect(read(text, '59.94df')).toBe('dropped');
  });

  it('says after how many frames a day is over', () => {
    expect(framesInDay(frameRate('29.97df'))).toBe(2_589_408);
    expect(framesInDay(frameRate('25'))).toBe(2_160_000);
  });

  it.each([
    ['00:00:59;29', '29.97df', 60.0266],
    ['00:01:00;02', '29.97df', 60.06],
    ['00:09:59;29', '29.97df', 599.966],
    ['00:10:00;00', '29.97df', 599.9994],
    ['01:00:00;00', '29.97df', 3599.9964],
    ['01:00:00:00', '29.97', 3603.6],
  ] as const)('%s begins at its real second at %s', (text, id, seconds) => {
    const { num, den } = secondsOf(Number(read(text, id)), frameRate(id));
    expect(num / den).toBeCloseTo(seconds, 4);
  });

  it('numbers every frame of the day once and in order, and reads its own print', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...FRAME_RATE_IDS),
        fc.integer({ min: 0, max: 24 * 3600 * 60 - 1 }),
        (id, any) => {
          const rate = frameRate(id);
          const frame = any % framesInDay(rate);
          expect(read(printTimecode(frame, rate), id)).toBe(frame);
          expect(printTimecode(frame + framesInDay(rate), rate)).toBe(printTimecode(frame, rate));
          if (frame > 0) {
            expect(printTimecode(frame - 1, rate) < printTimecode(frame, rate)).toBe(true);
          }
        },
      ),
    );
  });

  it('leaves out what the rule leaves out and nothing else, over an hour of drop frame', () => {
    for (const id of ['29.97df', '59.94df'] as const) {
      const rate = frameRate(id);
      const shown = new Set(
        Array.from({ length: framesInDay(rate) / 24 }, (_, frame) => printTimecode(frame, rate)),
      );
      let numbers = 0;
      for (let minute = 0; minute < 60; minute += 1) {
        for (let frame = 0; frame < 60 * rate.nominal; frame += 1) {
          const second = Math.floor(frame / rate.nominal);
          const two = (value: number) => String(value).padStart(2, '0');
          const text = `00:${two(minute)}:${two(second)};${two(frame % rate.nominal)}`;
          const out = minute % 10 !== 0 && frame < rate.drop;
          if (!out) numbers += 1;
          if (shown.has(text) === out) throw new Error(`${text} at ${id}`);
        }
      }
      expect(shown.size).toBe(numbers);
    }
  });

  it('comes round below 0 and refuses parts of frames', () => {
    expect(printTimecode(-1, frameRate('25'))).toBe('23:59:59:24');
    expect(() => printTimecode(1.5, frameRate('25'))).toThrow('1.5');
  });

  it.each([
    ['', '25', 'form'],
    ['10:02:33', '25', 'form'],
    ['ten past two', '25', 'form'],
    ['-1:00:00:00', '25', 'form'],
    ['24:00:00:00', '25', 'range'],
    ['10:60:00:00', '25', 'range'],
    ['10:00:60:00', '25', 'range'],
    ['10:00:00:25', '25', 'range'],
    ['10:00:00:24', '23.976', 'range'],
    ['10:00:00;12', '25', 'form'],
    ['10:00:00;12', '29.97', 'form'],
  ] as const)('“%s” at %s is refused: %s', (text, id, code) => {
    expect(read(text, id)).toBe(code);
  });

  it('takes what displays show: one digit, a colon for drop frame, blanks around', () => {
    expect(read(' 1:0:0:0 ', '25')).toBe(90_000);
    expect(read('01:00:00:00', '29.97df')).toBe(107_892);
    expect(read('01:00:00.00', '29.97df')).toBe(107_892);
  });

  it('finds the rate of an exact fraction, and none of another', () => {
    expect(rateOf({ num: 25, den: 1 })?.id).toBe('25');
    expect(rateOf({ num: 60_000, den: 2002 })?.id).toBe('29.97');
    expect(rateOf({ num: 30_000, den: 1001 }, true)?.id).toBe('29.97df');
    expect(rateOf({ num: 25, den: 1 }, true)).toBeNull();
    expect(rateOf({ num: 2997, den: 100 })).toBeNull();
  });

  it('counts frames of a time by the exact rate: an hour of 29.97 has 107,892 frames', () => {
    expect(framesIn(3_600_000, frameRate('29.97df'))).toBe(107_892);
    expect(framesIn(3_600_000, frameRate('25'))).toBe(90_000);
    expect(framesIn(-1000, frameRate('24'))).toBe(-24);
  });
});
