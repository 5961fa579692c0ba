import type { PictureBar } from '#lib/figures/breakdown-picture';
import type { Figure } from '#lib/figures/figure';

/** Invented figures, one for each state that a figure can be in. */
const known: Figure = {
  nutrient: 'protein',
  value: 112,
  low: 104,
  high: 121,
  likelyLow: 109,
  likelyHigh: 115,
  missing: [],
  provisional: [],
  sources: [],
};
const paprika = { lineId: 'paprika', text: 'smoked paprika', reason: 'noValue' } as const;

export const FIGURES = {
  energy: {
    ...known,
    nutrient: 'energyKcal',
    value: 846,
    low: 812,
    high: 880,
    likelyLow: 829,
    likelyHigh: 863,
  },
  known,
  atLeast: {
    ...known,
    nutrient: 'fibre',
    value: 9,
    low: 9,
    high: null,
    likelyHigh: null,
    likelyLow: null,
    missing: [paprika],
  },
  atMost: {
    ...known,
    nutrient: 'sugars',
    value: 6,
    low: null,
    high: 6.4,
    likelyLow: null,
    likelyHigh: null,
    missing: [{ ...paprika, reason: 'leftBehind' }],
  },
  open: {
    ...known,
    nutrient: 'salt',
    value: 0,
    low: null,
    high: null,
    likelyLow: null,
    likelyHigh: null,
    missing: [{ ...paprika, text: 'salt to taste', reason: 'noGrams' }],
  },
  provisional: {
    ...known,
    provisional: [
      {
        why: 'match',
        lineId: 'barley',
        text: '150 g pearl barley',
        foodName: 'Barley, pearled, raw',
      },
    ],
  },
  wide: { ...known, nutrient: 'fat', value: 40, low: 20, high: 62, likelyLow: 33, likelyHigh: 47 },
} satisfies Record<string, Figure>;

const parts = (names: readonly (readonly [string, number])[], sum: number) =>
  names.map(([name, value]) => ({
    ...{ key: name, name, value, share: value / sum },
    rest: name.endsWith('others'),
  }));

/** Invented bars: of a dish by its ingredients, of a day against a target, at least, and open. */
export const BARS: readonly PictureBar[] = [
  {
    nutrient: 'protein',
    figure: FIGURES.known,
    parts: parts(
      [
        ['500 g ground turkey', 78],
        ['150 g pearl barley', 14],
        ['a large egg', 8],
        ['50 g rolled oats', 5],
        ['a handful of rocket', 3],
        ['8 others', 4],
      ],
      112,
    ),
    lacks: '',
    targets: [],
    reach: 112,
  },
  {
    nutrient: 'energyKcal',
    figure: FIGURES.energy,
    parts: parts(
      [
        ['Barley skillet', 512],
        ['Skyr pots', 334],
      ],
      846,
    ),
    lacks: '',
    targets: [
      { id: 't1', relation: 'atMost', amount: 860, verdict: 'cannotTell', far: null },
      { id: 't2', relation: 'atLeast', amount: 700, verdict: 'met', far: null },
    ],
    reach: 860,
  },
  {
    nutrient: 'fibre',
    figure: FIGURES.atLeast,
    parts: parts(
      [
        ['150 g pearl barley', 7],
        ['2 carrots', 2],
      ],
      9,
    ),
    lacks: 'no value for smoked paprika',
    targets: [{ id: 't3', relation: 'about', amount: 12, verdict: 'unknown', far: null }],
    reach: 12,
  },
  {
    nutrient: 'salt',
    figure: FIGURES.open,
    parts: [],
    lacks: 'no grams for salt to taste',
    targets: [],
    reach: 0,
  },
];
