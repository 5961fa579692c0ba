import type { EatenAmount } from '#lib/episode/eaten-amount';
import type { LineAmount } from '#lib/episode/line-amount';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { Stated } from '#lib/figures/composition';
import type { MissingPart } from '#lib/figures/figure';
import { multiplyParts, NOTHING, subtractParts, type Parts } from '#lib/figures/parts';
import { isNutrient, type Nutrient } from '#lib/foods/nutrients';
import { retentionOf } from '#lib/foods/retention';
import type { Interval } from '#lib/units/interval';
import { multiply, scale, source, type Term } from '#lib/units/sum-of-products';

type Missing = (reason: MissingPart['reason']) => MissingPart;

/**
 * kcal in a gram of fat that runs out: 9 in general; 8.79 in milk, 9.02 in meat (USDA Agriculture Handbook 74, as
 * stored in SR28 FOOD_DES).
 */
const FAT_KCAL: Interval = { low: 8.79, value: 9, high: 9.02 };
/** kJ in a gram of fat: Regulation (EU) 1169/2011, Annex XIV. */
const FAT_KJ = 37;

/** What goes with fat in a share that nobody has measured. */
const GOES_WITH_FAT: ReadonlySet<Nutrient> = new Set<Nutrient>([
  'saturated',
  'monounsaturated',
  'polyunsaturated',
  'transFat',
  'cholesterol',
  'vitaminAIu',
  'vitaminARae',
  'retinol',
  'alphaCarotene',
  'betaCarotene',
  'betaCryptoxanthin',
  'lycopene',
  'luteinZeaxanthin',
  'vitaminE',
  'vitaminDMicrograms',
  'vitaminDIu',
  'vitaminK',
]);

/**
 * Fat itself as parts of a nutrient: so many milligrams of it hold so much fat and energy, and an unknown share of
 * what goes with fat.
 * @param missing says what is unknown of the rest
 */
export function fatParts(
  massMg: readonly Term[],
  sources: ReadonlyMap<string, Interval>,
  nutrient: Nutrient,
  missing: MissingPart,
): Parts {
  const grams = scale(massMg, 1e-3);
  const known = { ...NOTHING, sources };
  if (nutrient === 'fat') return { ...known, terms: grams };
  if (nutrient === 'energyKj') return { ...known, terms: scale(grams, FAT_KJ) };
  if (nutrient === 'energyKcal') {
    const id = 'factor:fat';
    return {
      ...known,
      terms: multiply(grams, [source(id)]),
      sources: new Map([...sources, [id, FAT_KCAL]]),
    };
  }
  return GOES_WITH_FAT.has(nutrient) ? { ...NOTHING, above: [missing] } : NOTHING;
}

/** An ingredient's parts less the fat that was poured off, and at most that much where its rest is still to be weighed. */
export function asEaten(
  parts: Parts,
  eaten: EatenAmount,
  nutrient: Nutrient,
  missing: Missing,
): Parts {
  if (!eaten.known) return parts;
  const { fatLeftMg, leftNotWeighed, amount } = eaten;
  const less = fatLeftMg
    ? subtractParts(parts, fatParts(fatLeftMg, amount.sources, nutrient, missing('fatLeft')))
    : parts;
  if (!leftNotWeighed) return less;
  return { ...less, below: [...less.below, missing('leftNotWeighed')] };
}

/**
 * Vitamins and minerals as far as they are kept in cooking; where the table does not say how far, at most what
 * was in it.
 */
export function retained(
  parts: Parts,
  line: RecipeLine,
  nutrient: Nutrient,
  missing: Missing,
): Parts {
  const kept = retentionOf(line.retention, nutrient);
  if (kept.kind === 'all') return parts;
  if (kept.kind === 'unknown') {
    const nothingToLose = parts.terms.length === 0 && parts.above.length === 0;
    return nothingToLose ? parts : { ...parts, below: [...parts.below, missing('noRetention')] };
  }
  return multiplyParts(parts, [source(kept.id)], new Map([[kept.id, kept.share]]));
}

/** What stands in for a value that a food's source lacks; null where nothing does. */
export type StandIn = (nutrient: Nutrient) => Stated | null;

/**
 * The values that the food's source lacks and the person has bounded: each anywhere from 0 to the most that so much
 * of it can hold, one error wherever it is counted (fibre in itself, in carbohydrate, in energy). Null where there
 * are none, or no grams.
 */
export function boundedGaps(line: RecipeLine, { massMg, sources }: LineAmount): StandIn | null {
  if (line.bounded.length === 0 || !massMg) return null;
  return (nutrient) => {
    const bounded = line.bounded.find((each) => each.nutrient === nutrient);
    if (!bounded) return null;
    const id = `${BOUNDED}:${line.id}:${nutrient}`;
    const { maxPer100 } = bounded;
    return {
      terms: multiply(scale(massMg, 1e-5), [source(id)]),
      sources: new Map([...sources, [id, { low: 0, value: maxPer100 / 2, high: maxPer100 }]]),
    };
  };
}

const BOUNDED = 'bounded';

/** The nutrient of a source that is a bounded value; null for any other source. */
export function boundedNutrient(sourceId: string): Nutrient | null {
  if (!sourceId.startsWith(`${BOUNDED}:`)) return null;
  const nutrient = sourceId.slice(sourceId.lastIndexOf(':') + 1);
  return isNutrient(nutrient) ? nutrient : null;
}
