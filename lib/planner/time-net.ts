/** No lower bound between two points. */
export const NONE = -(2 ** 30);

/**
 * Points in time and, for every two of them, the longest known lower bound on their distance:
 * `time(v) ≥ time(u) + low[u · size + v]`. Adding one bound updates all pairs, so that each pair's
 * bounds are always exact for the bounds added so far (incremental all-pairs longest paths).
 *
 * Law: if every `add` returned true, the times `low[origin → v]` satisfy every added bound.
 */
export class TimeNet {
  readonly size: number;
  readonly low: Int32Array;

  constructor(size: number, low?: Int32Array) {
    this.size = size;
    if (low === undefined) {
      this.low = new Int32Array(size * size).fill(NONE);
      for (let i = 0; i < size; i += 1) this.low[i * size + i] = 0;
    } else {
      this.low = low;
    }
  }

  copy(): TimeNet {
    return new TimeNet(this.size, this.low.slice());
  }

  /**
   * Adds `time(v) ≥ time(u) + gap`. False, and nothing changed, if that contradicts what is known.
   * A maximum lag is the same call the other way round with a negative gap.
   */
  add(u: number, v: number, gap: number): boolean {
    if (u === v) return gap <= 0;
    const { low, size } = this;
    if ((low[u * size + v] as number) >= gap) return true;
    const back = low[v * size + u] as number;
    if (back !== NONE && back + gap > 0) return false;
    const rowV = v * size;
    for (let i = 0; i < size; i += 1) {
      const toU = low[i * size + u] as number;
      if (toU === NONE) continue;
      const via = toU + gap;
      const rowI = i * size;
      if (via <= (low[rowI + v] as number)) continue;
      for (let j = 0; j < size; j += 1) {
        const fromV = low[rowV + j] as number;
        if (fromV !== NONE && via + fromV > (low[rowI + j] as number)) low[rowI + j] = via + fromV;
      }
    }
    return true;
  }
}
