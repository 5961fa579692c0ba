/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import type { Pair } from './pairs';

/** Smaller sets are no better served than by their orders. */
const LEAST = 3;

/** How many sets are looked at before the longest are kept. */
const LOOKED_AT = 32;

/**
 * Sets of tasks no two of which can overlap, whatever resources keep them apart, so that as many pairs as
 * possible stand in some set; greedily, the most constrained tasks first. Each is a unary resource; of all
 * found the `most` longest are kept, since each is looked at again and again.
 */
export function cliquesOf(
  lengths: readonly number[],
  pairs: readonly Pair[],
  most: number,
): number[][] {
  const count = lengths.length;
  if (count > 1000) return [];
  const apart = new Uint8Array(count * count);
  const degree = new Int32Array(count);
  for (const { first, second, between, back } of pairs) {
    if (between < 0 || back < 0) continue;
    apart[first * count + second] = 1;
    apart[second * count + first] = 1;
    degree[first]! += 1;
    degree[second]! += 1;
  }
  const order = [...degree.keys()].sort((a, b) => degree[b]! - degree[a]! || a - b);
  const covered = new Uint8Array(count * count);
  const cliques: number[][] = [];
  const grow = (seeds: number[]): number[] => {
    const members = [...seeds];
    for (const fresh of [true, false]) {
      for (const task of order) {
        if (members.includes(task)) continue;
        if (!members.every((other) => apart[task * count + other] === 1)) continue;
        // First those that bring pairs not yet in a set, then whoever fits.
        if (fresh && members.every((other) => covered[task * count + other] === 1)) continue;
        members.push(task);
      }
    }
    return members;
  };
  for (const first of order) {
    for (const second of order) {
      if (cliques.length === LOOKED_AT) break;
      if (apart[first * count + second] === 0 || covered[first * count + second] === 1) continue;
      const members = grow([first, second]);
      for (const a of members) for (const b of members) covered[a * count + b] = 1;
      if (members.length >= LEAST) cliques.push(members.sort((a, b) => a - b));
    }
  }
  const total = (members: readonly number[]): number =>
    members.reduce((sum, task) => sum + lengths[task]!, 0);
  return cliques.sort((a, b) => total(b) - total(a)).slice(0, most);
}

/**
 * For each of `members` (which stand in pairs, each with each) the least time after its end before any other of
 * them can begin. With so much added to length and end, they are still one at a time: what a set of them
 * takes then counts the setups between them, if only at their least.
 *
 * @example gapsAfter([0, 1], [{ first: 0, second: 1, between: 3, back: 5, … }]) // [3, 5]
 */
export function gapsAfter(members: readonly number[], pairs: readonly Pair[]): number[] {
  const gaps = new Map(members.map((task) => [task, Infinity]));
  for (const { first, second, between, back } of pairs) {
    const forth = gaps.get(first);
    const other = gaps.get(second);
    if (forth === undefined || other === undefined) continue;
    gaps.set(first, Math.min(forth, between));
    gaps.set(second, Math.min(other, back));
  }
  return members.map((task) => gaps.get(task)!);
}
