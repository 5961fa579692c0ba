/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */

/** Each conflict counts this much less than the next. */
const DECAY = 0.95;

/**
 * Activities of variables, and the open ones in a heap by activity (VSIDS: Moskewicz et al., DAC 2001, in
 * the exponential form of MiniSat, Eén & Sörensson, SAT 2003). Ties by number, so that runs repeat.
 *
 * Invariant: every variable that is not yet fixed is in the heap, or was taken since and will be put back.
 */
export class Activity {
  private readonly activity: Float64Array;
  private readonly heap: Int32Array;
  private readonly place: Int32Array;
  private readonly chosen: Uint8Array;
  private size = 0;
  private add = 1;

  constructor(variables: number, chosen: readonly number[], random: () => number) {
    this.activity = new Float64Array(variables);
    this.heap = new Int32Array(variables);
    this.place = new Int32Array(variables).fill(-1);
    this.chosen = new Uint8Array(variables);
    for (const variable of chosen) {
      this.chosen[variable] = 1;
      this.activity[variable] = random() * 1e-3;
      this.put(variable);
    }
  }

  bump(variable: number): void {
    this.activity[variable]! += this.add;
    if (this.activity[variable]! > 1e100) {
      for (let x = 0; x < this.activity.length; x += 1) this.activity[x]! *= 1e-100;
      this.add *= 1e-100;
    }
    if (this.place[variable]! >= 0) this.up(this.place[variable]!);
  }

  decay(): void {
    this.add /= DECAY;
  }

  put(variable: number): void {
    if (this.place[variable]! >= 0) return;
    if (this.chosen[variable] === 0) return;
    this.heap[this.size] = variable;
    this.place[variable] = this.size;
    this.size += 1;
    this.up(this.size - 1);
  }

  /** Takes the most active variable; -1 if there is none. */
  take(): number {
    if (this.size === 0) return -1;
    const { heap, place } = this;
    const top = heap[0]!;
    place[top] = -1;
    this.size -= 1;
    if (this.size > 0) {
      heap[0] = heap[this.size]!;
      place[heap[0]!] = 0;
      this.down(0);
    }
    return top;
  }

  private before(a: number, b: number): boolean {
    const difference = this.activity[a]! - this.activity[b]!;
    return difference > 0 || (difference === 0 && a < b);
  }

  private up(from: number): void {
    const { heap, place } = this;
    const x = heap[from]!;
    let at = from;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (!this.before(x, heap[parent]!)) break;
      heap[at] = heap[parent]!;
      place[heap[at]!] = at;
      at = parent;
    }
    heap[at] = x;
    place[x] = at;
  }

  private down(from: number): void {
    const { heap, place, size } = this;
    const x = heap[from]!;
    let at = from;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= size) break;
      if (child + 1 < size && this.before(heap[child + 1]!, heap[child]!)) child += 1;
      if (!this.before(heap[child]!, x)) break;
      heap[at] = heap[child]!;
      place[heap[at]!] = at;
      at = child;
    }
    heap[at] = x;
    place[x] = at;
  }
}
