/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import type { Difference } from './differences';

/** Where there is no path. */
export const NO_PATH = -(2 ** 30);

/**
 * How much later each variable is than each other at least: the longest paths over differences that always
 * hold (Floyd 1962). `[from * count + to]`; null if a positive cycle makes the differences impossible.
 */
export function longestPaths(
  count: number,
  differences: readonly Difference[],
): Int32Array<ArrayBuffer> | null {
  const path = new Int32Array(count * count).fill(NO_PATH);
  for (let x = 0; x < count; x += 1) path[x * count + x] = 0;
  for (const { from, to, weight, ifBound } of differences) {
    if (ifBound < 0 && weight > path[from * count + to]!) path[from * count + to] = weight;
  }
  for (let via = 0; via < count; via += 1) {
    for (let from = 0; from < count; from += 1) {
      const first = path[from * count + via]!;
      if (first === NO_PATH) continue;
      for (let to = 0; to < count; to += 1) {
        const second = path[via * count + to]!;
        if (second === NO_PATH || first + second <= path[from * count + to]!) continue;
        path[from * count + to] = first + second;
      }
      if (path[from * count + from]! > 0) return null;
    }
  }
  return path;
}

/** Adds one difference to closed paths in place. False if it closes a positive cycle. */
export function addToPaths(
  path: Int32Array,
  count: number,
  from: number,
  to: number,
  weight: number,
): boolean {
  if (path[from * count + to]! >= weight) return true;
  const back = path[to * count + from]!;
  if (back !== NO_PATH && back + weight > 0) return false;
  for (let x = 0; x < count; x += 1) {
    const ahead = path[x * count + from]!;
    if (ahead === NO_PATH) continue;
    for (let y = 0; y < count; y += 1) {
      const rest = path[to * count + y]!;
      if (rest === NO_PATH || ahead + weight + rest <= path[x * count + y]!) continue;
      path[x * count + y] = ahead + weight + rest;
    }
  }
  return true;
}
