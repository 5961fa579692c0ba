/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
/**
 * Atoms: the only statements the engine reasons with.
 *
 * A variable `x` has two bounds: bound `2x` is its lower bound, bound `2x + 1` is its upper bound negated, so
 * that every bound only ever rises. The atom `(b, v)` says "bound b is at least v":
 * `(2x, 5)` is x ≥ 5, `(2x + 1, -5)` is x ≤ 5. Its negation is `(b ^ 1, 1 - v)`.
 * These are the order literals of lazy clause generation (Ohrimenko, Stuckey, Codish, Constraints 14, 2009),
 * kept as numbers and never made into Boolean variables.
 */

/** A list of atoms that is filled again and again without allocation. */
export class AtomList {
  bound = new Int32Array(256);
  value = new Int32Array(256);
  size = 0;

  push(bound: number, value: number): void {
    const at = this.size;
    if (at === this.bound.length) {
      this.bound = grown(this.bound);
      this.value = grown(this.value);
    }
    this.bound[at] = bound;
    this.value[at] = value;
    this.size = at + 1;
  }
}

/** The same numbers in an array of twice the length. */
export function grown(array: Int32Array): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(Math.max(16, array.length * 2));
  larger.set(array);
  return larger;
}

/** The bound that says `variable ≥ …`. `lower(3) === 6` */
export const lower = (variable: number): number => 2 * variable;

/** The bound that says `variable ≤ …`, with values negated. `upper(3) === 7` */
export const upper = (variable: number): number => 2 * variable + 1;

/** Lists by bound in one flat array: those of `b` stand in `items` from `start[b]` to `start[b + 1]`. */
export interface ListsByBound {
  readonly start: Int32Array;
  readonly items: Int32Array;
}

/** Packs numbers (`numbers[k]` belongs to bound `keys[k]`) into flat lists, in the order given. */
export function packByBound(
  bounds: number,
  keys: ArrayLike<number>,
  numbers: ArrayLike<number>,
): ListsByBound {
  const start = new Int32Array(bounds + 1);
  for (let k = 0; k < keys.length; k += 1) start[keys[k]! + 1]! += 1;
  for (let bound = 0; bound < bounds; bound += 1) start[bound + 1]! += start[bound]!;
  const next = start.slice();
  const items = new Int32Array(keys.length);
  for (let k = 0; k < keys.length; k += 1) {
    const bound = keys[k]!;
    items[next[bound]!] = numbers[k]!;
    next[bound]! += 1;
  }
  return { start, items };
}
