import type { Packed } from '#lib/figures/compiled/packing';
import type { Holding } from '#lib/figures/compiled/holding';
import type { Sums } from '#lib/figures/compiled/sums';
import { AMOUNT } from '#lib/figures/compiled/tables';
import { FACTOR, FACTOR_SOURCE, type Factor } from '#lib/units/factor';
import type { Interval } from '#lib/units/interval';

/** Hard bounds of a nutrient, its sum of magnitudes and the way of each source: 1, −1, or 0 for one not in it. */
export interface SpecialBounds {
  readonly ways: Int8Array;
  readonly low: number;
  readonly high: number;
  readonly reach: number;
}

/**
 * Hard bounds of a nutrient that amounts alone are in, added or taken away, beside the foods that hold it: the water
 * that cooking took is what the dish weighs less than its ingredients, so it has their errors with the other sign.
 * Where each source moves the whole one way, wherever the others stand, it stands at that end.
 * @returns null where a source has no way
 */
export function specialBounds(
  holding: Holding,
  packed: Packed,
  { row, at }: Sums,
): SpecialBounds | null {
  const ways = waysOf(holding, packed);
  if (!ways) return null;
  const { entries, numbers } = packed;
  const { route, ends, excess } = holding;
  let low = 0;
  let high = 0;
  let reach = 0;
  for (let step = 0, end = 0; step < route.length; end += 2) {
    const index = route[step] ?? 0;
    const begin = route[step + 1] ?? 0;
    const last = step + 3 + (route[step + 2] ?? 0);
    step += 3;
    const multiplied = numbers[begin + 6] ?? -1;
    let small = numbers[begin + 5] ?? 0;
    let large = small;
    if (multiplied < 0) {
      const entry = entries[index];
      if (!entry) continue;
      small = atEnds(entry.factor, ways, route, step, -1);
      large = atEnds(entry.factor, ways, route, step, 1);
      step = last;
    }
    const divided = step + multiplied;
    for (let from = begin + FACTOR; step < last; step += 1, from += FACTOR_SOURCE) {
      const way = ways[route[step] ?? 0] ?? 0;
      const bottom = numbers[from + 7] ?? 0;
      const top = numbers[from + 2] ?? 0;
      if (step < divided) {
        small *= way < 0 ? top : bottom;
        large *= way > 0 ? top : bottom;
      } else {
        small /= way < 0 ? top : bottom;
        large /= way > 0 ? top : bottom;
      }
    }
    const most = ends[end + 1] ?? 0;
    low += (ends[end] ?? 0) * small;
    high += most * large;
    reach += Math.abs(most) * (numbers[begin + 4] ?? 0);
  }
  for (const { food, amount } of excess) {
    reach += (row[at.amounts + AMOUNT * food + 4] ?? 0) * amount;
  }
  return { ways, low, high, reach };
}

/** A factor where all sources stand at the ends that make the sum least (−1) or most (1). */
function atEnds(
  { intervals, sum }: Factor,
  ways: Int8Array,
  route: Int32Array,
  sources: number,
  end: 1 | -1,
): number {
  let all = 0;
  for (const { coefficient, up, down } of sum.terms) {
    let product = coefficient;
    for (const place of up)
      product *= endOf(intervals[place], ways[route[sources + place] ?? 0], end);
    for (const place of down)
      product /= endOf(intervals[place], ways[route[sources + place] ?? 0], end);
    all += product;
  }
  return all;
}

function endOf(interval: Interval | undefined, way: number | undefined, end: 1 | -1): number {
  if (!interval) return NaN;
  return way === end ? interval.high : interval.low;
}

/** Room to add up what each source moves; grows with the largest sum. */
let room = new Float64Array(0);

/** Which way each source moves the sum: the least and the most of its derivatives are added up over all entries. */
function waysOf({ route, ends, sources }: Holding, { numbers }: Packed): Int8Array | null {
  if (room.length < 2 * sources) room = new Float64Array(4 * sources);
  else room.fill(0, 0, 2 * sources);
  for (let step = 0, end = 0; step < route.length; end += 2) {
    let from = (route[step + 1] ?? 0) + FACTOR;
    const last = step + 3 + (route[step + 2] ?? 0);
    step += 3;
    const least = ends[end] ?? 0;
    const most = ends[end + 1] ?? 0;
    const added = most > 0;
    for (; step < last; step += 1, from += FACTOR_SOURCE) {
      const to = 2 * (route[step] ?? 0);
      const first = numbers[from + 5] ?? 0;
      const second = numbers[from + 6] ?? 0;
      const rises = (numbers[from + 4] ?? 0) > 0;
      // Nearest to nothing, and furthest from it.
      const small = rises ? first : second;
      const large = rises ? second : first;
      const near = small * least;
      const far = large * most;
      const up = added === rises;
      room[to] = (room[to] ?? 0) + (up ? near : far);
      room[to + 1] = (room[to + 1] ?? 0) + (up ? far : near);
    }
  }
  const ways = new Int8Array(sources);
  for (let source = 0; source < sources; source += 1) {
    const from = room[2 * source] ?? 0;
    const to = room[2 * source + 1] ?? 0;
    if (from < 0 && to > 0) return null;
    ways[source] = to > 0 ? 1 : from < 0 ? -1 : 0;
  }
  return ways;
}
