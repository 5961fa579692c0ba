import { describe, expect, it } from 'vitest';
import { allowance } from '#lib/figures/allowance';
import { episodeFigures } from '#lib/figures/episode-figures';
import type { NumberScope } from '#lib/figures/published-numbers';
import type { FoodVersion } from '#lib/foods/food';
import type { Nutrient } from '#lib/foods/nutrients';
import { aDish, aFile, aFood, aLine, aRecipe, grams } from '../support/build';

const whole: NumberScope = { kind: 'whole', segmentId: 'd' };
const one = { low: { num: 1, den: 1 }, high: { num: 1, den: 1 } };
const serving = { massMg: 100_000, volumeMl: null, decimals: 0, text: '', perPack: null };

function label(values: Partial<Record<Nutrient, string>>, more: Partial<FoodVersion> = {}) {
  const version = { basis: 'serving', rule: 'us', serving, ...more } as const;
  return aFood('label', values, { kind: 'label' }, version);
}

/** One serving of a label, alone or with what else is given. */
function ofOne(
  food: ReturnType<typeof label>,
  nutrient: Nutrient,
  others: Parameters<typeof aRecipe>[1] = [],
  foods: (typeof food)[] = [],
) {
  const line = aLine('one serving', 'label', { quantity: one, unit: 'serving' });
  const file = aFile([aDish('d', aRecipe('r', [line, ...others]))], [food, ...foods]);
  return { found: allowance(file, whole, nutrient), file };
}

describe('what a US label may lawfully be off', () => {
  // 21 CFR 101.9(g)(5): 120 % of declared; (g)(4)(ii), from memory: 80 %. Declared 200 kcal: 240 passes and 241
  // fails; protein 10 g: 8.0 passes and 7.9 fails; sodium 300 mg: 361 fails.
  it.each([
    ['energyKcal', '200', 'atMost', 240, 241],
    ['sodium', '300', 'atMost', 360, 361],
    ['fat', '10', 'atMost', 12, 12.1],
    ['sugars', '5', 'atMost', 6, 6.1],
    ['protein', '10', 'atLeast', 8, 7.9],
    ['carbohydrate', '30', 'atLeast', 24, 23.9],
    ['fibre', '5', 'atLeast', 4, 3.9],
  ] as const)('%s declared %s: %s %d', (nutrient, declared, side, passes, fails) => {
    const { found } = ofOne(label({ [nutrient]: declared }), nutrient);
    expect(found).toMatchObject({ side, labels: ['label'], otherLabels: [] });
    expect(found?.bound).toBeCloseTo(passes, 6);
    const within = (amount: number) =>
      side === 'atMost' ? amount <= (found?.bound ?? 0) : amount >= (found?.bound ?? 0);
    expect([within(passes), within(fails)]).toEqual([true, false]);
  });

  it('is never tighter than the rounding: a declared 0 may be what rounds to it', () => {
    // 21 CFR 101.9(c)(1): below 5 kcal may be declared 0.
    expect(ofOne(label({ energyKcal: '0' }), 'energyKcal').found?.bound).toBeCloseTo(5, 6);
  });

  it('stretches only what rests on labels; a table counts at its hard bound', () => {
    const oats = aFood('oats', { energyKcal: '379' });
    const { found } = ofOne(
      label({ energyKcal: '200' }),
      'energyKcal',
      [grams('oats', 'oats', 100)],
      [oats],
    );
    expect(found?.bound).toBeCloseTo(240 + 1.005 * 379.5, 6);
  });

  it('says nothing where there is no US label, and names labels of another rule', () => {
    const eu = label({ energyKcal: '200' }, { rule: 'eu' });
    expect(ofOne(eu, 'energyKcal').found).toBeNull();
    const other = { ...eu, id: 'eu', name: 'eu', version: { ...eu.version, id: 'eu-v1' } };
    const line = aLine('more', 'eu', { quantity: one, unit: 'serving' });
    const { found } = ofOne(label({ energyKcal: '100' }), 'energyKcal', [line], [other]);
    expect(found).toMatchObject({ labels: ['label'], otherLabels: ['eu'] });
  });

  it('has no number where a label is limited on both sides, or something is missing on its side', () => {
    // Available carbohydrate is total less fibre: the law limits each from below.
    const file = ofOne(label({ carbohydrate: '30', fibre: '5' }), 'carbohydrate').file;
    const eu = { ...file, episode: { ...file.episode, region: 'EU' as const } };
    expect(allowance(eu, whole, 'carbohydrate')).toMatchObject({ side: null, bound: null });
    const blank = aFood('blank', { protein: '' });
    const lines = [grams('blank', 'blank', 10)];
    expect(ofOne(label({ energyKcal: '200' }), 'energyKcal', lines, [blank]).found).toMatchObject({
      side: 'atMost',
      bound: null,
    });
  });

  it('changes nothing in the figure itself', () => {
    const { file } = ofOne(label({ energyKcal: '200' }), 'energyKcal');
    // 21 CFR 101.9(c)(1): 200 kcal stand for 195 to 205.
    expect(episodeFigures(file).dishes[0]?.whole.energyKcal?.high).toBeCloseTo(205, 6);
  });
});
