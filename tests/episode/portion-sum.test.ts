import { describe, expect, it } from 'vitest';
import { plateEaten, typedGrams } from '#lib/episode/plate-eaten';
import { portionSum } from '#lib/episode/portion-sum';
import type { Portion } from '#lib/episode/recipe-schema';

const byGrams = (g: number): Portion => ({
  id: `${g}`,
  kind: 'mass',
  name: `${g} g`,
  massMg: g * 1000,
});
const byEye = (num: number, den: number): Portion => ({
  id: `${num}/${den}`,
  kind: 'byEye',
  name: `${num}/${den}`,
  share: { num, den },
  permille: 150,
});

describe('unequal portions together', () => {
  it('are held by grams against what the finished dish weighs', () => {
    const two = [byGrams(200), byGrams(300)];
    expect(portionSum(two, 600_000).byGrams).toEqual({ count: 2, mg: 500_000, leftMg: 100_000 });
    expect(portionSum(two, 500_000).byGrams?.leftMg).toBe(0);
    expect(portionSum(two, 450_000).byGrams?.leftMg).toBe(-50_000);
    expect(portionSum(two, null).byGrams?.leftMg).toBeNull();
  });

  it('are held by eye against all of it, exactly: three thirds are one', () => {
    const thirds = [byEye(1, 3), byEye(1, 3), byEye(2, 6)];
    expect(portionSum(thirds, null).byEye).toEqual({
      count: 3,
      share: { num: 1, den: 1 },
      left: { num: 0, den: 1 },
    });
    expect(portionSum([byEye(1, 2), byEye(2, 3)], null).byEye?.left).toEqual({ num: -1, den: 6 });
  });

  it('are none where portions are equal: each is one of so many by definition', () => {
    const equal: Portion = { id: 'e', kind: 'count', name: 'e', of: 4 };
    expect(portionSum([equal], 600_000)).toEqual({ byGrams: null, byEye: null });
  });
});

describe('grams eaten', () => {
  it('are the difference of two readings, ± one step of the scale', () => {
    expect(plateEaten(812_000, 460_000, 1000)).toEqual({
      lowMg: 351_000,
      valueMg: 352_000,
      highMg: 353_000,
    });
    expect(plateEaten(10_500, 10_000, 1000)).toEqual({ lowMg: 0, valueMg: 500, highMg: 1500 });
    expect(plateEaten(460_000, 460_000, 1000)).toBeNull();
    expect(plateEaten(460_000, 812_000, 1000)).toBeNull();
  });

  it('stand for ± half a step where they were typed, and for their range where they have one', () => {
    const plain = { lowMg: 350_000, valueMg: 350_000, highMg: 350_000 };
    expect(typedGrams(plain, 1000)).toEqual({ lowMg: 349_500, valueMg: 350_000, highMg: 350_500 });
    const range = { lowMg: 340_000, valueMg: 350_000, highMg: 360_000 };
    expect(typedGrams(range, 1000)).toEqual(range);
  });
});
