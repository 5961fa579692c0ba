import type { ClaimRelation, ClaimRule, Condition, ReducedRule } from './claim-rule';
import { US_DAILY_VALUES } from './daily-values';
import type { Nutrient } from '#lib/foods/nutrients';

/** Of a reference amount, and of 50 g too where that is small. */
const racc = (nutrient: Nutrient, relation: ClaimRelation, limit: number): Condition => ({
  measure: { kind: 'mass', nutrients: [nutrient], per: 'racc', small: true },
  relation,
  limit,
});
const raccAlone = (nutrient: Nutrient, relation: ClaimRelation, limit: number): Condition => ({
  measure: { kind: 'mass', nutrients: [nutrient], per: 'racc' },
  relation,
  limit,
});
const serving = (nutrient: Nutrient, relation: ClaimRelation, limit: number): Condition => ({
  measure: { kind: 'mass', nutrients: [nutrient], per: 'serving' },
  relation,
  limit,
});
const in100g = (nutrient: Nutrient, relation: ClaimRelation, limit: number): Condition => ({
  measure: { kind: 'mass', nutrients: [nutrient], per: '100g' },
  relation,
  limit,
});
const energyFrom = (nutrient: Nutrient, relation: ClaimRelation, percent: number): Condition => ({
  measure: { kind: 'energyShare', nutrients: [nutrient], kcalPerG: 9 },
  relation,
  limit: percent,
});

/** Less than so much of a reference amount and of each portion; of each portion alone where it is a meal. */
function free(nutrient: Nutrient, section: string, limit: number, also?: string): ClaimRule[] {
  const rule = {
    level: 'free',
    nutrient,
    section,
    ...(also === undefined ? {} : { also }),
  } as const;
  return [
    {
      ...rule,
      of: 'food',
      ways: [[raccAlone(nutrient, 'under', limit), serving(nutrient, 'under', limit)]],
    },
    { ...rule, of: 'meal', ways: [[serving(nutrient, 'under', limit)]] },
  ];
}

/** At most so much of a reference amount; of 100 g where it is a meal. */
function low(
  nutrient: Nutrient,
  section: string,
  limit: number,
  mealSection: string,
  mealLimit: number,
): ClaimRule[] {
  return [
    { level: 'low', nutrient, section, of: 'food', ways: [[racc(nutrient, 'atMost', limit)]] },
    {
      level: 'low',
      nutrient,
      section: mealSection,
      of: 'meal',
      ways: [[in100g(nutrient, 'atMost', mealLimit)]],
    },
  ];
}

/** 'High' from 20 % of the Daily Value, 'good source' from 10 %. */
const BY_DAILY_VALUE: readonly ClaimRule[] = Object.entries(US_DAILY_VALUES).flatMap(
  ([name, daily]): ClaimRule[] => {
    const nutrient = name as Nutrient;
    const of = (share: number): Condition => ({
      measure: {
        kind: 'mass',
        nutrients: [nutrient],
        per: 'racc',
        ...(nutrient === 'protein' ? { corrected: true as const } : {}),
      },
      relation: 'atLeast',
      limit: daily * share,
    });
    const also =
      nutrient === 'fibre'
        ? {
            also: 'Unless it is low in fat too, its fat has to be said beside it (21 CFR 101.54(d)).',
          }
        : {};
    return [
      {
        level: 'high',
        nutrient,
        section: '21 CFR 101.54(b)(1)',
        of: 'food',
        ways: [[of(0.2)]],
        ...also,
      },
      {
        level: 'source',
        nutrient,
        section: '21 CFR 101.54(c)(1)',
        of: 'food',
        ways: [[of(0.1)]],
        ...also,
      },
    ];
  },
);

const NOT_LOW_ENERGY =
  'Unless it is low or reduced in calories, it has to be said beside it that it is not (21 CFR 101.60(c)(1)(iii)).';

const LOW_FAT_MEAL = [in100g('fat', 'atMost', 3), energyFrom('fat', 'atMost', 30)] as const;
const LOW_ENERGY_MEAL = [in100g('energyKcal', 'atMost', 120)] as const;

/** What claim words stand for in the United States: 21 CFR 101.54 to 101.62. */
export const US_RULES: readonly ClaimRule[] = [
  ...BY_DAILY_VALUE,
  {
    level: 'light',
    nutrient: null,
    section: '21 CFR 101.56(d)',
    of: 'meal',
    ways: [LOW_ENERGY_MEAL, LOW_FAT_MEAL],
    also: 'It has to be said which of the two it is, low calorie or low fat.',
  },
  ...free('energyKcal', '21 CFR 101.60(b)(1)', 5),
  ...low('energyKcal', '21 CFR 101.60(b)(2)', 40, '21 CFR 101.60(b)(3)', 120),
  ...free('sugars', '21 CFR 101.60(c)(1)', 0.5, NOT_LOW_ENERGY),
  ...free('sodium', '21 CFR 101.61(b)(1)', 5),
  ...low('sodium', '21 CFR 101.61(b)(2)', 35, '21 CFR 101.61(b)(3)', 35).map((rule): ClaimRule => ({
    ...rule,
    level: 'veryLow',
  })),
  ...low('sodium', '21 CFR 101.61(b)(4)', 140, '21 CFR 101.61(b)(5)', 140),
  ...free('fat', '21 CFR 101.62(b)(1)', 0.5),
  {
    level: 'low',
    nutrient: 'fat',
    section: '21 CFR 101.62(b)(2)',
    of: 'food',
    ways: [[racc('fat', 'atMost', 3)]],
  },
  {
    level: 'low',
    nutrient: 'fat',
    section: '21 CFR 101.62(b)(3)',
    of: 'meal',
    ways: [LOW_FAT_MEAL],
  },
  {
    level: 'percentFree',
    nutrient: 'fat',
    section: '21 CFR 101.62(b)(6)',
    of: 'food',
    ways: [[racc('fat', 'atMost', 3)]],
    also: 'The percentage has to be right as well; 100 % asks for less than 0.5 g of fat in 100 g.',
  },
  {
    level: 'percentFree',
    nutrient: 'fat',
    section: '21 CFR 101.62(b)(6)',
    of: 'meal',
    ways: [LOW_FAT_MEAL],
    also: 'The percentage has to be right as well; 100 % asks for less than 0.5 g of fat in 100 g.',
  },
  {
    level: 'free',
    nutrient: 'saturated',
    section: '21 CFR 101.62(c)(1)',
    of: 'food',
    ways: [
      [
        ...(['saturated', 'transFat'] as const).flatMap((each) => [
          raccAlone(each, 'under', 0.5),
          serving(each, 'under', 0.5),
        ]),
      ],
    ],
  },
  {
    level: 'free',
    nutrient: 'saturated',
    section: '21 CFR 101.62(c)(1)',
    of: 'meal',
    ways: [[serving('saturated', 'under', 0.5), serving('transFat', 'under', 0.5)]],
  },
  {
    level: 'low',
    nutrient: 'saturated',
    section: '21 CFR 101.62(c)(2)',
    of: 'food',
    ways: [[raccAlone('saturated', 'atMost', 1), energyFrom('saturated', 'atMost', 15)]],
  },
  {
    level: 'low',
    nutrient: 'saturated',
    section: '21 CFR 101.62(c)(3)',
    of: 'meal',
    ways: [[in100g('saturated', 'atMost', 1), energyFrom('saturated', 'under', 10)]],
  },
  {
    level: 'free',
    nutrient: 'cholesterol',
    section: '21 CFR 101.62(d)(1)',
    of: 'food',
    ways: [
      [
        raccAlone('cholesterol', 'under', 2),
        serving('cholesterol', 'under', 2),
        raccAlone('saturated', 'atMost', 2),
        serving('saturated', 'atMost', 2),
      ],
    ],
  },
  {
    level: 'free',
    nutrient: 'cholesterol',
    section: '21 CFR 101.62(d)(1)',
    of: 'meal',
    ways: [[serving('cholesterol', 'under', 2), serving('saturated', 'atMost', 2)]],
  },
  {
    level: 'low',
    nutrient: 'cholesterol',
    section: '21 CFR 101.62(d)(2)',
    of: 'food',
    ways: [[racc('cholesterol', 'atMost', 20), racc('saturated', 'atMost', 2)]],
  },
  {
    level: 'low',
    nutrient: 'cholesterol',
    section: '21 CFR 101.62(d)(3)',
    of: 'meal',
    ways: [[in100g('cholesterol', 'atMost', 20), in100g('saturated', 'atMost', 2)]],
  },
  ...lean(),
];

/** Lean and extra lean: fish and game, mixed dishes that no cup measures, meals (21 CFR 101.62(e)). */
function lean(): ClaimRule[] {
  const within = (
    of: (nutrient: Nutrient, relation: ClaimRelation, limit: number) => Condition,
    fat: number,
    saturated: readonly [ClaimRelation, number],
    cholesterol: number,
  ): Condition[] => [
    of('fat', 'under', fat),
    of('saturated', ...saturated),
    of('cholesterol', 'under', cholesterol),
  ];
  const leanIn = (of: typeof raccAlone) => within(of, 10, ['atMost', 4.5], 95);
  const extraLeanIn = (of: typeof raccAlone) => within(of, 5, ['under', 2], 95);
  const fish =
    'It is a word for fish and game; for meat and poultry 9 CFR 317.362 and 381.462 have the same numbers.';
  return [
    {
      level: 'lean',
      nutrient: null,
      section: '21 CFR 101.62(e)(1)',
      of: 'plain',
      ways: [[...leanIn(raccAlone), ...leanIn(in100g)]],
      also: fish,
    },
    {
      level: 'lean',
      nutrient: null,
      section: '21 CFR 101.62(e)(2)',
      of: 'food',
      ways: [within(raccAlone, 8, ['atMost', 3.5], 80)],
      also: 'It is a word for mixed dishes that are not measured with a cup.',
    },
    {
      level: 'lean',
      nutrient: null,
      section: '21 CFR 101.62(e)(3)',
      of: 'meal',
      ways: [[...leanIn(in100g), ...leanIn(serving)]],
    },
    {
      level: 'extraLean',
      nutrient: null,
      section: '21 CFR 101.62(e)(4)',
      of: 'food',
      ways: [[...extraLeanIn(raccAlone), ...extraLeanIn(in100g)]],
      also: fish,
    },
    {
      level: 'extraLean',
      nutrient: null,
      section: '21 CFR 101.62(e)(5)',
      of: 'meal',
      ways: [[...extraLeanIn(in100g), ...extraLeanIn(serving)]],
    },
  ];
}

/** A quarter less than what it is compared with. */
export const US_REDUCED: readonly ReducedRule[] = [
  { nutrient: 'energyKcal', section: '21 CFR 101.60(b)(4)', percent: 25 },
  { nutrient: 'sugars', section: '21 CFR 101.60(c)(5)', percent: 25 },
  { nutrient: 'sodium', section: '21 CFR 101.61(b)(6)', percent: 25 },
  { nutrient: 'fat', section: '21 CFR 101.62(b)(4)', percent: 25 },
  { nutrient: 'saturated', section: '21 CFR 101.62(c)(4)', percent: 25 },
  { nutrient: 'cholesterol', section: '21 CFR 101.62(d)(4)', percent: 25 },
];

/**
 * Beyond these, words of praise have to come with a hint at what is high (21 CFR 101.13(h)(1) for foods, (h)(3) for
 * main dishes, whose levels are lower than those of meals in (h)(2)).
 */
export const DISCLOSURE_LEVELS: Readonly<
  Record<'food' | 'mainDish' | 'meal', readonly (readonly [Nutrient, number])[]>
> = {
  food: [
    ['fat', 13],
    ['saturated', 4],
    ['cholesterol', 60],
    ['sodium', 480],
  ],
  mainDish: [
    ['fat', 19.5],
    ['saturated', 6],
    ['cholesterol', 90],
    ['sodium', 720],
  ],
  meal: [
    ['fat', 26],
    ['saturated', 8],
    ['cholesterol', 120],
    ['sodium', 960],
  ],
};
