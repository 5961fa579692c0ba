import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import {
  LABEL_MILLILITRES,
  LABEL_OUNCE_G,
  fromFahrenheit,
  toFahrenheit,
  toMilligrams,
  toMillilitres,
} from '#lib/units/units';

// NIST SP 811, Appendix B, and NIST Handbook 44, Appendix C.
describe('exact units', () => {
  it.each([
    ['tsp', '4.92892159375'],
    ['tbsp', '14.78676478125'],
    ['flOz', '29.5735295625'],
    ['cup', '236.5882365'],
    ['pint', '473.176473'],
    ['quart', '946.352946'],
    ['gallon', '3785.411784'],
  ] as const)('one %s is %s ml', (unit, millilitres) => {
    expect(toMillilitres(new Fraction(1), unit)).toBe(Number(millilitres));
  });

  it('derives the gallon from 231 cubic inches of 2.54 cm', () => {
    const cubicInchMl = new Fraction('2.54').pow(3) as Fraction;
    expect(cubicInchMl.mul(231).equals(new Fraction('3785.411784'))).toBe(true);
    expect(toMillilitres(new Fraction(1), 'gallon')).toBe(cubicInchMl.mul(231).valueOf());
  });

  it.each([
    [3, 'tsp', 1, 'tbsp'],
    [16, 'tbsp', 1, 'cup'],
    [2, 'flOz', '0.25', 'cup'],
    [4, 'quart', 1, 'gallon'],
  ] as const)('%s %s make %s %s', (a, unitA, b, unitB) => {
    expect(toMillilitres(new Fraction(a), unitA)).toBe(toMillilitres(new Fraction(b), unitB));
  });

  it('weighs 12 oz at 340.194 g and 1.5 lb at 680.389 g', () => {
    expect(toMilligrams(new Fraction(12), 'oz') / 1000).toBeCloseTo(340.194, 3);
    expect(toMilligrams(new Fraction('1.5'), 'lb') / 1000).toBeCloseTo(680.389, 3);
    expect(toMilligrams(new Fraction(16), 'oz')).toBe(toMilligrams(new Fraction(1), 'lb'));
  });

  it('takes label units from 21 CFR 101.9(b)(5)(viii)', () => {
    expect(LABEL_OUNCE_G).toBe(28);
    expect(LABEL_MILLILITRES).toEqual({ tsp: 5, tbsp: 15, flOz: 30, cup: 240 });
    expect(toMillilitres(new Fraction(8), 'flOz', true)).toBe(240);
    expect(toMillilitres(new Fraction(8), 'flOz')).toBeCloseTo(236.588, 3);
  });

  it('converts oven degrees: 350 °F, 425 °F and 180 °C', () => {
    expect(fromFahrenheit(350) / 1000).toBeCloseTo(176.67, 2);
    expect(fromFahrenheit(425) / 1000).toBeCloseTo(218.33, 2);
    expect(toFahrenheit(180_000)).toBe(356);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 600 }), (f) => {
        expect(toFahrenheit(fromFahrenheit(f))).toBeCloseTo(f, 2);
      }),
    );
  });
});
