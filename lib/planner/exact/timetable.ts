/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import type { Propagator } from './engine';
import { boundsOf, type Occupation } from './occupation';
import type { Trail } from './trail';

/**
 * The cumulative resource by its timetable: each task is certainly there between its latest start and its
 * earliest end, and where these parts leave too little, no other task can be. Explained point by point, as in
 * Schutt, Feydy, Stuckey, Wallace, "Explaining the cumulative propagator", Constraints 16, 2011.
 *
 * Invariant of an explanation at time t: the named tasks are said to start by t and to end after t, no more
 * than that, and their units with those of the pushed task exceed the capacity. Tasks that are there at the
 * root are counted first and cost nothing; then the largest, so that few are named.
 */
export class Timetable implements Propagator {
  readonly wakes: readonly number[];
  readonly turn = 0;
  private readonly count: number;
  private readonly low: Int32Array;
  private readonly lateStart: Int32Array;
  private readonly earlyEnd: Int32Array;
  private readonly endOffset: Int32Array;
  private readonly units: Int32Array;
  private readonly fixedLength: Uint8Array;
  /** Latest start and earliest end of each task now, and the tasks in ascending order of each. */
  private readonly begin: Int32Array;
  private readonly finish: Int32Array;
  private readonly byBegin: Int32Array;
  private readonly byFinish: Int32Array;
  /** The profile: `height[k]` units from `at[k]` to `at[k + 1]`. */
  private readonly at: Int32Array;
  private readonly height: Int32Array;
  private pieces = 0;
  private readonly leastUnits: number;

  constructor(
    readonly name: string,
    occupations: readonly Occupation[],
    private readonly capacity: number,
  ) {
    const sorted = [...occupations].sort((a, b) => b.units - a.units);
    this.wakes = boundsOf(sorted);
    this.count = sorted.length;
    this.low = Int32Array.from(sorted, ({ start }) => 2 * start);
    this.lateStart = Int32Array.from(sorted, ({ start }) => 2 * start + 1);
    this.earlyEnd = Int32Array.from(sorted, ({ end }) => 2 * end);
    this.endOffset = Int32Array.from(sorted, ({ endOffset }) => endOffset);
    this.units = Int32Array.from(sorted, ({ units }) => units);
    this.fixedLength = Uint8Array.from(sorted, ({ start, end }) => (start === end ? 1 : 0));
    this.begin = new Int32Array(this.count);
    this.finish = new Int32Array(this.count);
    this.byBegin = Int32Array.from(sorted, (_, index) => index);
    this.byFinish = this.byBegin.slice();
    this.at = new Int32Array(2 * this.count + 2);
    this.height = new Int32Array(2 * this.count + 2);
    this.leastUnits = sorted.at(-1)?.units ?? 0;
  }

  propagate(trail: Trail): boolean {
    const highest = this.build(trail);
    if (highest > this.capacity) return this.overload(trail);
    if (highest + this.leastUnits <= this.capacity) return true;
    const { bound } = trail;
    for (let task = 0; task < this.count; task += 1) {
      const units = this.units[task]!;
      // In descending order of units: the rest fits everywhere.
      if (highest + units <= this.capacity) break;
      const low = this.low[task]!;
      const end = this.earlyEnd[task]!;
      if (bound[low]! + bound[low ^ 1]! === 0 && bound[end]! + bound[end ^ 1]! === 0) continue;
      if (!this.pushLater(trail, task, units)) return false;
      if (!this.pushEarlier(trail, task, units)) return false;
    }
    return true;
  }

  /** Builds the profile of the certain parts; returns its greatest height. */
  private build(trail: Trail): number {
    const { bound } = trail;
    const { count, begin, finish, byBegin, byFinish, units, at, height } = this;
    for (let task = 0; task < count; task += 1) {
      begin[task] = -bound[this.lateStart[task]!]!;
      finish[task] = bound[this.earlyEnd[task]!]! + this.endOffset[task]!;
    }
    sortBy(byBegin, begin);
    sortBy(byFinish, finish);
    let pieces = 0;
    let now = 0;
    let highest = 0;
    let b = 0;
    let f = 0;
    for (;;) {
      while (b < count && begin[byBegin[b]!]! >= finish[byBegin[b]!]!) b += 1;
      while (f < count && begin[byFinish[f]!]! >= finish[byFinish[f]!]!) f += 1;
      if (f === count) break;
      const nextFinish = finish[byFinish[f]!]!;
      const starts = b < count && begin[byBegin[b]!]! < nextFinish;
      const time = starts ? begin[byBegin[b]!]! : nextFinish;
      if (starts) {
        now += units[byBegin[b]!]!;
        b += 1;
      } else {
        now -= units[byFinish[f]!]!;
        f += 1;
      }
      if (pieces > 0 && at[pieces - 1] === time) pieces -= 1;
      at[pieces] = time;
      height[pieces] = now;
      pieces += 1;
      if (now > highest) highest = now;
    }
    at[pieces] = FAR;
    this.pieces = pieces;
    return highest;
  }

  private overload(trail: Trail): boolean {
    let piece = 0;
    while (this.height[piece]! <= this.capacity) piece += 1;
    const time = (this.at[piece]! + this.at[piece + 1]! - 1) >> 1;
    trail.because();
    this.explain(trail, time, -1, this.capacity);
    return trail.failBecause();
  }

  /** Names tasks that are there at `time` until they take more than `free` units. */
  private explain(trail: Trail, time: number, except: number, free: number): void {
    const { rootBound } = trail;
    const { count, begin, finish, units, lateStart, earlyEnd, endOffset } = this;
    let left = free;
    for (let task = 0; task < count; task += 1) {
      if (task === except || begin[task]! > time || finish[task]! <= time) continue;
      if (rootBound[lateStart[task]!]! < -time) continue;
      if (rootBound[earlyEnd[task]!]! <= time - endOffset[task]!) continue;
      left -= units[task]!;
    }
    for (let task = 0; left >= 0 && task < count; task += 1) {
      if (task === except || begin[task]! > time || finish[task]! <= time) continue;
      const ends = time + 1 - endOffset[task]!;
      if (rootBound[lateStart[task]!]! >= -time && rootBound[earlyEnd[task]!]! >= ends) continue;
      left -= units[task]!;
      trail.say(lateStart[task]!, -time);
      trail.say(earlyEnd[task]!, ends);
    }
  }

  private pushLater(trail: Trail, task: number, units: number): boolean {
    const { bound } = trail;
    const { at, height, pieces, capacity } = this;
    const low = this.low[task]!;
    const end = this.earlyEnd[task]!;
    const offset = this.endOffset[task]!;
    const ownFrom = this.begin[task]!;
    const ownTo = this.finish[task]!;
    for (let piece = this.pieceAt(bound[low]!); piece < pieces; piece += 1) {
      let ends = bound[end]! + offset;
      if (at[piece]! >= ends) break;
      if (height[piece]! + units <= capacity) continue;
      const from = at[piece]!;
      const to = at[piece + 1]!;
      if (ownFrom <= from && to <= ownTo) continue;
      while (bound[low]! < to && ends > from) {
        const time = Math.min(to, ends) - 1;
        trail.because();
        trail.say(end, time + 1 - offset);
        this.explain(trail, time, task, capacity - units);
        if (!trail.raise(low, time + 1, trail.said())) return false;
        // With a length of its own to choose, the end follows by its difference; it comes back here.
        if (this.fixedLength[task] === 0) return true;
        ends = bound[end]! + offset;
      }
    }
    return true;
  }

  private pushEarlier(trail: Trail, task: number, units: number): boolean {
    const { bound } = trail;
    const { at, height, capacity } = this;
    const lateStart = this.lateStart[task]!;
    const lateEnd = this.earlyEnd[task]! ^ 1;
    const offset = this.endOffset[task]!;
    const ownFrom = this.begin[task]!;
    const ownTo = this.finish[task]!;
    for (let piece = this.pieceAt(offset - bound[lateEnd]! - 1); piece >= 0; piece -= 1) {
      let starts = -bound[lateStart]!;
      if (at[piece + 1]! <= starts) break;
      if (height[piece]! + units <= capacity) continue;
      const from = at[piece]!;
      const to = at[piece + 1]!;
      if (ownFrom <= from && to <= ownTo) continue;
      while (offset - bound[lateEnd]! > from && starts < to) {
        const time = Math.max(from, starts);
        trail.because();
        trail.say(lateStart, -time);
        this.explain(trail, time, task, capacity - units);
        if (!trail.raise(lateEnd, offset - time, trail.said())) return false;
        if (this.fixedLength[task] === 0) return true;
        starts = -bound[lateStart]!;
      }
    }
    return true;
  }

  /** The piece that holds `time`, or the first if all are later. */
  private pieceAt(time: number): number {
    const { at } = this;
    let low = 0;
    let high = this.pieces - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (at[middle]! <= time) low = middle;
      else high = middle - 1;
    }
    return low;
  }
}

/** Where the last piece ends. */
const FAR = 2 ** 30;

/** Sorts `order` by `key`, ascending. By insertion, since it is nearly sorted from the call before. */
function sortBy(order: Int32Array, key: Int32Array): void {
  for (let index = 1; index < order.length; index += 1) {
    const item = order[index]!;
    const value = key[item]!;
    let at = index - 1;
    while (at >= 0 && key[order[at]!]! > value) {
      order[at + 1] = order[at]!;
      at -= 1;
    }
    order[at + 1] = item;
  }
}
