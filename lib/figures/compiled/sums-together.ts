import type { Together } from '#lib/figures/compiled/arrangement';
import { addErrors, addMet, placeSource } from '#lib/figures/compiled/errors';
import { varianceOf } from '#lib/figures/compiled/meeting';
import { zeroRow } from '#lib/figures/compiled/zero-row';
import { collectSquares } from '#lib/figures/compiled/squares';
import type { Sums } from '#lib/figures/compiled/sums';
import { AMOUNT, BOTH, NEITHER, SOURCE, SUM } from '#lib/figures/compiled/tables';

const MIDDLE = 3;

/**
 * Adds sums together, each so many times: value and ends add up, errors meet by food and source first.
 * Null where a source has two intervals, or moves two of the sums in different ways.
 */
export function sumTogether(
  together: Together,
  sums: readonly Sums[],
  times: readonly number[],
): Sums | null {
  const { at } = together;
  const row = zeroRow(at.end);
  for (let part = 0; part < sums.length; part += 1) {
    const of = sums[part];
    const places = together.places[part];
    const factor = times[part] ?? 0;
    if (!of || !places) return null;
    const { compositions, sources, joints, pairs } = places;
    if (!placeSources(row, at.sources, sources, of)) return null;
    addNutrients(row, of.row, at.variance, factor);
    for (let to = at.excess, from = of.at.excess; to < at.room; to += 1, from += 1) {
      row[to] = (row[to] ?? 0) + factor * (of.row[from] ?? 0);
    }
    for (let place = 0; place < compositions.length; place += 1) {
      const to = at.amounts + AMOUNT * (compositions[place] ?? 0) + MIDDLE;
      row[to] = (row[to] ?? 0) + factor * (of.row[of.at.amounts + AMOUNT * place + MIDDLE] ?? 0);
    }
    addPlaced(row, at.joints, joints, of.row, of.at.joints, factor);
    addPlaced(row, at.pairs, pairs, of.row, of.at.pairs, factor);
  }
  const special = new Map(
    together.specials.map((place) => [place, commonWays(together, sums, place)] as const),
  );
  const added = { row, at, special };
  collectSquares(together.squares, added);
  addErrors(together, added);
  addMet(together, added);
  for (const meeting of together.meetings) {
    row[at.variance + meeting.place] = varianceOf(meeting, added);
  }
  return added;
}

/** Lays out the sources of a part; false where they stand there already and differ. */
function placeSources(
  row: Float64Array,
  begin: number,
  sources: Int32Array,
  { row: part, at }: Sums,
): boolean {
  for (let place = 0, from = at.sources; place < sources.length; place += 1, from += SOURCE) {
    const to = begin + SOURCE * (sources[place] ?? 0);
    const before = row[to + 3] ?? 0;
    const way = part[from + 3] ?? 0;
    // What goes both ways within one sum has its ends there; it may not stand in another.
    if (before !== 0 && (before === BOTH || way === BOTH)) return false;
    if (!placeSource(row, to, part, from, way)) return false;
    if (row[to + 3] === BOTH && way !== BOTH) return false;
  }
  return true;
}

/** The ways of sources in a nutrient that amounts alone are in; null unless all parts agree, and so their ends. */
function commonWays(
  { places, sources: count }: Together,
  sums: readonly Sums[],
  place: number,
): Int8Array | null {
  const ways = new Int8Array(count);
  for (let part = 0; part < sums.length; part += 1) {
    const of = sums[part];
    const sources = places[part]?.sources;
    if (!of || !sources) return null;
    const own = of.special.get(place);
    if (own === null) return null;
    for (let source = 0; source < sources.length; source += 1) {
      const to = sources[source] ?? 0;
      const way = own ? (own[source] ?? 0) : (of.row[of.at.sources + SOURCE * source + 3] ?? 0);
      if (way === 0 || way === NEITHER) continue;
      if (way === BOTH || (ways[to] ?? way) === -way) return null;
      ways[to] = way;
    }
  }
  return ways;
}

/** Value, low, high and middle of every nutrient; variances meet later. */
function addNutrients(to: Float64Array, from: Float64Array, length: number, times: number): void {
  for (let at = 0; at < length; at += SUM) {
    to[at] = (to[at] ?? 0) + times * (from[at] ?? 0);
    to[at + 1] = (to[at + 1] ?? 0) + times * (from[at + 1] ?? 0);
    to[at + 2] = (to[at + 2] ?? 0) + times * (from[at + 2] ?? 0);
    to[at + 3] = (to[at + 3] ?? 0) + times * (from[at + 3] ?? 0);
  }
}

function addPlaced(
  to: Float64Array,
  toAt: number,
  places: Int32Array,
  from: Float64Array,
  fromAt: number,
  times: number,
): void {
  for (let place = 0; place < places.length; place += 1) {
    const at = toAt + (places[place] ?? 0);
    to[at] = (to[at] ?? 0) + times * (from[fromAt + place] ?? 0);
  }
}
