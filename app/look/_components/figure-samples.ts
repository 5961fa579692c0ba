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
      { lineId: 'barley', text: '150 g pearl barley', foodName: 'Barley, pearled, raw' },
    ],
  },
  wide: { ...known, nutrient: 'fat', value: 40, low: 20, high: 62, likelyLow: 33, likelyHigh: 47 },
} satisfies Record<string, Figure>;
