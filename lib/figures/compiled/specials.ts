import type { Arrangement, Entry } from '#lib/figures/compiled/arrangement';
import { CELL } from '#lib/figures/compiled/composition';
import type { Sums } from '#lib/figures/compiled/sums';
import { AMOUNT, SUM } from '#lib/figures/compiled/tables';
import { evaluateAt } from '#lib/units/compiled-sum';

/**
 * Hard bounds of a nutrient that amounts alone are in, added or taken away, beside the foods that hold it: the water
 * that cooking took is what the dish weighs less than its ingredients, so it has their errors with the other sign.
 * Where each source moves the whole one way, wherever the others stand, it stands at that end.
 * @returns the way of each source: 1, −1, or 0 for one that is not in it; null where one has no way
 */
export function addSpecial(
  arrangement: Arrangement,
  entries: readonly Entry[],
  { row, at }: Sums,
  place: number,
): Int8Array | null {
  const ways = waysOf(arrangement, entries, place);
  if (!ways) return null;
  const { route } = arrangement;
  let low = 0;
  let high = 0;
  let reach = 0;
  let step = 0;
  for (const { factor, of, sign } of entries) {
    const sources = step + 2;
    step = sources + 2 * factor.ids.length;
    step += 1 + (route[step] ?? 0);
    if (!of.present[place]) continue;
    const [least, most] = [of.cells[CELL * place + 1] ?? 0, of.cells[CELL * place + 2] ?? 0];
    const ends = (way: 1 | -1) =>
      factor.intervals.map((interval, each) =>
        ways[route[sources + 2 * each + 1] ?? 0] === way ? interval.high : interval.low,
      );
    low += sign * least * evaluateAt(factor.sum.terms, ends(-1));
    high += sign * most * evaluateAt(factor.sum.terms, ends(1));
    reach += most * (factor.numbers[4] ?? 0);
  }
  for (let each = 0; each < arrangement.excess.length; each += 3) {
    if (arrangement.excess[each + 1] !== place) continue;
    const amount = at.amounts + AMOUNT * (arrangement.excess[each] ?? 0);
    reach += (row[amount + 4] ?? 0) * (arrangement.excess[each + 2] ?? 0);
  }
  row[SUM * place + 1] = low;
  row[SUM * place + 2] = high;
  row[at.excess + place] = reach - high;
  return ways;
}

function waysOf(
  { route, sources }: Arrangement,
  entries: readonly Entry[],
  place: number,
): Int8Array | null {
  const least = new Float64Array(sources);
  const most = new Float64Array(sources);
  let step = 0;
  for (const { factor, of, sign } of entries) {
    const begin = step + 2;
    step = begin + 2 * factor.ids.length;
    step += 1 + (route[step] ?? 0);
    if (!of.present[place]) continue;
    const [low, high] = [of.cells[CELL * place + 1] ?? 0, of.cells[CELL * place + 2] ?? 0];
    for (let each = 0; each < factor.ids.length; each += 1) {
      const source = route[begin + 2 * each + 1] ?? 0;
      const [from, to] = [factor.ranges[2 * each] ?? 0, factor.ranges[2 * each + 1] ?? 0];
      const lowest = Math.min(from * low, from * high);
      const highest = Math.max(to * low, to * high);
      least[source] = (least[source] ?? 0) + (sign > 0 ? lowest : -highest);
      most[source] = (most[source] ?? 0) + (sign > 0 ? highest : -lowest);
    }
  }
  const ways = new Int8Array(sources);
  for (let source = 0; source < sources; source += 1) {
    const [from, to] = [least[source] ?? 0, most[source] ?? 0];
    if (from < 0 && to > 0) return null;
    ways[source] = to > 0 ? 1 : from < 0 ? -1 : 0;
  }
  return ways;
}
