import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isoDuration, readIsoDuration } from '#lib/units/iso-duration';

describe('durations of ISO 8601-1', () => {
  // Forms and the trap of months: ISO 8601-1, "duration" (5.5.2; from memory, the standard is not free).
  it.each([
    [5400, 'PT1H30M'],
    [2700, 'PT45M'],
    [0, 'PT0S'],
    [93_600, 'PT26H'],
    [3601, 'PT1H1S'],
  ])('%i s is written %s', (seconds, text) => {
    expect(isoDuration(seconds)).toBe(text);
  });

  it.each([
    ['PT1H30M', 5400],
    ['PT90M', 5400],
    ['P1DT2H', 93_600],
    ['PT26H', 93_600],
    ['PT0S', 0],
    ['P2W', 1_209_600],
    ['PT0.5H', 1800],
    ['PT0,5H', 1800],
    ['P1D', 86_400],
    // RFC 3339, appendix A, and RFC 5545, 3.3.6, print these with the same meaning.
    ['P15DT5H0M20S', 1_314_020],
    ['P7W', 4_233_600],
  ])('%s is %i s', (text, seconds) => {
    expect(readIsoDuration(text)).toEqual({ kind: 'seconds', seconds });
  });

  it.each(['P45M', 'P1Y', 'P1Y2M3DT4H', 'P0M'])('%s counts in months or years', (text) => {
    expect(readIsoDuration(text).kind).toBe('calendar');
  });

  it.each(['', 'P', 'PT', 'P1DT', '1H', 'PT1M1H', 'PT1.5H30M', 'P1W2D', '45', 'pt5m', 'PT-5M'])(
    '“%s” is none',
    (text) => {
      expect(readIsoDuration(text).kind).toBe('none');
    },
  );

  it('reads what it writes', () => {
    fc.assert(
      fc.property(fc.nat(10_000_000), (seconds) => {
        expect(readIsoDuration(isoDuration(seconds))).toEqual({ kind: 'seconds', seconds });
      }),
    );
  });

  it('writes no length that is none', () => {
    for (const wrong of [-1, 0.5, Number.NaN, Infinity]) {
      expect(() => isoDuration(wrong)).toThrow('no duration');
    }
  });
});
