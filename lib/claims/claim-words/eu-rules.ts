import type { ClaimLevel, ClaimRelation, ClaimRule, Condition, ReducedRule } from './claim-rule';
import { EU_REFERENCE_VALUES } from './daily-values';
import type { Nutrient } from '#lib/foods/nutrients';

/** Every nutrition claim of the Union, with its condition, stands in one place. */
const ANNEX = 'Regulation (EC) No 1924/2006, Annex';

const in100g = (
  nutrients: readonly Nutrient[],
  relation: ClaimRelation,
  limit: number,
  liquidLimit: number = limit,
): Condition => ({
  measure: { kind: 'mass', nutrients, per: '100g' },
  relation,
  limit,
  liquidLimit,
});

const rule = (
  level: ClaimLevel,
  nutrient: Nutrient,
  entry: string,
  ...ways: readonly (readonly Condition[])[]
): ClaimRule => ({ level, nutrient, section: `${ANNEX}, “${entry}”`, of: 'any', ways });

/** Vitamins and minerals: 15 % of the reference value in 100 g, 7.5 % in 100 ml; twice that for 'high'. */
const BY_REFERENCE_VALUE: readonly ClaimRule[] = Object.entries(EU_REFERENCE_VALUES).flatMap(
  ([name, daily]): ClaimRule[] => {
    const nutrient = name as Nutrient;
    const from = (share: number) =>
      in100g([nutrient], 'atLeast', daily * share, (daily * share) / 2);
    return [
      rule('source', nutrient, 'source of vitamins or minerals', [from(0.15)]),
      rule('high', nutrient, 'high vitamins or minerals', [from(0.3)]),
    ];
  },
);

const proteinShare = (percent: number): Condition => ({
  measure: { kind: 'energyShare', nutrients: ['protein'], kcalPerG: 4 },
  relation: 'atLeast',
  limit: percent,
});
const fibrePerEnergy = (grams: number): Condition => ({
  measure: { kind: 'per100kcal', nutrients: ['fibre'] },
  relation: 'atLeast',
  limit: grams,
});
const SATURATES = ['saturated', 'transFat'] as const;

/** What claim words stand for in the Union: Regulation (EC) No 1924/2006, Annex. */
export const EU_RULES: readonly ClaimRule[] = [
  rule('low', 'energyKcal', 'low energy', [in100g(['energyKcal'], 'atMost', 40, 20)]),
  rule('free', 'energyKcal', 'energy-free', [in100g(['energyKcal'], 'atMost', 4)]),
  rule('low', 'fat', 'low fat', [in100g(['fat'], 'atMost', 3, 1.5)]),
  rule('free', 'fat', 'fat-free', [in100g(['fat'], 'atMost', 0.5)]),
  rule('low', 'saturated', 'low saturated fat', [
    in100g(SATURATES, 'atMost', 1.5, 0.75),
    {
      measure: { kind: 'energyShare', nutrients: SATURATES, kcalPerG: 9 },
      relation: 'atMost',
      limit: 10,
    },
  ]),
  rule('free', 'saturated', 'saturated fat-free', [in100g(SATURATES, 'atMost', 0.1)]),
  rule('low', 'sugars', 'low sugars', [in100g(['sugars'], 'atMost', 5, 2.5)]),
  rule('free', 'sugars', 'sugars-free', [in100g(['sugars'], 'atMost', 0.5)]),
  rule('low', 'sodium', 'low sodium/salt', [in100g(['sodium'], 'atMost', 120)]),
  rule('veryLow', 'sodium', 'very low sodium/salt', [in100g(['sodium'], 'atMost', 40)]),
  rule('free', 'sodium', 'sodium-free or salt-free', [in100g(['sodium'], 'atMost', 5)]),
  rule('low', 'salt', 'low sodium/salt', [in100g(['salt'], 'atMost', 0.3)]),
  rule('veryLow', 'salt', 'very low sodium/salt', [in100g(['salt'], 'atMost', 0.1)]),
  rule('free', 'salt', 'sodium-free or salt-free', [in100g(['salt'], 'atMost', 0.0125)]),
  rule(
    'source',
    'fibre',
    'source of fibre',
    [
      {
        measure: { kind: 'mass', nutrients: ['fibre'], per: '100g' },
        relation: 'atLeast',
        limit: 3,
      },
    ],
    [fibrePerEnergy(1.5)],
  ),
  rule(
    'high',
    'fibre',
    'high fibre',
    [
      {
        measure: { kind: 'mass', nutrients: ['fibre'], per: '100g' },
        relation: 'atLeast',
        limit: 6,
      },
    ],
    [fibrePerEnergy(3)],
  ),
  rule('source', 'protein', 'source of protein', [proteinShare(12)]),
  rule('high', 'protein', 'high protein', [proteinShare(20)]),
  ...BY_REFERENCE_VALUE,
];

/** At least 30 % less than a similar product, sodium 25 %. */
export const EU_REDUCED: readonly ReducedRule[] = [
  { nutrient: 'energyKcal', section: `${ANNEX}, “energy-reduced”`, percent: 30 },
  ...(['fat', 'saturated', 'sugars', 'carbohydrate'] as const).map((nutrient) => ({
    nutrient,
    section: `${ANNEX}, “reduced (name of the nutrient)”`,
    percent: 30,
  })),
  ...(['sodium', 'salt'] as const).map((nutrient) => ({
    nutrient,
    section: `${ANNEX}, “reduced (name of the nutrient)”`,
    percent: 25,
  })),
];

/** Where a fat percentage turned round is refused. */
export const EU_PERCENT_FREE = `${ANNEX}, “fat-free”: claims expressed as “X % fat-free” shall be prohibited`;
