import { US_DAILY_VALUES } from '#lib/claims/claim-words/daily-values';
import type { NutrientUnit } from '#lib/claims/statement';
import type { Figure } from '#lib/figures/figure';
import type { Region } from '#lib/figures/line-parts';
import { ENERGY_PER_G } from '#lib/foods/energy-per-gram';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';

/** Grams in one. */
const GRAMS: Partial<Readonly<Record<string, number>>> = { g: 1, mg: 1e-3, µg: 1e-6 };

/**
 * Daily Values for adults and children of four and more of what 21 CFR 101.9(c)(9) lists, beside those of vitamins and
 * minerals in 101.9(c)(8)(iv).
 */
const US_ALL: Partial<Readonly<Record<Nutrient, number>>> = {
  ...US_DAILY_VALUES,
  fat: 78,
  saturated: 20,
  cholesterol: 300,
  carbohydrate: 275,
  sodium: 2300,
  fibre: 28,
  protein: 50,
  addedSugars: 50,
};

/** Reference intakes of an average adult: Regulation (EU) 1169/2011, Annex XIII, part B (from memory). */
const EU_INTAKES: Partial<Readonly<Record<Nutrient, number>>> = {
  energyKj: 8400,
  energyKcal: 2000,
  fat: 70,
  saturated: 20,
  carbohydrate: 260,
  sugars: 90,
  protein: 50,
  salt: 6,
};

/** The daily amount that a percentage is of; null where the region’s law has none. */
export function dailyAmount(nutrient: Nutrient, region: Region): number | null {
  return (region === 'US' ? US_ALL : EU_INTAKES)[nutrient] ?? null;
}

/**
 * How much of a nutrient’s own unit one of a stated unit is; null where the one can’t be said in the other.
 * @example unitFactor('sodium', 'g', 'US') // 1000
 * @example unitFactor('protein', '%DV', 'US') // 0.5: one percent of 50 g
 */
export function unitFactor(nutrient: Nutrient, unit: NutrientUnit, region: Region): number | null {
  const own = NUTRIENTS[nutrient].unit;
  if (own === unit) return 1;
  if (unit === '%DV') {
    const daily = dailyAmount(nutrient, region);
    return daily === null ? null : daily / 100;
  }
  const [from, to] = [GRAMS[unit], GRAMS[own]];
  return from === undefined || to === undefined ? null : from / to;
}

const { protein, carbohydrate, fat } = ENERGY_PER_G.kcal;

/** Kilocalories in a gram. */
const KCAL_PER_G: Partial<Readonly<Record<Nutrient, number>>> = {
  protein,
  carbohydrate,
  netCarbohydrate: carbohydrate,
  sugars: carbohydrate,
  fat,
  saturated: fat,
};

/** A figure times a number that is exact. */
export function scaledFigure(figure: Figure, by: number): Figure {
  const times = (value: number | null) => (value === null ? null : value * by);
  return {
    ...figure,
    value: figure.value * by,
    low: times(figure.low),
    high: times(figure.high),
    likelyLow: times(figure.likelyLow),
    likelyHigh: times(figure.likelyHigh),
  };
}

/**
 * The share of the energy that a nutrient brings, in percent, with the widest range that the two allow: wider than it
 * is, so that it is never too sure. Null where the nutrient brings none by law, or nothing has energy.
 */
export function energyShare(nutrient: Figure, energy: Figure): Figure | null {
  const kcal = KCAL_PER_G[nutrient.nutrient];
  if (kcal === undefined || energy.value <= 0) return null;
  const share = (part: number | null, whole: number | null) =>
    part === null || whole === null || whole <= 0 ? null : (100 * kcal * part) / whole;
  return {
    ...nutrient,
    value: share(nutrient.value, energy.value) ?? 0,
    low: share(nutrient.low, energy.high),
    high: share(nutrient.high, energy.low),
    likelyLow: share(nutrient.likelyLow, energy.likelyHigh),
    likelyHigh: share(nutrient.likelyHigh, energy.likelyLow),
    missing: [...nutrient.missing, ...energy.missing],
    provisional: [...nutrient.provisional, ...energy.provisional],
  };
}
