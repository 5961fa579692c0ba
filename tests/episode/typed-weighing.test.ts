import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readWeighing, weighingWords, type TypedWeighing } from '#lib/episode/typed-weighing';
import { readScaleGrams, scaleGramsText } from '#lib/units/scale-grams';

const typed = (more: Partial<TypedWeighing>): TypedWeighing => ({
  of: 'raw',
  way: 'direct',
  nowMg: 410_000,
  containerMg: 0,
  otherMg: null,
  beforeMg: null,
  ...more,
});
const value = (more: Partial<TypedWeighing>) => {
  const read = readWeighing(typed(more));
  return read.ok ? read.value : read.problems.map(({ path }) => path);
};
const kept = (grossMg: number, tareMg: number, method: 'direct' | 'difference') => ({
  waits: false,
  grossMg,
  tareMg,
  method,
});

describe('what was typed off a scale', () => {
  it('straight is less its container, which must leave something', () => {
    expect(value({ containerMg: 252_000 })).toEqual(kept(410_000, 252_000, 'direct'));
    expect(value({ containerMg: 410_000 })).toEqual(['tare']);
    expect(value({ nowMg: 0 })).toEqual(['gross']);
  });

  it('on top of what is on the scale is what it adds, and never less', () => {
    const way = 'total' as const;
    expect(value({ way, beforeMg: 252_000 })).toEqual(kept(410_000, 252_000, 'direct'));
    expect(value({ way, beforeMg: 410_000 })).toEqual(['gross']);
    expect(value({ way, beforeMg: null })).toEqual(['gross']);
    expect(weighingWords(typed({ way, beforeMg: 252_000 }))).toBe(
      '410 g on the scale, 158 g more than before',
    );
  });

  it('before and after: what was taken from a jar, in one go or in two', () => {
    const way = 'difference' as const;
    const inOneGo = value({ way, otherMg: 252_000 });
    expect(inOneGo).toEqual(kept(410_000, 252_000, 'difference'));
    expect(value({ way })).toMatchObject({ waits: true, grossMg: 410_000, tareMg: 0 });
    expect(value({ way, nowMg: 252_000, beforeMg: 410_000 })).toEqual(inOneGo);
    // Scraped clean, on a scale that was zeroed with the jar on it.
    expect(value({ way, nowMg: 0, beforeMg: 410_000 })).toEqual(kept(410_000, 0, 'difference'));
    expect(value({ way, otherMg: 500_000 })).toEqual(['after']);
    expect(value({ way, nowMg: 500_000, beforeMg: 410_000 })).toEqual(['gross']);
  });

  it('what is left in a pan, and a finished dish, are full less empty', () => {
    for (const of of ['left', 'finished'] as const) {
      const way = 'difference' as const;
      expect(value({ of, way, otherMg: 400_000 })).toEqual(kept(410_000, 400_000, 'difference'));
      expect(value({ of, way, beforeMg: 400_000 })).toEqual(kept(410_000, 400_000, 'difference'));
      expect(value({ of, way, beforeMg: 420_000 })).toEqual(['gross']);
    }
  });

  it('weighs more than nothing whenever it is taken', () => {
    const mg = fc.integer({ min: 0, max: 2_000_000 });
    fc.assert(
      fc.property(
        fc.record({
          of: fc.constantFrom('raw', 'cooked', 'left', 'finished'),
          way: fc.constantFrom('direct', 'difference', 'total'),
          nowMg: mg,
          containerMg: mg,
          otherMg: fc.option(mg),
          beforeMg: fc.option(mg),
        }),
        (given) => {
          const read = readWeighing(given);
          if (read.ok) expect(read.value.grossMg).toBeGreaterThan(read.value.tareMg);
          else expect(read.problems[0]?.message).toMatch(/\.$/);
        },
      ),
    );
  });

  it('reads one number of grams and nothing else, and prints it the same', () => {
    expect(readScaleGrams('252.5 g')).toBe(252_500);
    expect(readScaleGrams('252,5')).toBe(252_500);
    for (const text of ['', '1,252', '-3', '20–30', '20 ± 7', '1e3', '0.0001', '1000001', 'NaN']) {
      expect(readScaleGrams(text), text).toBeNull();
    }
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000_000 }), (mg) => {
        expect(readScaleGrams(scaleGramsText(mg))).toBe(mg);
      }),
    );
  });
});
