/** Ids above this are kept one by one. */
const MOST_IN_BITS = 2 ** 27;

/** A set of whole numbers as bits: two million numbers of FoodData Central take less than a megabyte. */
export class IdSet {
  #bits = new Uint8Array(1 << 16);
  readonly #large = new Set<number>();

  add(id: number): void {
    if (id >= MOST_IN_BITS) {
      this.#large.add(id);
      return;
    }
    const at = id >>> 3;
    if (at >= this.#bits.length) {
      const grown = new Uint8Array(Math.max(at + 1, this.#bits.length * 2));
      grown.set(this.#bits);
      this.#bits = grown;
    }
    this.#bits[at] = (this.#bits[at] ?? 0) | (1 << (id & 7));
  }

  has(id: number): boolean {
    if (id >= MOST_IN_BITS) return this.#large.has(id);
    return ((this.#bits[id >>> 3] ?? 0) & (1 << (id & 7))) !== 0;
  }
}
