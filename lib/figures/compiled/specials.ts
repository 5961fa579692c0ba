import type { Arrangement, Entry } from '#lib/figures/compiled/arrangement';
import { CELL } from '#lib/figures/compiled/composition';
import type { Sums } from '#lib/figures/compiled/sums';
import { AMOUNT, SUM } from '#lib/figures/compiled/tables';
import type { Factor } from '#lib/units/compiled-factor';
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
    const sources = step + 3;
    step += 2 + 2 * factor.ids.length;
    step += 1 + (route[step] ?? 0);
    if (of.present[place] === 0) continue;
    const { numbers } = factor;
    const agreement = agreementOf(factor, ways, route, sources);
    const least = sign * (of.cells[CELL * place + 1] ?? 0);
    const most = sign * (of.cells[CELL * place + 2] ?? 0);
    if (agreement === 'none') {
      low += least * atEnds(factor, ways, route, sources, -1);
      high += most * atEnds(factor, ways, route, sources, 1);
    } else {
      low += least * (numbers[agreement === 'all' ? 1 : 2] ?? 0);
      high += most * (numbers[agreement === 'all' ? 2 : 1] ?? 0);
    }
    reach += Math.abs(most) * (numbers[4] ?? 0);
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

/** Whether the sum moves with all sources of a factor as the factor does, or the other way with all. */
function agreementOf(
  { rises }: Factor,
  ways: Int8Array,
  route: Int32Array,
  sources: number,
): 'all' | 'opposite' | 'none' {
  let agreeing = 0;
  let opposed = 0;
  for (let each = 0; each < rises.length; each += 1) {
    const way = ways[route[sources + 2 * each] ?? 0] ?? 0;
    if (way === (rises[each] ? 1 : -1)) agreeing += 1;
    else if (way !== 0) opposed += 1;
  }
  if (agreeing === rises.length) return 'all';
  return opposed === rises.length ? 'opposite' : 'none';
}

/** A factor where all sources stand at the ends that make the sum least (−1) or most (1). */
function atEnds(
  { intervals, sum }: Factor,
  ways: Int8Array,
  route: Int32Array,
  sources: number,
  end: 1 | -1,
): number {
  const at: number[] = [];
  for (let each = 0; each < intervals.length; each += 1) {
    const way = ways[route[sources + 2 * each] ?? 0] ?? 0;
    const { low = NaN, high = NaN } = intervals[each] ?? {};
    at.push(way === end ? high : low);
  }
  return evaluateAt(sum.terms, at);
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
    const { ranges } = factor;
    let to = step + 3;
    step += 2 + ranges.length;
    step += 1 + (route[step] ?? 0);
    if (of.present[place] === 0) continue;
    const low = sign * (of.cells[CELL * place + 1] ?? 0);
    const high = sign * (of.cells[CELL * place + 2] ?? 0);
    for (let each = 0; each < ranges.length; each += 2, to += 2) {
      const source = route[to] ?? 0;
      const first = ranges[each] ?? 0;
      const last = ranges[each + 1] ?? 0;
      const a = Math.min(first * low, first * high);
      const b = Math.min(last * low, last * high);
      const c = Math.max(first * low, first * high);
      const d = Math.max(last * low, last * high);
      least[source] = (least[source] ?? 0) + Math.min(a, b);
      most[source] = (most[source] ?? 0) + Math.max(c, d);
    }
  }
  const ways = new Int8Array(sources);
  for (let source = 0; source < sources; source += 1) {
    const from = least[source] ?? 0;
    const to = most[source] ?? 0;
    if (from < 0 && to > 0) return null;
    ways[source] = to > 0 ? 1 : from < 0 ? -1 : 0;
  }
  return ways;
}
