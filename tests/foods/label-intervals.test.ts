import { describe, expect, it } from 'vitest';
import { labelInterval, servingInterval } from '#lib/foods/label-rounding';
import type { Nutrient } from '#lib/foods/nutrients';
import { cell } from '../support/build';
import { labelVersion } from './label-version';

const WHOLE: readonly Nutrient[] = ['carbohydrate', 'fibre', 'sugars', 'addedSugars', 'protein'];
const FATS: readonly Nutrient[] = [
  'fat',
  'saturated',
  'transFat',
  'polyunsaturated',
  'monounsaturated',
];

function ends(rule: 'us' | 'eu', nutrient: Nutrient, text: string) {
  const interval = labelInterval(rule, nutrient, cell(text));
  if (!interval) throw new Error(`${nutrient} "${text}" stands for nothing`);
  return [interval.low, interval.high].map((end) => Math.round(end * 1e9) / 1e9);
}

/** The multiples of a step from one number to another, both counted. */
function grid(from: number, to: number, step: number): number[] {
  return Array.from({ length: Math.round((to - from) / step) + 1 }, (_, n) => from + n * step);
}

// 21 CFR 101.9(c)(1) to (c)(7), turned round (derived): closed, with both ties and every "may". The 2 mg limit of
// cholesterol is from memory, section number given.
describe('every number that a US panel may print stands for the amounts that its rule rounds to it', () => {
  it('calories: by 5 up to 50, by 10 above, and 50 where the two grids meet', () => {
    expect(ends('us', 'energyKcal', '0')).toEqual([0, 5]);
    for (const n of grid(5, 45, 5)) {
      expect(ends('us', 'energyKcal', String(n))).toEqual([n - 2.5, n + 2.5]);
    }
    expect(ends('us', 'energyKcal', '50')).toEqual([47.5, 55]);
    for (const n of grid(60, 2000, 10)) {
      expect(ends('us', 'energyKcal', String(n))).toEqual([n - 5, n + 5]);
    }
  });

  it.each(FATS)('%s: nothing below 0.5 g, by 0.5 g up to 5 g, by 1 g above', (nutrient) => {
    expect(ends('us', nutrient, '0')).toEqual([0, 0.5]);
    expect(ends('us', nutrient, '0.5')).toEqual([0.5, 0.75]);
    for (const n of grid(1, 4.5, 0.5)) {
      expect(ends('us', nutrient, n.toFixed(1))).toEqual([n - 0.25, n + 0.25]);
    }
    expect(ends('us', nutrient, '5')).toEqual([4.75, 5.5]);
    for (const n of grid(6, 100, 1)) {
      expect(ends('us', nutrient, String(n))).toEqual([n - 0.5, n + 0.5]);
    }
  });

  it('sodium: nothing below 5 mg, by 5 mg up to 140 mg, by 10 mg above', () => {
    expect(ends('us', 'sodium', '0')).toEqual([0, 5]);
    expect(ends('us', 'sodium', '5')).toEqual([5, 7.5]);
    for (const n of grid(10, 135, 5)) {
      expect(ends('us', 'sodium', String(n))).toEqual([n - 2.5, n + 2.5]);
    }
    expect(ends('us', 'sodium', '140')).toEqual([137.5, 145]);
    for (const n of grid(150, 2500, 10)) {
      expect(ends('us', 'sodium', String(n))).toEqual([n - 5, n + 5]);
    }
  });

  it('cholesterol: by 5 mg, and "less than 5" from 0', () => {
    // Below 2 mg must read 0; from 2 to 2.5 mg may, where the words "less than 5" are not used.
    expect(ends('us', 'cholesterol', '0')).toEqual([0, 2.5]);
    expect(ends('us', 'cholesterol', '<5')).toEqual([0, 5]);
    for (const n of grid(5, 600, 5)) {
      expect(ends('us', 'cholesterol', String(n))).toEqual([n - 2.5, n + 2.5]);
    }
  });

  it.each(WHOLE)('%s: by 1 g at every amount, and "less than 1" from 0', (nutrient) => {
    expect(ends('us', nutrient, '0')).toEqual([0, 0.5]);
    expect(ends('us', nutrient, '<1')).toEqual([0, 1]);
    for (const n of grid(1, 120, 1)) {
      expect(ends('us', nutrient, String(n))).toEqual([n - 0.5, n + 0.5]);
    }
  });

  it.each<[Nutrient, number, number]>([
    ['energyKcal', 2000, 10],
    ['fat', 100, 1],
    ['sodium', 2500, 10],
    ['cholesterol', 600, 5],
    ['protein', 120, 1],
  ])('%s: neighbours on the panel leave no gap and share only their tie', (nutrient, to, step) => {
    const all = [...grid(0, 50, 0.5), ...grid(0, Math.min(140, to), 5), ...grid(0, to, step)];
    const printed = [...new Set(all)]
      .sort((a, b) => a - b)
      .filter((n) => {
        if (nutrient === 'energyKcal') return n % (n <= 50 ? 5 : 10) === 0;
        if (nutrient === 'fat') return n <= 5 || n % 1 === 0;
        if (nutrient === 'sodium') return n % (n <= 140 ? 5 : 10) === 0;
        return n % step === 0;
      });
    const intervals = printed.map((n) => ends('us', nutrient, String(n)));
    intervals.slice(1).forEach(([low], index) => {
      const before = intervals[index]?.[1];
      // Calories 0 and 5 overlap, since below 5 either may be printed.
      if (nutrient === 'energyKcal' && index === 0) expect([low, before]).toEqual([2.5, 5]);
      else expect(low).toBe(before);
    });
    expect(intervals.length).toBeGreaterThan(60);
  });
});

// 21 CFR 101.9(b)(7) (from memory, section number given): nearest 1 g; 0.5 g from 2 to 5 g; 0.1 g below 2 g.
describe('serving grams of a US panel', () => {
  it.each([
    [0.5, 1, 0.45, 0.55],
    [1.9, 1, 1.85, 1.95],
    [2, 0, 1.95, 2.25],
    [2.5, 1, 2.25, 2.75],
    [4.5, 1, 4.25, 4.75],
    [5, 0, 4.75, 5.5],
    [28, 0, 27.5, 28.5],
    [170, 0, 169.5, 170.5],
  ])('%d g stand for %d (decimals), %d to %d g', (g, decimals, low, high) => {
    const serving = { massMg: g * 1000, volumeMl: null, decimals, text: '', perPack: null };
    const interval = servingInterval(labelVersion({ rule: 'us', serving }));
    expect(interval?.low).toBeCloseTo(low * 1000, 6);
    expect(interval?.high).toBeCloseTo(high * 1000, 6);
  });
});

// EU guidance on tolerances, December 2012, rounding table (from memory, partly seen in secondary copies).
describe('every number that an EU panel may print', () => {
  it.each<Nutrient>(['energyKj', 'energyKcal'])('%s: by 1', (nutrient) => {
    expect(ends('eu', nutrient, '0')).toEqual([0, 0.5]);
    for (const n of [1, 9, 10, 99, 578, 3700]) {
      expect(ends('eu', nutrient, String(n))).toEqual([n - 0.5, n + 0.5]);
    }
  });

  it.each<[Nutrient, number]>([
    ['fat', 0.5],
    ['carbohydrate', 0.5],
    ['sugars', 0.5],
    ['protein', 0.5],
    ['fibre', 0.5],
    ['saturated', 0.1],
    ['monounsaturated', 0.1],
    ['polyunsaturated', 0.1],
  ])('%s: up to %d g as 0, by 0.1 g below 10 g, by 1 g from there', (nutrient, zero) => {
    expect(ends('eu', nutrient, '0')).toEqual([0, zero]);
    expect(ends('eu', nutrient, `<${zero}`)).toEqual([0, zero]);
    for (const n of grid(6, 99, 1).map((tenths) => tenths / 10)) {
      const [low, high] = ends('eu', nutrient, n.toFixed(1));
      expect(low).toBeCloseTo(n - 0.05, 9);
      expect(high).toBeCloseTo(n + 0.05, 9);
    }
    expect(ends('eu', nutrient, '10')).toEqual([9.95, 10.5]);
    for (const n of grid(11, 100, 1)) {
      expect(ends('eu', nutrient, String(n))).toEqual([n - 0.5, n + 0.5]);
    }
  });

  it('salt: up to 0.0125 g as 0, by 0.01 g below 1 g, by 0.1 g from there', () => {
    expect(ends('eu', 'salt', '0')).toEqual([0, 0.0125]);
    expect(ends('eu', 'salt', '<0.01')).toEqual([0, 0.0125]);
    for (const n of grid(2, 99, 1).map((hundredths) => hundredths / 100)) {
      const [low, high] = ends('eu', 'salt', n.toFixed(2));
      expect(low).toBeCloseTo(n - 0.005, 9);
      expect(high).toBeCloseTo(n + 0.005, 9);
    }
    expect(ends('eu', 'salt', '1.0')).toEqual([0.995, 1.05]);
    for (const n of grid(11, 60, 1).map((tenths) => tenths / 10)) {
      const [low, high] = ends('eu', 'salt', n.toFixed(1));
      expect(low).toBeCloseTo(n - 0.05, 9);
      expect(high).toBeCloseTo(n + 0.05, 9);
    }
  });
});
