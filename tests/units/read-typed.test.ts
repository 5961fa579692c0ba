import fc from 'fast-check';
import { minorFromHundredths, minorText } from '#lib/units/print-money';
import { describe, expect, test } from 'vitest';
import {
  clockTyped,
  degreesTyped,
  minutesTyped,
  offBy,
  readChange,
  readClock,
  readDegrees,
  readMinutes,
  readMoney,
  readNumber,
  readPermille,
  readWhole,
} from '#lib/units/read-typed';

describe('what a field shows reads back the same', () => {
  test('minutes, for every number of seconds', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 7 * 86_400 }), (seconds) => {
        expect(readMinutes(minutesTyped(seconds))).toBe(seconds);
      }),
    );
  });

  test('clock times, up to the end of the next day', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2880 }), (minute) => {
        expect(readClock(clockTyped(minute))).toBe(minute);
      }),
    );
  });

  test('degrees Celsius to the thousandth, whole degrees Fahrenheit as typed', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 350_000 }), (milliC) => {
        expect(readDegrees(degreesTyped(milliC, 'C'), 'C')).toBe(milliC);
      }),
    );
    fc.assert(
      fc.property(fc.integer({ min: 32, max: 660 }), (fahrenheit) => {
        const milliC = readDegrees(String(fahrenheit), 'F');
        expect(milliC).not.toBeNull();
        expect(degreesTyped(milliC ?? 0, 'F')).toBe(String(fahrenheit));
      }),
    );
  });

  test('prices', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }), (minor) => {
        expect(readMoney(minorText(minor, 'USD'))).toBe(minor);
      }),
    );
  });

  // ISO 4217, list one: the yen has no minor unit, the Bahraini dinar a thousandth.
  test.each([
    ['398', 'JPY', 398],
    ['398.50', 'JPY', null],
    ['2.49', 'USD', 249],
    ['2.49', 'BHD', 2490],
  ])('%s %s is %s minor units', (text, currency, minor) => {
    expect(minorFromHundredths(readMoney(text) ?? NaN, currency)).toBe(minor);
  });
});

test.each([
  ['12', 720],
  ['1.5', 90],
  ['1,5', 90],
  ['90 s', 90],
  ['1:30', 90],
  ['12 min', 720],
  ['0.1', 6],
  ['soon', null],
  ['-3', null],
])('minutes: %s', (text, seconds) => {
  expect(readMinutes(text)).toBe(seconds);
});

test.each([
  ['9', 540],
  ['09.30', 570],
  ['24:30', 1470],
  ['9:70', null],
  ['49:00', null],
  ['noon', null],
])('clock: %s', (text, minute) => {
  expect(readClock(text)).toBe(minute);
});

// 350 °F is 176.67 °C and 165 °F is 73.89 °C: °C = (°F − 32) × 5/9, NIST SP 811, Appendix B.9 [M].
test.each([
  ['350', 'F', 176_667],
  ['165 °F', 'F', 73_889],
  ['-18', 'C', -18_000],
  ['hot', 'C', null],
] as const)('degrees: %s in %s', (text, unit, milliC) => {
  expect(readDegrees(text, unit)).toBe(milliC);
});

test('plain numbers: no sign unless asked for, no second comma', () => {
  expect(readNumber('2,5')).toBe(2.5);
  expect(readNumber('-2')).toBeNull();
  expect(readNumber('-2', true)).toBe(-2);
  expect(readNumber('1,234.5')).toBeNull();
  expect(readWhole('3.0')).toBeNull();
  expect(readMoney('2.495')).toBeNull();
  expect(readMoney('2.5')).toBe(250);
});

test('a number outside its limits is told by how much', () => {
  expect(offBy(13, { min: 0, max: 12 })).toBe('13 is 1 more than the most that fits here, 12.');
  expect(offBy(0.1, { min: 0.3, max: 1 })).toBe(
    '0.1 is 0.2 less than the least that fits here, 0.3.',
  );
  expect(offBy(12, { min: 0, max: 12 })).toBeNull();
});

test.each([
  ['-12', -120],
  ['−12 %', -120],
  ['– 2,5', -25],
  ['+3', 30],
  ['0', 0],
  ['12', 120],
  ['1/2', null],
  ['lots', null],
])('a change in percent: %s', (text, permille) => {
  expect(readChange(text)).toBe(permille);
  expect(readPermille('-12')).toBeNull();
});
