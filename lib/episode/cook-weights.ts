import type { AmountContext } from '#lib/episode/context';
import { lineAmount, weighedAmount, type LineAmount } from '#lib/episode/line-amount';
import type { Kitchen } from '#lib/episode/kitchen-schema';
import type { RecipeLine, Weighing } from '#lib/episode/recipe-schema';
import { plannedResolutionMg } from '#lib/episode/spreads';
import { boundsOf } from '#lib/units/bounds';

/** An ingredient's raw and cooked weight of one cook. */
export interface CookWeights {
  readonly rawMg: number;
  readonly cookedMg: number;
  /** How far either weight may miss, in milligrams: the larger of the two half-widths. */
  readonly halfMg: number;
  /** Cooked in percent of raw. */
  readonly percent: number;
}

/**
 * What an ingredient weighed raw and cooked, where both are known: the raw one as weighed, else as planned. Null
 * where one is missing, where its amount is of the cooked food, or where it is with peel, shell or bone: a yield
 * is of what is cooked.
 * @example 500 g raw and 360 g cooked on a 1 g scale: 72 %, ± 500 mg
 */
export function cookWeights(
  line: RecipeLine,
  weighings: readonly Weighing[],
  context: AmountContext,
): CookWeights | null {
  if (line.asBought || !(line.state === 'raw' || line.state === 'dry')) return null;
  const raw = massOf(lineAmount(line, weighings, context));
  const cooked = massOf(weighedAmount(line, weighings, 'cooked', context));
  if (!raw || !cooked) return null;
  const [rawMg, cookedMg] = [Math.round(raw.value), Math.round(cooked.value)];
  if (rawMg <= 0 || cookedMg <= 0) return null;
  const halfMg = Math.round(Math.max(raw.high - raw.low, cooked.high - cooked.low) / 2);
  return { rawMg, cookedMg, halfMg, percent: (100 * cookedMg) / rawMg };
}

function massOf(amount: LineAmount | null) {
  return amount?.massMg ? boundsOf(amount.massMg, amount.sources) : null;
}

/** Half-width in milligrams of a weight that is typed without its scale: half a step of the kitchen's first. */
export function typedHalfMg(kitchen: Kitchen): number {
  return Math.round(plannedResolutionMg(kitchen) / 2);
}
