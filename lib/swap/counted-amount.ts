import type { AmountContext } from '#lib/episode/context';
import { lineAmount } from '#lib/episode/line-amount';
import type { MassRange } from '#lib/episode/fields';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import { quickBounds } from '#lib/units/quick-bounds';

type Quantity = NonNullable<RecipeLine['quantity']>;
type Readings = Pick<Recipe, 'weighings'>;

/** Grams of an ingredient as it counts, with the range they may lie in; null where they are not known. */
export function gramsOf(
  line: RecipeLine,
  recipe: Readings,
  context: AmountContext,
): MassRange | null {
  const { massMg, sources } = lineAmount(line, recipe.weighings, context);
  if (!massMg) return null;
  const { low, value, high } = quickBounds(massMg, sources);
  const [lowMg, valueMg, highMg] = [Math.floor(low), Math.round(value), Math.ceil(high)];
  return { lowMg: Math.max(0, lowMg), valueMg, highMg };
}

/** Whether a reading is of what goes in, raw or cooked. */
export const isOfGrams = ({ kind }: Recipe['weighings'][number]): boolean =>
  kind === 'raw' || kind === 'cooked';

/** Whether an ingredient was put on a scale. */
export function hasReadings({ weighings }: Readings, lineId: string): boolean {
  return weighings.some(
    (weighing) => isOfGrams(weighing) && weighing.shares.some((share) => share.lineId === lineId),
  );
}

/** What one piece, spoon or pack of an ingredient weighs that is counted, not weighed; null of any other. */
export function oneOfIt(line: RecipeLine, recipe: Readings, context: AmountContext): number | null {
  const { quantity, unit, planned } = line;
  if (planned || quantity === null || !COUNTED.has(unit ?? '')) return null;
  if (hasReadings(recipe, line.id)) return null;
  const { low, high } = quantity;
  if (low.num * high.den !== high.num * low.den || low.num === 0) return null;
  const grams = gramsOf(line, recipe, context);
  return grams && grams.valueMg > 0 ? (grams.valueMg * low.den) / low.num : null;
}

const COUNTED: ReadonlySet<string> = new Set('piece serving pack tsp tbsp cup flOz'.split(' '));

/** Amounts are counted in quarters of a piece at the finest. */
const PARTS = 4;

/**
 * How many of what an ingredient is counted in an amount is, so that it stays counted and keeps the spread of its
 * measure; null where it is not counted, or the amount is no quarter of one.
 * @example countOf(twoSlices, 120_000, …) // 3, where a slice weighs 40 g
 */
export function countOf(
  line: RecipeLine,
  massMg: number,
  recipe: Readings,
  context: AmountContext,
): Quantity | null {
  const one = oneOfIt(line, recipe, context);
  if (one === null) return null;
  const num = Math.round((massMg * PARTS) / one);
  // Grams are whole milligrams on both sides.
  if (Math.abs((num * one) / PARTS - massMg) > 1 + num / PARTS) return null;
  const ratio = { num, den: PARTS };
  const lowest = [PARTS, 2].find((by) => num % by === 0 && PARTS % by === 0) ?? 1;
  const count = { num: ratio.num / lowest, den: ratio.den / lowest };
  return { low: count, high: count };
}

/** Milligrams of a gram. */
export const GRAM_MG = 1000;

/** So many of something as whole milligrams: `massOf(2.5, GRAM_MG)` → 2500. */
export function massOf(count: number, oneMg: number): number {
  return Math.round(count * oneMg);
}
