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
  /** Room for the columns that one `add` changes; holds nothing between calls. */
  private readonly columns: Int32Array;

  constructor(size: number) {
    this.size = size;
    this.low = new Int32Array(size * size).fill(NONE);
    this.columns = new Int32Array(size);
    for (let i = 0; i < size; i += 1) this.low[i * size + i] = 0;
  }

  /** A net with the same bounds; written over `into` where that is given and of the same size. */
  copy(into?: TimeNet): TimeNet {
    const twin = into?.size === this.size ? into : new TimeNet(this.size);
    twin.low.set(this.low);
    return twin;
  }

  /**
   * Adds `time(v) ≥ time(u) + gap`. False, and nothing changed, if that contradicts what is known.
   * A maximum lag is the same call the other way round with a negative gap.
   */
  add(u: number, v: number, gap: number): boolean {
    if (u === v) return gap <= 0;
    const { low, size, columns } = this;
    const rowU = u * size;
    const rowV = v * size;
    if ((low[rowU + v] as number) >= gap) return true;
    const back = low[rowV + u] as number;
    if (back !== NONE && back + gap > 0) return false;
    // Only where the way from u improves can any way improve, so only those columns are looked at.
    let count = 0;
    for (let j = 0; j < size; j += 1) {
      const fromV = low[rowV + j] as number;
      if (fromV !== NONE && gap + fromV > (low[rowU + j] as number)) {
        columns[count] = j;
        count += 1;
      }
    }
    for (let i = 0; i < size; i += 1) {
      const rowI = i * size;
      const toU = low[rowI + u] as number;
      if (toU === NONE) continue;
      const via = toU + gap;
      if (via <= (low[rowI + v] as number)) continue;
      for (let k = 0; k < count; k += 1) {
        const j = columns[k] as number;
        const through = via + (low[rowV + j] as number);
        if (through > (low[rowI + j] as number)) low[rowI + j] = through;
      }
    }
    return true;
  }
}
