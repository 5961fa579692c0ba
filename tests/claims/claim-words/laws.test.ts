import fc from 'fast-check';
import { expect, test } from 'vitest';
import { judgeClaimWord } from '#lib/claims/claim-words/judge-claim-word';
import type { Nutrient } from '#lib/foods/nutrients';
import { aPlainDish, said } from './dishes';

type Values = Readonly<
  Record<'energyKcal' | 'protein' | 'fat' | 'saturated' | 'sugars' | 'sodium' | 'fibre', number>
>;

/** The rules once more, on bare numbers in 100 g: written without the tables. */
const EU: readonly (readonly [
  string,
  'high' | 'source' | 'low' | 'free',
  Nutrient,
  (v: Values) => boolean,
])[] = [
  ['low energy', 'low', 'energyKcal', (v) => v.energyKcal <= 40],
  ['low fat', 'low', 'fat', (v) => v.fat <= 3],
  ['fat free', 'free', 'fat', (v) => v.fat <= 0.5],
  ['low sugar', 'low', 'sugars', (v) => v.sugars <= 5],
  ['low sodium', 'low', 'sodium', (v) => v.sodium <= 120],
  ['source of fibre', 'source', 'fibre', (v) => v.fibre >= 3 || v.fibre / v.energyKcal >= 0.015],
  ['high fibre', 'high', 'fibre', (v) => v.fibre >= 6 || v.fibre / v.energyKcal >= 0.03],
  ['source of protein', 'source', 'protein', (v) => (4 * v.protein) / v.energyKcal >= 0.12],
  ['high protein', 'high', 'protein', (v) => (4 * v.protein) / v.energyKcal >= 0.2],
];
const US: readonly (readonly [
  string,
  'high' | 'source' | 'low' | 'free',
  Nutrient,
  (v: Values, g: number) => boolean,
])[] = [
  [
    'low calorie',
    'low',
    'energyKcal',
    (v, g) => [g, ...(g <= 30 ? [50] : [])].every((m) => (v.energyKcal * m) / 100 <= 40),
  ],
  [
    'low fat',
    'low',
    'fat',
    (v, g) => [g, ...(g <= 30 ? [50] : [])].every((m) => (v.fat * m) / 100 <= 3),
  ],
  [
    'low sodium',
    'low',
    'sodium',
    (v, g) => [g, ...(g <= 30 ? [50] : [])].every((m) => (v.sodium * m) / 100 <= 140),
  ],
  ['high fiber', 'high', 'fibre', (v, g) => (v.fibre * g) / 100 >= 5.6],
  ['good source of fiber', 'source', 'fibre', (v, g) => (v.fibre * g) / 100 >= 2.8],
  ['high protein', 'high', 'protein', (v, g) => (v.protein * g) / 100 >= 10],
];

/** Numbers near the thresholds, of so many decimals as tables and labels have. */
const near = (limits: readonly number[], decimals: number) =>
  fc
    .tuple(fc.constantFrom(...limits), fc.double({ min: 0, max: 2, noNaN: true }))
    .map(([limit, times]) => Number((limit * times).toFixed(decimals)));

const values: fc.Arbitrary<Values> = fc.record({
  energyKcal: near([40, 120, 100], 0).map((kcal) => Math.max(5, kcal)),
  protein: near([3, 5, 10], 1),
  fat: near([0.5, 3], 1),
  saturated: near([1], 1),
  sugars: near([0.5, 5], 1),
  sodium: near([120, 140], 0),
  fibre: near([1.5, 3, 6], 1),
});

const printed = (of: Values) => {
  const decimals = { energyKcal: 0, sodium: 0 } as Partial<Record<string, number>>;
  return Object.fromEntries(
    Object.entries(of).map(([name, value]) => [name, value.toFixed(decimals[name] ?? 1)]),
  );
};

test('no word is agreed to whose number misses the threshold, in the Union', () => {
  let agreed = 0;
  fc.assert(
    fc.property(values, fc.constantFrom(...EU), (of, [words, claim, nutrient, holds]) => {
      const dish = aPlainDish(printed(of), { region: 'EU' });
      const { verdict } = judgeClaimWord(said(words, claim, nutrient), dish);
      if (verdict === 'agrees') {
        agreed += 1;
        expect(holds(of)).toBe(true);
      }
      if (verdict === 'off') expect(holds(of)).toBe(false);
    }),
    { numRuns: 400 },
  );
  expect(agreed).toBeGreaterThan(20);
});

test('no word is agreed to whose number misses the threshold, in the United States', () => {
  let agreed = 0;
  fc.assert(
    fc.property(
      values,
      fc.constantFrom(...US),
      fc.constantFrom(28, 30, 31, 50, 85, 140),
      (of, [words, claim, nutrient, holds], g) => {
        const dish = aPlainDish(printed(of), {
          claims: { raccMg: g * 1000, proteinPermille: 1000 },
        });
        const { verdict } = judgeClaimWord(said(words, claim, nutrient), dish);
        if (verdict === 'agrees') {
          agreed += 1;
          expect(holds(of, g)).toBe(true);
        }
        if (verdict === 'off') expect(holds(of, g)).toBe(false);
      },
    ),
    { numRuns: 400 },
  );
  expect(agreed).toBeGreaterThan(20);
});

test('protein counts in the US no more than its share: a smaller share never turns off into agrees', () => {
  fc.assert(
    fc.property(
      values,
      fc.integer({ min: 0, max: 1000 }),
      fc.integer({ min: 0, max: 1000 }),
      (of, a, b) => {
        const high = said('high protein', 'high', 'protein');
        const by = (proteinPermille: number) =>
          judgeClaimWord(
            high,
            aPlainDish(printed(of), { claims: { raccMg: 100_000, proteinPermille } }),
          ).verdict;
        const [less, more] = [by(Math.min(a, b)), by(Math.max(a, b))];
        if (more === 'off') expect(less).toBe('off');
        if (less === 'agrees') expect(more).toBe('agrees');
      },
    ),
    { numRuns: 100 },
  );
});

test('the share of energy is the same whether the dish was weighed or not, and however much was made', () => {
  fc.assert(
    fc.property(values, (of) => {
      const high = said('high protein', 'high', 'protein');
      const [weighed, not] = [1200, null].map((finished) =>
        judgeClaimWord(high, aPlainDish(printed(of), { region: 'EU', finished })),
      );
      expect(weighed?.rows).toEqual(not?.rows);
    }),
    { numRuns: 50 },
  );
});
