import { describe, expect, it, test } from 'vitest';
import { judgeClaimWord } from '#lib/claims/claim-words/judge-claim-word';
import { judgeThreshold } from '#lib/claims/claim-words/judge-condition';
import type { Figure } from '#lib/figures/figure';
import { aPlainDish, said } from './dishes';

// Composition in 100 g from USDA SR28; energy by the factors of Regulation (EU) 1169/2011, Annex XIV, where it is the Union's.
describe('foods of the reference table by both rules', () => {
  it('roasted chicken breast: 79 % of its energy is protein, high protein in the Union (Annex)', () => {
    const chicken = aPlainDish(
      { energyKcal: '156.2', protein: '31.02' },
      { region: 'EU', finished: null },
    );
    const told = judgeClaimWord(said('high protein', 'high', 'protein'), chicken);
    expect(told.verdict).toBe('agrees');
    expect(told.rows[0]?.has).toMatch(/^79(\.4)? %/);
  });

  it('whole egg: 36 % of its energy is protein, high protein in the Union (Annex)', () => {
    const egg = aPlainDish({ energyKcal: '138.7', protein: '12.56' }, { region: 'EU' });
    const told = judgeClaimWord(said('high protein', 'high', 'protein'), egg);
    expect(told.verdict).toBe('agrees');
    expect(told.rows[0]?.has).toMatch(/^36(\.2)? %/);
  });

  it('whole egg: 6.28 g of protein in 50 g before PDCAAS, a good source if all counts and not high (101.54)', () => {
    const egg = (proteinPermille: number | null) =>
      aPlainDish(
        { energyKcal: '143', protein: '12.56' },
        { claims: { raccMg: 50_000, proteinPermille } },
      );
    const high = said('high protein', 'high', 'protein');
    const source = said('good source of protein', 'source', 'protein');
    expect(judgeClaimWord(high, egg(null)).verdict).toBe('off');
    expect(judgeClaimWord(source, egg(null)).verdict).toBe('unknown');
    expect(judgeClaimWord(source, egg(1000)).verdict).toBe('agrees');
    expect(judgeClaimWord(high, egg(1000))).toMatchObject({
      verdict: 'off',
      sayInstead: 'good source of protein',
    });
  });

  it('raw zucchini: 14 kcal in 85 g, low calorie (101.60(b)(2)); 17 kcal in 100 g, low energy (Annex)', () => {
    const low = said('low calorie', 'low', 'energyKcal');
    const us = aPlainDish({ energyKcal: '17' }, { claims: { raccMg: 85_000 } });
    expect(judgeClaimWord(low, us).verdict).toBe('agrees');
    expect(judgeClaimWord(low, us).why).toContain('14 kcal');
    expect(judgeClaimWord(low, aPlainDish({ energyKcal: '17' }, { region: 'EU' })).verdict).toBe(
      'agrees',
    );
  });

  it('a casserole of 115 kcal in 100 g: low calorie as a meal (101.60(b)(3)), not low energy (Annex)', () => {
    const low = said('low calorie', 'low', 'energyKcal');
    const us = aPlainDish({ energyKcal: '115' }, { claims: { meal: true } });
    expect(judgeClaimWord(low, us).verdict).toBe('agrees');
    const eu = judgeClaimWord(low, aPlainDish({ energyKcal: '115' }, { region: 'EU' }));
    expect(eu).toMatchObject({ verdict: 'off', difference: '75 kcal more than it allows' });
  });

  it('cheddar: 196 mg of sodium and 10.0 g of fat in 30 g, neither low in sodium nor in fat (101.61(b)(4), 101.62(b)(2))', () => {
    const cheddar = aPlainDish(
      { energyKcal: '404', sodium: '653', fat: '33.31' },
      { claims: { raccMg: 30_000 } },
    );
    const sodium = judgeClaimWord(said('low sodium', 'low', 'sodium'), cheddar);
    expect(sodium.verdict).toBe('off');
    expect(sodium.rows[0]?.has).toMatch(/^196/);
    const fat = judgeClaimWord(said('low fat', 'low', 'fat'), cheddar);
    expect(fat.verdict).toBe('off');
    expect(fat.rows[0]?.has).toMatch(/^10(\.0)? g/);
  });

  it('boiled black beans: 8.7 g of fibre in 100 g, high fibre (Annex); 11.3 g in 130 g, 40 % of the Daily Value, high (101.54(b))', () => {
    const high = said('high fibre', 'high', 'fibre');
    const eu = aPlainDish({ energyKcal: '132', fibre: '8.7' }, { region: 'EU' });
    expect(judgeClaimWord(high, eu).verdict).toBe('agrees');
    const us = judgeClaimWord(high, aPlainDish({ fibre: '8.7' }, { claims: { raccMg: 130_000 } }));
    expect(us.verdict).toBe('agrees');
    expect(us.rows[0]?.has).toMatch(/^11\.3 g/);
  });
});

type Vector = readonly [
  rule: string,
  words: string,
  claim: Parameters<typeof said>[1],
  nutrient: Parameters<typeof said>[2],
  values: Parameters<typeof aPlainDish>[0],
  made: Parameters<typeof aPlainDish>[1],
  verdict: string,
];

const by = (raccMg: number) => ({ claims: { raccMg } });
const MEAL = { claims: { meal: true }, portions: 4 };
const EU = { region: 'EU' } as const;

// Thresholds at their edges: values in 100 g with four decimals, so that half a printed unit is next to nothing.
const VECTORS: readonly Vector[] = [
  [
    '101.54(b)(1), 20 % of 28 g',
    'high in fiber',
    'high',
    'fibre',
    { fibre: '5.6001' },
    by(100_000),
    'agrees',
  ],
  [
    '101.54(b)(1), 20 % of 28 g',
    'high in fiber',
    'high',
    'fibre',
    { fibre: '5.5990' },
    by(100_000),
    'off',
  ],
  [
    '101.54(c)(1), 10 % of 1300 mg',
    'good source of calcium',
    'source',
    'calcium',
    { calcium: '130.01' },
    by(100_000),
    'agrees',
  ],
  [
    '101.54(c)(1), 10 % of 1300 mg',
    'good source of calcium',
    'source',
    'calcium',
    { calcium: '129.90' },
    by(100_000),
    'off',
  ],
  [
    '101.60(b)(1), less than 5 kcal',
    'calorie free',
    'free',
    'energyKcal',
    { energyKcal: '4.9900' },
    { claims: { raccMg: 100_000 }, portions: 10 },
    'agrees',
  ],
  [
    '101.60(b)(1), less than 5 kcal',
    'calorie free',
    'free',
    'energyKcal',
    { energyKcal: '5.0010' },
    { claims: { raccMg: 100_000 }, portions: 10 },
    'off',
  ],
  [
    '101.60(b)(1), of a portion too',
    'calorie free',
    'free',
    'energyKcal',
    { energyKcal: '4.9900' },
    { claims: { raccMg: 100_000 }, portions: 5 },
    'off',
  ],
  [
    '101.60(b)(2), 40 kcal',
    'low calorie',
    'low',
    'energyKcal',
    { energyKcal: '39.990' },
    by(100_000),
    'agrees',
  ],
  [
    '101.60(b)(2), 40 kcal',
    'low calorie',
    'low',
    'energyKcal',
    { energyKcal: '40.100' },
    by(100_000),
    'off',
  ],
  [
    '101.60(b)(2), of 50 g where the amount is small',
    'low calorie',
    'low',
    'energyKcal',
    { energyKcal: '100.0' },
    by(30_000),
    'off',
  ],
  [
    '101.60(b)(2), not of 50 g from 31 g',
    'low calorie',
    'low',
    'energyKcal',
    { energyKcal: '100.0' },
    by(31_000),
    'agrees',
  ],
  [
    '101.60(b)(3), 120 kcal in 100 g',
    'low calorie',
    'low',
    'energyKcal',
    { energyKcal: '119.90' },
    MEAL,
    'agrees',
  ],
  [
    '101.60(b)(3), 120 kcal in 100 g',
    'low calorie',
    'low',
    'energyKcal',
    { energyKcal: '120.10' },
    MEAL,
    'off',
  ],
  [
    '101.60(c)(1), less than 0.5 g',
    'sugar free',
    'free',
    'sugars',
    { sugars: '0.4990' },
    { claims: { raccMg: 100_000 }, portions: 10 },
    'agrees',
  ],
  [
    '101.60(c)(1), less than 0.5 g',
    'sugar free',
    'free',
    'sugars',
    { sugars: '0.5010' },
    { claims: { raccMg: 100_000 }, portions: 10 },
    'off',
  ],
  [
    '101.61(b)(2), 35 mg',
    'very low sodium',
    'low',
    'sodium',
    { sodium: '34.990' },
    by(100_000),
    'agrees',
  ],
  [
    '101.61(b)(2), 35 mg',
    'very low sodium',
    'low',
    'sodium',
    { sodium: '35.100' },
    by(100_000),
    'off',
  ],
  [
    '101.61(b)(4), 140 mg',
    'low sodium',
    'low',
    'sodium',
    { sodium: '139.90' },
    by(100_000),
    'agrees',
  ],
  ['101.61(b)(4), 140 mg', 'low sodium', 'low', 'sodium', { sodium: '140.10' }, by(100_000), 'off'],
  [
    '101.61(b)(5), 140 mg in 100 g',
    'low sodium',
    'low',
    'sodium',
    { sodium: '140.10' },
    MEAL,
    'off',
  ],
  [
    '101.62(b)(1), less than 0.5 g',
    'fat free',
    'free',
    'fat',
    { fat: '0.4990' },
    { claims: { raccMg: 100_000 }, portions: 10 },
    'agrees',
  ],
  ['101.62(b)(2), 3 g', 'low fat', 'low', 'fat', { fat: '2.9990' }, by(100_000), 'agrees'],
  ['101.62(b)(2), 3 g', 'low fat', 'low', 'fat', { fat: '3.0010' }, by(100_000), 'off'],
  [
    '101.62(b)(3), 30 % of its calories',
    'low fat',
    'low',
    'fat',
    { fat: '2.9000', energyKcal: '88.00' },
    MEAL,
    'agrees',
  ],
  [
    '101.62(b)(3), 30 % of its calories',
    'low fat',
    'low',
    'fat',
    { fat: '2.9000', energyKcal: '86.00' },
    MEAL,
    'off',
  ],
  [
    '101.62(c)(2), 1 g and 15 %',
    'low saturated fat',
    'low',
    'saturated',
    { saturated: '0.9990', energyKcal: '61.00' },
    by(100_000),
    'agrees',
  ],
  [
    '101.62(c)(2), 1 g and 15 %',
    'low saturated fat',
    'low',
    'saturated',
    { saturated: '0.9990', energyKcal: '59.00' },
    by(100_000),
    'off',
  ],
  [
    '101.62(d)(2), 20 mg',
    'low cholesterol',
    'low',
    'cholesterol',
    { cholesterol: '19.990', saturated: '1.9990' },
    by(100_000),
    'agrees',
  ],
  [
    '101.62(d)(2), and 2 g of saturated fat',
    'low cholesterol',
    'low',
    'cholesterol',
    { cholesterol: '19.990', saturated: '2.0010' },
    by(100_000),
    'off',
  ],
  [
    '101.62(e)(3), of a meal',
    'lean',
    'lean',
    undefined,
    { fat: '9.9900', saturated: '4.4990', cholesterol: '94.90' },
    { claims: { meal: true }, portions: 10 },
    'agrees',
  ],
  [
    '101.62(e)(3), of a meal',
    'lean',
    'lean',
    undefined,
    { fat: '10.001', saturated: '4.4990', cholesterol: '94.90' },
    { claims: { meal: true }, portions: 10 },
    'off',
  ],
  [
    '101.56(d), low calorie',
    'light',
    'light',
    undefined,
    { energyKcal: '119.90', fat: '9.0' },
    MEAL,
    'agrees',
  ],
  [
    '101.56(d), neither',
    'light',
    'light',
    undefined,
    { energyKcal: '121.0', fat: '9.0' },
    MEAL,
    'off',
  ],
  [
    'Annex, 40 kcal in 100 g',
    'low energy',
    'low',
    'energyKcal',
    { energyKcal: '39.990' },
    EU,
    'agrees',
  ],
  [
    'Annex, 40 kcal in 100 g',
    'low energy',
    'low',
    'energyKcal',
    { energyKcal: '40.010' },
    EU,
    'off',
  ],
  ['Annex, 3 g in 100 g', 'low fat', 'low', 'fat', { fat: '3.0010' }, EU, 'off'],
  [
    'Annex, 0.5 g in 100 g, and exactly that',
    'fat free',
    'free',
    'fat',
    { fat: '0.4990' },
    EU,
    'agrees',
  ],
  [
    'Annex, 1.5 g with trans fat, and 10 % of energy',
    'low saturated fat',
    'low',
    'saturated',
    { saturated: '1.2000', transFat: '0.2000', energyKcal: '130.0' },
    EU,
    'agrees',
  ],
  [
    'Annex, 1.5 g with trans fat',
    'low saturated fat',
    'low',
    'saturated',
    { saturated: '1.4000', transFat: '0.2000', energyKcal: '300.0' },
    EU,
    'off',
  ],
  [
    'Annex, 10 % of energy',
    'low saturated fat',
    'low',
    'saturated',
    { saturated: '1.2000', transFat: '0.2000', energyKcal: '120.0' },
    EU,
    'off',
  ],
  [
    'Annex, trans fat that no table states',
    'low saturated fat',
    'low',
    'saturated',
    { saturated: '1.2000', energyKcal: '130.0' },
    EU,
    'unknown',
  ],
  ['Annex, 5 g in 100 g', 'low sugar', 'low', 'sugars', { sugars: '5.0010' }, EU, 'off'],
  [
    'Annex, 0.12 g of sodium in 100 g',
    'low salt',
    'low',
    'salt',
    { sodium: '119.90' },
    EU,
    'agrees',
  ],
  ['Annex, 0.12 g of sodium in 100 g', 'low salt', 'low', 'salt', { sodium: '120.10' }, EU, 'off'],
  [
    'Annex, 0.04 g of sodium in 100 g',
    'very low sodium',
    'low',
    'sodium',
    { sodium: '40.100' },
    EU,
    'off',
  ],
  [
    'Annex, 3 g in 100 g',
    'source of fibre',
    'source',
    'fibre',
    { fibre: '3.0010', energyKcal: '900' },
    EU,
    'agrees',
  ],
  [
    'Annex, 1.5 g in 100 kcal',
    'source of fibre',
    'source',
    'fibre',
    { fibre: '1.5100', energyKcal: '100.0' },
    EU,
    'agrees',
  ],
  [
    'Annex, neither',
    'source of fibre',
    'source',
    'fibre',
    { fibre: '1.4900', energyKcal: '100.0' },
    EU,
    'off',
  ],
  [
    'Annex, 6 g in 100 g',
    'high fibre',
    'high',
    'fibre',
    { fibre: '5.9900', energyKcal: '500' },
    EU,
    'off',
  ],
  [
    'Annex, 12 % of energy',
    'source of protein',
    'source',
    'protein',
    { protein: '3.0100', energyKcal: '100.0' },
    EU,
    'agrees',
  ],
  [
    'Annex, 12 % of energy',
    'source of protein',
    'source',
    'protein',
    { protein: '2.9900', energyKcal: '100.0' },
    EU,
    'off',
  ],
  [
    'Annex, 20 % of energy',
    'high protein',
    'high',
    'protein',
    { protein: '5.0100', energyKcal: '100.0' },
    EU,
    'agrees',
  ],
  [
    'Annex, 20 % of energy',
    'high protein',
    'high',
    'protein',
    { protein: '4.9900', energyKcal: '100.0' },
    EU,
    'off',
  ],
  [
    'Annex, 15 % of 800 mg',
    'source of calcium',
    'source',
    'calcium',
    { calcium: '120.1' },
    EU,
    'agrees',
  ],
  ['Annex, 30 % of 14 mg', 'high in iron', 'high', 'iron', { iron: '4.1900' }, EU, 'off'],
];

describe('thresholds at their edges', () => {
  it.each(VECTORS)(
    '%s: %s, %s %s of %j, %j: %s',
    (_, words, claim, nutrient, values, made, verdict) => {
      expect(judgeClaimWord(said(words, claim, nutrient), aPlainDish(values, made)).verdict).toBe(
        verdict,
      );
    },
  );

  it('less than a limit leaves the limit itself out, at most takes it in (101.60(b)(1) against (b)(2))', () => {
    const exactly = (value: number): Figure => ({
      ...{
        nutrient: 'energyKcal',
        value,
        low: value,
        high: value,
        likelyLow: value,
        likelyHigh: value,
      },
      ...{ missing: [], provisional: [], sources: [] },
    });
    expect(judgeThreshold(exactly(5), 'under', 5)).toBe('off');
    expect(judgeThreshold(exactly(4.999), 'under', 5)).toBe('agrees');
    expect(judgeThreshold(exactly(40), 'atMost', 40)).toBe('agrees');
    expect(judgeThreshold({ ...exactly(4.9), high: 5, likelyHigh: 5 }, 'under', 5)).toBe('edge');
  });
});

test('a range that crosses a threshold is at the edge, not agreed to', () => {
  const dish = aPlainDish({ fat: '3' }, by(100_000));
  const told = judgeClaimWord(said('low fat', 'low', 'fat'), dish);
  expect(told.verdict).toBe('edge');
  expect(told.why).toContain('likely 2.5–3.5');
});
