import { describe, expect, it } from 'vitest';
import { changeCount, compareVersions } from '#lib/foods/compare-versions';
import type { FoodVersion, Values } from '#lib/foods/food';
import { SALT } from '../store/fixture';

const version = (seq: number, values: Values, over: Partial<FoodVersion> = {}): FoodVersion => ({
  ...SALT.version,
  id: `v-${seq}`,
  seq,
  values,
  ...over,
});
const eq = (mantissa: number, scale: number) => ({ kind: 'eq', mantissa, scale }) as const;

const rowOf = (versions: readonly FoodVersion[], label: string) =>
  compareVersions(versions).find((row) => row.label === label);

describe('readings of one food beside each other', () => {
  it('say of each digit whether the reading before had it', () => {
    const versions = [
      version(3, { protein: eq(50, 2), fat: eq(3, 0) }),
      version(2, { protein: eq(5, 1), fat: eq(3, 0), sugars: eq(1, 0) }),
      version(1, { protein: eq(5, 1) }),
    ];
    const against = (label: string) => rowOf(versions, label)?.cells.map((cell) => cell.against);
    expect(against('protein')).toEqual(['changed', 'same', null]);
    expect(against('fat')).toEqual(['same', 'changed', null]);
    expect(rowOf(versions, 'sugars')?.cells.map(({ text }) => text)).toEqual([
      'no value',
      '1',
      'no value',
    ]);
    expect(against('sugars')).toEqual(['changed', 'changed', null]);
    expect(changeCount(compareVersions(versions), 0)).toBe(2);
    expect(compareVersions(versions).some(({ label }) => label === 'sodium')).toBe(false);
  });

  it('do not compare digits of different amounts, nor carbohydrate with fibre and without', () => {
    const serving = { massMg: 30_000, volumeMl: null, decimals: 0, text: '', perPack: null };
    const versions = [
      version(3, { fat: eq(3, 0) }, { basis: 'serving', serving }),
      version(2, { fat: eq(3, 0) }, { basis: 'serving', serving: { ...serving, massMg: 28_000 } }),
      version(1, { fat: eq(3, 0) }),
    ];
    expect(rowOf(versions, 'fat')?.cells.map(({ against }) => against)).toEqual([
      'apart',
      'apart',
      null,
    ]);
    expect(rowOf(versions, 'stated for')?.cells.map(({ text }) => text)).toEqual([
      'per serving, 30 g',
      'per serving, 28 g',
      'per 100 g',
    ]);
    const bases = [
      version(2, { carbohydrate: eq(12, 0), fat: eq(1, 0) }, { carbBasis: 'available' }),
      version(1, { carbohydrate: eq(12, 0), fat: eq(1, 0) }),
    ];
    expect(rowOf(bases, 'carbohydrate')?.cells[0]?.against).toBe('apart');
    expect(rowOf(bases, 'fat')?.cells[0]?.against).toBe('same');
    expect(rowOf(bases, 'fibre')?.cells[0]?.against).toBe('changed');
  });
});
