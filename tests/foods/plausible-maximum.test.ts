import { describe, expect, it } from 'vitest';
import { cellInterval } from '#lib/foods/label-rounding';
import { largestValues } from '#lib/foods/largest-value';
import { LARGEST_IN_SR28 } from '#lib/foods/largest-in-sr28';
import { namesBrand } from '#lib/foods/names-brand';
import type { Nutrient } from '#lib/foods/nutrients';
import { plausibleMaximum } from '#lib/foods/plausible-maximum';
import { loadSr28 } from '#seed/load-sr28';
import { aVersion } from '../support/build';

const sr28 = loadSr28();
const max = (values: Parameters<typeof aVersion>[1], nutrient: Nutrient, more = {}) =>
  plausibleMaximum(aVersion('v', values, more), nutrient)?.max;

describe('the largest values', () => {
  it('are those of USDA SR28 as loaded', () => {
    expect(Object.fromEntries(largestValues(sr28))).toEqual(LARGEST_IN_SR28);
  });

  it('name the food by what it is, without a brand', () => {
    for (const { name } of Object.values(LARGEST_IN_SR28)) expect(namesBrand(name)).toBe(false);
    // Beef brain, 13320: 3,100 mg cholesterol (USDA SR28).
    expect(LARGEST_IN_SR28.cholesterol).toMatchObject({ value: 3100, sourceNo: '13320' });
  });
});

describe('what 100 g can hold at most', () => {
  it.each([
    // 902 kcal is the most in USDA SR28 (beef tallow); fat 37 kJ a gram, Regulation (EU) 1169/2011, Annex XIV.
    ['energyKcal', 902],
    ['energyKj', 3700],
    // Sodium 22.990 of sodium chloride 58.443 (standard atomic weights).
    ['sodium', 39_340],
    ['salt', 100],
    ['fat', 100],
  ] as const)('of %s is %d where nothing is known of the food', (nutrient, most) => {
    expect(max({}, nutrient)).toBe(most);
  });

  it('of what weighs is what the known leaves of 100 g, each at its least', () => {
    // 100 − 9.995 − 5.295 − 24.95
    expect(max({ water: '10.00', protein: '5.30', fat: '25.0' }, 'carbohydrate')).toBeCloseTo(
      59.76,
      10,
    );
    expect(max({ water: '60.00', carbohydrate: '70.00' }, 'fat')).toBe(0);
  });

  it('of a part is its whole at the most', () => {
    expect(max({ fat: '2.00' }, 'saturated')).toBe(2.005);
    expect(max({ carbohydrate: '20.0' }, 'sugars')).toBe(20.05);
    expect(max({ carbohydrate: '20.0', sugars: '4.0' }, 'addedSugars')).toBe(4.05);
    expect(max({ carbohydrate: '20.0' }, 'addedSugars')).toBe(20.05);
    expect(max({ protein: '40' }, 'saturated')).toBe(60.5);
  });

  it('of fibre is the carbohydrate where that includes it, else what is left of 100 g', () => {
    expect(max({ carbohydrate: '20.0' }, 'fibre')).toBe(20.05);
    expect(max({ carbohydrate: '20.0' }, 'fibre', { carbBasis: 'available' })).toBe(80.05);
  });

  it('of a label is worked out through its serving', () => {
    // US label: 6 g carbohydrate (5.5 to 6.5) in 170 g (169.5 to 170.5), 21 CFR 101.9(c)(6), (b)(7).
    const serving = { massMg: 170_000, volumeMl: null, decimals: 0, text: '', perPack: null };
    const label = { basis: 'serving', serving, rule: 'us' };
    expect(max({ carbohydrate: '6' }, 'sugars', label)).toBeCloseTo(650 / 169.5, 10);
  });

  it('of vitamins and minerals is the largest of the table, and of nothing else', () => {
    expect(max({}, 'vitaminK')).toBe(LARGEST_IN_SR28.vitaminK?.value);
    expect(max({}, 'netCarbohydrate')).toBeUndefined();
  });

  it('holds what USDA SR28 states, parts aside that the table itself prints above their whole', () => {
    const parts = ['fibre', 'saturated', 'monounsaturated', 'polyunsaturated'] as const;
    const above = parts.flatMap((nutrient) =>
      sr28.flatMap(({ version }) => {
        const stated = cellInterval(version, nutrient);
        const most = plausibleMaximum(version, nutrient)?.max ?? Infinity;
        return stated && stated.low > most ? [`${version.sourceNo} ${nutrient}`] : [];
      }),
    );
    expect(above).toEqual([
      '13349 monounsaturated',
      '42270 monounsaturated',
      '03301 polyunsaturated',
      '11939 polyunsaturated',
      '14268 polyunsaturated',
      '42270 polyunsaturated',
    ]);
    for (const nutrient of ['energyKcal', 'sodium', 'cholesterol', 'vitaminC'] as const) {
      for (const { version } of sr28) {
        const stated = cellInterval(version, nutrient)?.value ?? 0;
        expect(stated).toBeLessThanOrEqual(plausibleMaximum(version, nutrient)?.max ?? -1);
      }
    }
  });
});
