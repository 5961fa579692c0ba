import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Food, FoodVersion } from '#lib/foods/food';
import type { Nutrient } from '#lib/foods/nutrients';
import { secondWitness } from '#lib/foods/second-witness';
import { loadSr28 } from '#seed/load-sr28';
import { aFood } from '../support/build';

const serving = (massMg: number | null): FoodVersion['serving'] => ({
  massMg,
  volumeMl: null,
  decimals: 0,
  text: '',
  perPack: null,
});
function label(values: Partial<Record<Nutrient, string>>, more: Partial<FoodVersion> = {}): Food {
  const us = { basis: 'serving', rule: 'us', serving: serving(100_000) } as const;
  return aFood('label', values, { kind: 'label' }, { ...us, state: 'raw', ...more });
}
const chicken = (() => {
  const food = loadSr28().find(({ version }) => version.sourceNo === '05062');
  if (!food) throw new Error('no chicken breast');
  return food;
})();
function said(of: Food, witness: Food = chicken): string[] {
  const result = secondWitness(of, witness);
  return result.compared ? result.disagreements.map(({ words }) => words) : [result.why];
}

// Table: USDA SR28 05062, chicken breast, skinless, raw: 120 kcal, 22.50 g protein, 2.62 g fat, 45 mg sodium.
// Rounding of the label: 21 CFR 101.9(c).
describe('a second witness', () => {
  it('says nothing of a label that is the table’s food, rounded', () => {
    expect(said(label({ energyKcal: '120', protein: '23', fat: '2.5', sodium: '45' }))).toEqual([]);
  });

  it('tells a slipped decimal with its factor, before what is only a little off', () => {
    const slipped = label({ energyKcal: '130', protein: '2', fat: '25', sodium: '45' });
    const result = secondWitness(slipped, chicken);
    if (!result.compared) throw new Error(result.why);
    expect(result.disagreements.map(({ nutrient, far }) => [nutrient, far])).toEqual([
      ['protein', true],
      ['fat', true],
      ['energyKcal', false],
    ]);
    expect(said(label({ fat: '26' }))).toEqual([
      'fat 25.4–26.6 g where the table has 2.615–2.625 g: 10 times as much',
    ]);
  });

  it('says no factor of what may be nothing', () => {
    expect(said(label({ fat: '0' }))).toEqual(['fat 0–0.5 g where the table has 2.615–2.625 g']);
  });

  it('says a tenth', () => {
    const table = aFood('table', { protein: '24' });
    const own = aFood('own', { protein: '2.4' }, { kind: 'label' });
    expect(said(own, table)).toEqual([
      'protein 2.35–2.45 g where the table has 23.5–24.5 g: a tenth',
    ]);
  });

  it('compares 100 g through the label’s serving, with the serving’s own rounding', () => {
    // 11 g in 50 g: 20.6 to 23.3 g in 100 g.
    expect(said(label({ protein: '11' }, { serving: serving(50_000) }))).toEqual([]);
    expect(said(label({ protein: '9' }, { serving: serving(50_000) }))).toHaveLength(1);
    expect(said(label({ protein: '11' }, { serving: serving(null) }))).toEqual([
      'there are no grams to compare 100 g by',
    ]);
  });

  it('does not compare raw with cooked', () => {
    expect(said(label({ protein: '31' }, { state: 'cooked' }))).toEqual([
      `the label is cooked and ${chicken.name} is raw`,
    ]);
  });

  it('compares carbohydrate on one basis, and salt with sodium', () => {
    // Total 21.55 g with 12.5 g of fibre: 9.05 g available (USDA SR28 12061, almonds).
    const table = aFood('almonds', { carbohydrate: '21.55', fibre: '12.5', sodium: '1' });
    const eu = (carbohydrate: string, salt: string) =>
      aFood('own', { carbohydrate, salt }, {}, { carbBasis: 'available', rule: 'eu' });
    expect(said(eu('9.0', '0'), table)).toEqual([]);
    expect(said(eu('22', '0'), table)).toHaveLength(1);
    // 1 g of salt is 400 mg of sodium (Regulation 1169/2011 Annex I).
    expect(said(eu('9.0', '1.0'), table)[0]).toContain('sodium');
    // Without fibre nobody can tell.
    const bare = aFood('bare', { carbohydrate: '21.55' });
    expect(said(eu('9.0', '0'), bare)).toEqual([]);
  });

  it('two readings of one true food never disagree', () => {
    const hundredths = fc.integer({ min: 0, max: 9000 });
    const mass = fc.integer({ min: 10, max: 90 });
    fc.assert(
      fc.property(hundredths, mass, (true100, grams) => {
        const table = aFood('t', { protein: (true100 / 100).toFixed(2) }, {}, { state: 'raw' });
        const perServing = ((true100 / 100) * grams) / 100;
        fc.pre(perServing >= 1);
        const own = label(
          { protein: String(Math.round(perServing)) },
          { serving: serving(grams * 1000) },
        );
        expect(said(own, table)).toEqual([]);
      }),
    );
  });
});
