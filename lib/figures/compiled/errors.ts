import { ALL, OWN } from '#lib/figures/compiled/squares';
import type { Sums } from '#lib/figures/compiled/sums';
import {
  AMOUNT,
  BOTH,
  NEITHER,
  SOURCE,
  type Layout,
  type Met,
  type Tables,
} from '#lib/figures/compiled/tables';

/**
 * Lays out a source's variance, high, value and way; false where it stands there already with other numbers.
 * Where only the ways differ it goes both.
 * @param way how it moves what it is laid out for; `NEITHER` where that is no amount of a food
 */
export function placeSource(
  row: Float64Array,
  to: number,
  from: Float64Array,
  fromAt: number,
  way: number,
): boolean {
  const before = row[to + 3] ?? 0;
  if (before === 0) {
    row[to] = from[fromAt] ?? 0;
    row[to + 1] = from[fromAt + 1] ?? 0;
    row[to + 2] = from[fromAt + 2] ?? 0;
    row[to + 3] = way;
    return true;
  }
  if (before === NEITHER) row[to + 3] = way;
  else if (way !== NEITHER && before !== way) row[to + 3] = BOTH;
  return (
    row[to] === from[fromAt] && row[to + 1] === from[fromAt + 1] && row[to + 2] === from[fromAt + 2]
  );
}

/** Adds the variance of the values of foods, and of amounts that no other food has, two foods at a time. */
export function addErrors({ compositions }: Tables, { row, at }: Sums): void {
  const none = compositions[0]?.squares;
  for (let place = 0; place < compositions.length; place += 2) {
    const of = at.amounts + AMOUNT * place;
    const first = compositions[place]?.squares;
    const second = compositions[place + 1]?.squares;
    if (!first || !none) continue;
    const allA = row[of + ALL] ?? 0;
    const ownA = row[of + OWN] ?? 0;
    const allB = second ? (row[of + AMOUNT + ALL] ?? 0) : 0;
    const ownB = second ? (row[of + AMOUNT + OWN] ?? 0) : 0;
    addSquares(row, at.variance, first, allA, ownA, second ?? none, allB, ownB);
  }
}

function addSquares(
  row: Float64Array,
  at: number,
  first: Float64Array,
  allA: number,
  ownA: number,
  second: Float64Array,
  allB: number,
  ownB: number,
): void {
  for (let from = 0, to = at; from < first.length; from += 2, to += 1) {
    row[to] =
      (row[to] ?? 0) +
      (allA * (first[from] ?? 0) + ownA * (first[from + 1] ?? 0)) +
      (allB * (second[from] ?? 0) + ownB * (second[from + 1] ?? 0));
  }
}

/** Adds the variance of sources, and of pairs, that meet several foods: their coefficients meet first. */
export function addMet({ metJoints, metPairs }: Tables, { row, at }: Sums): void {
  for (const met of metJoints) {
    addMetSquares(row, at, met, at.joints, row[at.sources + SOURCE * met.source] ?? 0);
  }
  for (const met of metPairs) {
    const first = row[at.sources + SOURCE * met.source] ?? 0;
    const second = row[at.sources + SOURCE * met.other] ?? 0;
    addMetSquares(row, at, met, at.pairs, first * second);
  }
}

function addMetSquares(
  row: Float64Array,
  { variance, room, amounts }: Layout,
  { places, middles }: Met,
  from: number,
  error: number,
): void {
  const first = middles[0];
  const second = middles[1];
  if (first && second && places.length === 2) {
    const a = row[from + (places[0] ?? 0)] ?? 0;
    const b = row[from + (places[1] ?? 0)] ?? 0;
    addTwoSquares(row, variance, first, a, second, b, error);
    return;
  }
  for (let each = 0; each < places.length; each += 2) {
    const one = middles[each];
    const other = middles[each + 1];
    const move = row[from + (places[each] ?? 0)] ?? 0;
    const otherMove = other ? (row[from + (places[each + 1] ?? 0)] ?? 0) : 0;
    if (one) addSlopes(row, room, one, move, other ?? one, otherMove);
  }
  for (let at = room, to = variance; at < amounts; at += 1, to += 1) {
    const slope = row[at] ?? 0;
    row[to] = (row[to] ?? 0) + slope * slope * error;
    row[at] = 0;
  }
}

/** The same of two foods, in one step. */
function addTwoSquares(
  row: Float64Array,
  at: number,
  first: Float64Array,
  a: number,
  second: Float64Array,
  b: number,
  error: number,
): void {
  for (let from = 0, to = at; from < first.length; from += 1, to += 1) {
    const slope = a * (first[from] ?? 0) + b * (second[from] ?? 0);
    row[to] = (row[to] ?? 0) + slope * slope * error;
  }
}

function addSlopes(
  row: Float64Array,
  room: number,
  first: Float64Array,
  a: number,
  second: Float64Array,
  b: number,
): void {
  for (let from = 0, to = room; from < first.length; from += 1, to += 1) {
    row[to] = (row[to] ?? 0) + (a * (first[from] ?? 0) + b * (second[from] ?? 0));
  }
}
