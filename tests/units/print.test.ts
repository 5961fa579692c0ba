import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { printCount, printGrams, printRuntime, printTo, roundTo } from '#lib/units/print';
import { parsePrinted, printedInterval, printedText } from '#lib/units/printed';

describe('printing', () => {
  it.each([
    [0.5, 1, '1'],
    [2.5, 1, '3'],
    [1.005, 0.01, '1.01'],
    [0.285, 0.01, '0.29'],
    [846.2, 10, '850'],
    [12.345, 0.1, '12.3'],
    [0, 0.1, '0.0'],
  ])('prints %s to %s as %s: half away from zero after 12 digits', (value, step, text) => {
    expect(printTo(value, step)).toBe(text);
  });

  it('is never more than half a step from the value', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        fc.constantFrom(0.01, 0.1, 1, 5, 10, 100),
        (value, step) => {
          expect(Math.abs(roundTo(value, step) - value)).toBeLessThanOrEqual(step / 2 + 1e-6);
        },
      ),
    );
  });

  it('rounds symmetrically about zero', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e6, noNaN: true }), (value) => {
        expect(roundTo(-value, 1)).toBe(-roundTo(value, 1) || 0);
      }),
    );
  });

  // Chapter marks: m:ss below an hour, h:mm:ss from there (common practice, no source).
  it.each([
    [65, '1:05'],
    [3725, '1:02:05'],
    [0, '0:00'],
    [3600, '1:00:00'],
  ])('prints %s s as %s', (seconds, text) => {
    expect(printRuntime(seconds)).toBe(text);
  });

  it('prints grams and counts', () => {
    expect(printGrams(397_000)).toBe('397');
    expect(printGrams(4_500)).toBe('4.5');
    expect(printGrams(400)).toBe('0.40');
    expect(printCount(1912)).toBe('1,912');
    expect(printCount(999)).toBe('999');
  });
});

describe('printed numbers', () => {
  it('keeps digits: 0.0 and 0.00 stand for different ranges', () => {
    const one = parsePrinted('0.0');
    const two = parsePrinted('0.00');
    if (!one || !two) throw new Error('both are numbers');
    expect(printedInterval(one).high).toBeCloseTo(0.05, 12);
    expect(printedInterval(two).high).toBeCloseTo(0.005, 12);
    expect(printedInterval(one).low).toBe(0);
  });

  it('prints back what it read', () => {
    fc.assert(
      fc.property(fc.nat(999_999), fc.integer({ min: 0, max: 4 }), (mantissa, scale) => {
        const text = printedText({ mantissa, scale });
        expect(parsePrinted(text)).toEqual({ mantissa, scale });
      }),
    );
  });

  it.each(['', '.', '1.2.3', '1,000.5', 'abc', '1e5', '--1', '99999999999999999999'])(
    'does not take %j for a number',
    (text) => {
      expect(parsePrinted(text)).toBeNull();
    },
  );
});
