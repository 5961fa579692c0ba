import { describe, expect, it } from 'vitest';
import { checkServings } from '#lib/foods/check-servings';
import { cellInterval, firstColumnInterval } from '#lib/foods/label-rounding';
import { standsFor } from '#lib/foods/stands-for';
import { typedVersion, type TypedLabel } from '#lib/foods/typed-label';
import type { Nutrient } from '#lib/foods/nutrients';
import { labelVersion } from './label-version';

describe('what a typed value stands for', () => {
  // Source: 21 CFR 101.9(c)(1) to (c)(7), inverted (derived); the EU guidance on tolerances of 2012 (from memory).
  it.each<['us' | 'eu' | 'asPrinted', Nutrient, string, string]>([
    ['us', 'energyKcal', '0', 'stands for 0–5 kcal'],
    ['us', 'energyKcal', '45', 'stands for 42.5–47.5 kcal'],
    ['us', 'energyKcal', '50', 'stands for 47.5–55 kcal'],
    ['us', 'energyKcal', '60', 'stands for 55–65 kcal'],
    ['us', 'energyKcal', '210 kcal', 'stands for 205–215 kcal'],
    ['us', 'fat', '0', 'stands for 0–0.5 g'],
    ['us', 'fat', '0.5', 'stands for 0.5–0.75 g'],
    ['us', 'fat', '3', 'stands for 2.75–3.25 g'],
    ['us', 'fat', '5', 'stands for 4.75–5.5 g'],
    ['us', 'sodium', '140', 'stands for 137.5–145 mg'],
    ['us', 'cholesterol', '<5', 'stands for 0–5 mg'],
    ['us', 'fibre', '<1', 'stands for 0–1 g'],
    ['us', 'protein', 'less than 1 g', 'stands for 0–1 g'],
    ['eu', 'fat', '2,5', 'stands for 2.45–2.55 g'],
    ['eu', 'protein', '12', 'stands for 11.5–12.5 g'],
    ['eu', 'saturated', '<0.1', 'stands for 0–0.1 g'],
    ['eu', 'salt', '0.01', 'stands for 0.005–0.015 g'],
    ['eu', 'fat', '<0.5 g', 'stands for 0–0.5 g'],
    ['asPrinted', 'fat', '2.50', 'stands for 2.495–2.505 g'],
    ['us', 'fat', 'trace', 'a trace, taken as 0 g'],
    ['us', 'energyKcal', '63', 'on no US panel; taken as 62.5–63.5 kcal'],
    ['us', 'fat', '', 'not on the label'],
    ['us', 'fat', 'some', 'not read: write g as 0, 2.5, <1 or trace'],
  ])('%s %s "%s" %s', (rule, nutrient, typed, words) => {
    expect(standsFor(rule, nutrient, typed).words).toBe(words);
  });
});

describe('two columns, 100 g first', () => {
  const eq = (mantissa: number, scale = 0) => ({ kind: 'eq' as const, mantissa, scale });
  const serving = { massMg: 30_000, volumeMl: null, decimals: 0, text: '', perPack: null };
  const version = labelVersion({
    rule: 'eu',
    basis: 'per100g',
    serving,
    values: { protein: eq(12) },
    secondColumn: { basis: 'serving', values: { protein: eq(36, 1), salt: eq(3, 1) } },
  });

  it('share what both allow: 12 g in 100 g beside 3.6 g in 30 g', () => {
    // 3.55 to 3.65 g in 29.5 to 30.5 g is 11.639 to 12.373 g in 100 g; 12 g stands for 11.5 to 12.5 g.
    const shared = cellInterval(version, 'protein');
    expect(shared?.low).toBeCloseTo((3.55 / 30.5) * 100, 9);
    expect(shared?.high).toBeCloseTo((3.65 / 29.5) * 100, 9);
  });

  it('a value that only the serving states counts per 100 g', () => {
    expect(cellInterval(version, 'salt')?.low).toBeCloseTo((0.295 / 30.5) * 100, 9);
  });

  it('the first says what the second should: 11.5 to 12.5 g in 100 g of 29.5 to 30.5 g', () => {
    expect(firstColumnInterval(version, 'protein')?.low).toBeCloseTo(0.115 * 29.5, 9);
    expect(firstColumnInterval(version, 'protein')?.high).toBeCloseTo(0.125 * 30.5, 9);
  });

  it('share nothing where the serving is unknown', () => {
    const unknown = { ...version, serving: null };
    expect(cellInterval(unknown, 'protein')).toEqual({ low: 11.5, value: 12, high: 12.5 });
    expect(cellInterval(unknown, 'salt')).toBeNull();
  });
});

describe('servings and pack', () => {
  // Source: servings per container, 21 CFR 101.9(b)(8) (from memory): nearest 0.5 from 2 to 5, else whole.
  const codes = (perPack: number | null, net: number | null, drained: number | null = null) => {
    const serving = { massMg: 30_000, volumeMl: null, decimals: 0, text: '', perPack };
    const pack = {
      netMg: net === null ? null : net * 1000,
      netMl: null,
      drainedMg: drained === null ? null : drained * 1000,
    };
    return checkServings(labelVersion({ serving }), pack).map(({ code }) => code);
  };

  it.each<[number | null, number | null, number | null, string[]]>([
    [8, 240, null, []],
    // 7.5 to 8.5 servings of 29.5 to 30.5 g: 221.25 to 259.25 g, and 2 % for the filling.
    [8, 264, null, []],
    [8, 265, null, ['servings-not-pack']],
    [8, 217, null, []],
    [8, 216, null, ['servings-not-pack']],
    // 3.25 to 3.75 servings: 95.9 to 114.4 g.
    [3.5, 105, null, []],
    [3.5, 120, null, ['servings-not-pack']],
    [8, 400, 240, []],
    [null, 454, null, []],
    [8, null, null, []],
  ])('%s servings of 30 g in a pack of %s g, drained %s: %j', (perPack, net, drained, expected) => {
    expect(codes(perPack, net, drained)).toEqual(expected);
  });

  it('by millilitres', () => {
    const serving = { massMg: null, volumeMl: 240, decimals: 0, text: '', perPack: 4 };
    const held = (netMl: number) =>
      checkServings(labelVersion({ serving }), { netMg: null, netMl, drainedMg: null });
    expect(held(946)).toEqual([]);
    expect(held(500)[0]?.message).toContain('the pack holds 500 ml');
  });
});

describe('a label while it is typed', () => {
  const typed = (texts: Record<string, string>, parts: Partial<TypedLabel> = {}) =>
    typedVersion({
      rule: 'us',
      basis: 'serving',
      secondBasis: 'per100g',
      carbBasis: 'total',
      servingG: '30 g',
      servingMl: '',
      perPack: 'about',
      value: (name) => texts[name] ?? '',
      second: () => '',
      ...parts,
    });

  it('leaves out what is blank or not read, and keeps the digits of what is', () => {
    const version = typed({ fat: '2,5', protein: 'x', sodium: '', fibre: '<1' });
    expect(version.values).toEqual({
      fat: { kind: 'eq', mantissa: 25, scale: 1 },
      fibre: { kind: 'lessThan', mantissa: 1, scale: 0 },
    });
    expect(version.serving).toMatchObject({ massMg: 30_000, decimals: 0, perPack: null });
    expect(version.secondColumn).toBeNull();
  });
});
