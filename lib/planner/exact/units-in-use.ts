/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */

/**
 * The units of one resource that are in use over time, as pieces in ascending order.
 * Invariant: `used[k]` units from `at[k]` up to `at[k + 1]`; the first piece begins before every time asked
 * for, the last has no end and nothing in use.
 */
export class UnitsInUse {
  private readonly at: Int32Array;
  private readonly used: Int32Array;
  private size = 0;

  /** @param parts how many parts can be added at most */
  constructor(
    private readonly capacity: number,
    parts: number,
  ) {
    this.at = new Int32Array(2 * parts + 2);
    this.used = new Int32Array(2 * parts + 2);
    this.clear();
  }

  clear(): void {
    this.at[0] = -(2 ** 30);
    this.used[0] = 0;
    this.size = 1;
  }

  /** `time` if so many units are free from then for `length`, else the next time worth a try. */
  firstTry(time: number, length: number, units: number): number {
    const { at, used, size } = this;
    const free = this.capacity - units;
    for (let k = this.pieceAt(time); k < size && at[k]! < time + length; k += 1) {
      if (used[k]! > free) return at[k + 1]!;
    }
    return time;
  }

  add(time: number, length: number, units: number): void {
    const first = this.cut(time);
    const last = this.cut(time + length);
    for (let k = first; k < last; k += 1) this.used[k]! += units;
  }

  private pieceAt(time: number): number {
    let low = 0;
    let high = this.size - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.at[middle]! <= time) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  private cut(time: number): number {
    const { at, used } = this;
    const k = this.pieceAt(time);
    if (at[k] === time) return k;
    at.copyWithin(k + 2, k + 1, this.size);
    used.copyWithin(k + 2, k + 1, this.size);
    at[k + 1] = time;
    used[k + 1] = used[k]!;
    this.size += 1;
    return k + 1;
  }
}
