import type { Arrangement } from '#lib/figures/compiled/arrangement';
import type { Product } from '#lib/figures/compiled/summand';
import { CELL } from '#lib/figures/compiled/composition';
import type { Sums } from '#lib/figures/compiled/sums';
import { AMOUNT, BOTH, SOURCE, SUM } from '#lib/figures/compiled/tables';
import { cornerSlopes } from '#lib/units/compiled-factor';

/**
 * Hard bounds of sources that some ingredients rise with and others fall with, as the readings of a running total:
 * what one ingredient gains the next one loses. The end at which such a source stands depends on the nutrient. All
 * others stand at their ends, the sum is linear in it there, and so it is the middle less, or more, half its width
 * times the size of its slope.
 * @returns false where an ingredient is not linear in such a source, or multiplies two of them, or one food rises
 *   and falls with it
 */
export function addTurns(
  { route, byTerms, sources }: Arrangement,
  entries: readonly Product[],
  { row, at }: Sums,
): boolean {
  const turning = turningSources(row, at.sources, sources);
  if (turning.size === 0) return true;
  const turns = new Map<number, { low: Float64Array; high: Float64Array }>();
  const ways = new Map<number, number>();
  let step = 0;
  for (const { factor, of } of entries) {
    const composition = route[step + 2] ?? 0;
    const begin = step + 4;
    const places = factor.ids.map((_, place) => route[begin + 2 * place + 1]);
    step = begin + 2 * places.length;
    step += 1 + (route[step] ?? 0);
    // Bounds of nutrients that amounts alone are in are taken by themselves.
    if (of.only !== null) continue;
    const isTurning = (place: number) => turning.has(places[place] ?? -1);
    if (factor.pairs.some(({ a, b }) => isTurning(a) && isTurning(b))) return false;
    for (const [place, source = 0] of places.entries()) {
      if (!turning.has(source)) continue;
      const slopes = cornerSlopes(factor, place);
      const interval = factor.intervals[place];
      if (!slopes || !interval) return false;
      // Of one food the two ways may cancel to nothing, and then it is no source of the sum.
      const way = factor.rises[place] ? 1 : -1;
      const key = composition * sources + source;
      if ((ways.get(key) ?? way) !== way) return false;
      ways.set(key, way);
      const half = (interval.high - interval.low) / 2;
      const amount = at.amounts + AMOUNT * composition;
      // From the end where it makes this ingredient least, or most, back to its middle.
      row[amount + 1] = (row[amount + 1] ?? 0) + Math.abs(slopes.low) * half;
      row[amount + 2] = (row[amount + 2] ?? 0) - Math.abs(slopes.high) * half;
      const turn = turns.get(source) ?? {
        low: new Float64Array(byTerms.length),
        high: new Float64Array(byTerms.length),
      };
      turns.set(source, turn);
      const { cells } = of;
      for (let nutrient = 0; nutrient < byTerms.length; nutrient += 1) {
        const [least, most] = [cells[CELL * nutrient + 1] ?? 0, cells[CELL * nutrient + 2] ?? 0];
        turn.low[nutrient] = (turn.low[nutrient] ?? 0) + slopes.low * half * least;
        turn.high[nutrient] = (turn.high[nutrient] ?? 0) + slopes.high * half * most;
      }
    }
  }
  for (const { low, high } of turns.values()) {
    for (let nutrient = 0; nutrient < low.length; nutrient += 1) {
      const to = SUM * nutrient;
      row[to + 1] = (row[to + 1] ?? 0) - Math.abs(low[nutrient] ?? 0);
      row[to + 2] = (row[to + 2] ?? 0) + Math.abs(high[nutrient] ?? 0);
    }
  }
  return true;
}

function turningSources(row: Float64Array, from: number, count: number): ReadonlySet<number> {
  const turning = new Set<number>();
  for (let source = 0; source < count; source += 1) {
    if (row[from + SOURCE * source + 3] === BOTH) turning.add(source);
  }
  return turning;
}
