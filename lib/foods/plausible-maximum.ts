import type { FoodVersion } from '#lib/foods/food';
import { cellInterval, servingInterval } from '#lib/foods/label-rounding';
import { LARGEST_IN_SR28 } from '#lib/foods/largest-in-sr28';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import type { Interval } from '#lib/units/interval';
import { settled } from '#lib/units/print';

/** The most that 100 g of a food can plausibly hold of a nutrient, in the nutrient's unit, and why no more. */
export interface PlausibleMaximum {
  readonly max: number;
  readonly why: string;
}

/** What is limited by one substance alone. */
const PURE: Partial<Readonly<Record<Nutrient, PlausibleMaximum>>> = {
  // Beef tallow, the most in USDA SR28: pure fat at its own factor of 9.02 kcal a gram.
  energyKcal: { max: 902, why: 'pure fat' },
  // 100 g of fat at 37 kJ a gram: no factor of Regulation (EU) 1169/2011, Annex XIV, is higher.
  energyKj: { max: 3700, why: 'pure fat' },
  // In mg: 22.990 / 58.443 of 100 g of salt (standard atomic weights).
  sodium: { max: 39_340, why: 'pure salt' },
  salt: { max: 100, why: 'pure salt' },
};

/** What 100 g are made of, each gram counted once. */
const PROXIMATES: readonly Nutrient[] = [
  'water',
  'protein',
  'fat',
  'carbohydrate',
  'ash',
  'alcohol',
];

/** What a nutrient is a part of. */
const WHOLE: Partial<Readonly<Record<Nutrient, Nutrient>>> = {
  saturated: 'fat',
  monounsaturated: 'fat',
  polyunsaturated: 'fat',
  transFat: 'fat',
  sugars: 'carbohydrate',
  polyols: 'carbohydrate',
  addedSugars: 'sugars',
};

/**
 * The plausible maximum of a value that a food's source does not state: what is left of 100 g by what is known of
 * it; a part at most its whole (fibre only where the carbohydrate includes it); salt and sodium at most pure salt;
 * energy at most pure fat; cholesterol, vitamins and minerals at most the largest value in USDA SR28. Null where
 * nothing limits it. Tables analyse each value by itself, so a part may pass its whole by a little: the person can
 * change the maximum.
 * @example plausibleMaximum(paprika, 'fibre') // { max: 53.995, why: 'all of its carbohydrate' }
 */
export function plausibleMaximum(
  version: FoodVersion,
  nutrient: Nutrient,
): PlausibleMaximum | null {
  if (nutrient === 'netCarbohydrate') return null;
  return (
    PURE[nutrient] ?? byWhole(version, nutrient) ?? byMass(version, nutrient) ?? byTable(nutrient)
  );
}

function byWhole(version: FoodVersion, nutrient: Nutrient): PlausibleMaximum | null {
  const fibreInside = nutrient === 'fibre' && version.carbBasis === 'total';
  const whole = fibreInside ? 'carbohydrate' : WHOLE[nutrient];
  if (!whole) return null;
  const stated = per100g(version, whole);
  if (stated) return { max: settled(stated.high), why: `all of its ${NUTRIENTS[whole].label}` };
  return byWhole(version, whole) ?? byMass(version, whole);
}

const WEIGHED: ReadonlySet<Nutrient> = new Set<Nutrient>([...PROXIMATES, 'fibre']);

function byMass(version: FoodVersion, nutrient: Nutrient): PlausibleMaximum | null {
  if (!WEIGHED.has(nutrient)) return null;
  const beside: Nutrient[] = PROXIMATES.filter((each) => each !== nutrient);
  if (version.carbBasis === 'available' && nutrient !== 'fibre') beside.push('fibre');
  const known = beside.flatMap((each) => per100g(version, each)?.low ?? []);
  const rest = known.reduce((left, grams) => left - grams, 100);
  const why = known.length > 0 ? '100 g less what is known of it' : 'all of it';
  return { max: settled(Math.max(0, rest)), why };
}

function byTable(nutrient: Nutrient): PlausibleMaximum | null {
  const largest = LARGEST_IN_SR28[nutrient];
  if (!largest) return null;
  return { max: largest.value, why: `the most of any food in USDA SR28: ${largest.name}` };
}

/** What a food states in 100 g, through its serving where it is stated for that; null where it does not say. */
function per100g(version: FoodVersion, nutrient: Nutrient): Interval | null {
  const stated = cellInterval(version, nutrient);
  if (!stated || version.basis === 'per100ml') return null;
  if (version.basis === 'per100g') return stated;
  const serving = servingInterval(version);
  if (!serving || serving.low <= 0) return null;
  return {
    low: (stated.low * 100_000) / serving.high,
    value: (stated.value * 100_000) / serving.value,
    high: (stated.high * 100_000) / serving.low,
  };
}

/**
 * The most of a nutrient that 100 g of anything can hold, in the nutrient's unit: all of them, or pure fat or salt.
 * @example mostIn100g('fibre') // 100
 */
export function mostIn100g(nutrient: Nutrient): number {
  const pure = PURE[nutrient];
  if (pure) return pure.max;
  const { unit } = NUTRIENTS[nutrient];
  return unit === 'g' ? 100 : unit === 'mg' ? 100_000 : 1_000_000;
}
