import type { Food, YieldObservation } from '#lib/foods/food';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { Interval } from '#lib/units/interval';

/** Published yields and a single cook's stand for ± 5 points (common practice, no source). */
const YIELD_POINTS = 0.05;

/** Where a yield comes from, surest first. */
export type YieldBasis = 'thisCook' | 'pastCooks' | 'onePastCook' | 'published';

/** Cooked grams from one raw gram, as a quotient of sources. */
export interface YieldFactor {
  readonly basis: YieldBasis;
  readonly observations: readonly YieldObservation[];
  readonly up: string;
  /** The raw weight of this very cook, whose reading errors are sources of their own; null for a share. */
  readonly down: string | null;
  readonly sources: ReadonlyMap<string, Interval>;
  readonly value: number;
}

/**
 * The yield that an ingredient is converted by: this cook's own two weights; else the person's past cooks; else
 * what is published for the method that the ingredient names, or for the food's first method.
 *
 * This cook: the errors of its two readings. Two or more past cooks: their range, widened by reading errors.
 * One past cook or a published value: ± 5 points.
 * @returns null where the food has no yield, or none by that method
 * @example yieldFactor(turkey, line)?.value // 0.72: 82 g cooked from 113.4 g raw
 */
export function yieldFactor(
  food: Food,
  line: Pick<RecipeLine, 'id' | 'cookMethod'>,
): YieldFactor | null {
  const here = food.yields.filter(({ own }) => own?.lineId === line.id).at(-1);
  if (here) return ofThisCook(here);
  const { cookMethod } = line;
  const named = food.yields.filter(({ method }) => cookMethod === null || method === cookMethod);
  const past = named.filter(({ own }) => own !== null);
  const pool = past.length > 0 ? past : named;
  const [first] = pool;
  if (!first) return null;
  const observations = pool.filter(({ method }) => method === first.method);
  const share = shareInterval(observations);
  const id = `yield:${food.id}:${first.method}`;
  const basis: YieldBasis =
    first.own === null ? 'published' : observations.length > 1 ? 'pastCooks' : 'onePastCook';
  const sources = new Map([[id, share]]);
  return { basis, observations, up: id, down: null, sources, value: share.value };
}

function ofThisCook(observed: YieldObservation): YieldFactor {
  const half = observed.own?.halfMg ?? 0;
  const [up, down] = [`cooked:${observed.id}`, `uncooked:${observed.id}`];
  const around = (mg: number): Interval => ({
    // Never nothing: a weight that divides.
    low: Math.max(mg / 2, mg - half),
    value: mg,
    high: mg + half,
  });
  return {
    basis: 'thisCook',
    observations: [observed],
    up,
    down,
    sources: new Map([
      [up, around(observed.cookedMg)],
      [down, around(observed.rawMg)],
    ]),
    value: observed.cookedMg / observed.rawMg,
  };
}

function shareInterval(observations: readonly YieldObservation[]): Interval {
  const shares = observations.map(({ rawMg, cookedMg }) => cookedMg / rawMg);
  const value = shares.reduce((sum, share) => sum + share, 0) / shares.length;
  const several = shares.length > 1 && observations.every(({ own }) => own !== null);
  if (!several) {
    return {
      low: Math.min(Math.max(value - YIELD_POINTS, value / 2), ...shares),
      value,
      high: Math.max(value + YIELD_POINTS, ...shares),
    };
  }
  const ends = observations.map(({ rawMg, cookedMg, own }) => {
    const half = own?.halfMg ?? 0;
    const least = Math.max(0, cookedMg - half) / (rawMg + half);
    return [least, (cookedMg + half) / Math.max(rawMg / 2, rawMg - half)] as const;
  });
  return {
    low: Math.min(...ends.map(([low]) => low)),
    value,
    high: Math.max(...ends.map(([, high]) => high)),
  };
}
