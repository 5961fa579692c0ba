import type { Product } from '#lib/figures/compiled/summand';

/** Entries of a sum, with the numbers of their factors in one row, one entry after the other. */
export interface Packed {
  readonly entries: readonly Product[];
  /** Where the numbers of each begin. */
  readonly begins: Int32Array;
  readonly numbers: Float64Array;
}

/** Lays out the numbers of entries. */
export function pack(entries: readonly Product[]): Packed {
  const begins = new Int32Array(entries.length);
  let length = 0;
  entries.forEach(({ numbers }, place) => {
    begins[place] = length;
    length += numbers.length;
  });
  return packAgain({ entries: [], begins, numbers: new Float64Array(length) }, entries);
}

/**
 * Lays out the numbers of entries in the row of others that had the same arrangement, and are no longer read. Those
 * that are the very same objects stand there already and are not looked into.
 */
export function packAgain(
  { entries: before, begins, numbers }: Packed,
  entries: readonly Product[],
): Packed {
  for (let place = 0; place < entries.length; place += 1) {
    const entry = entries[place];
    if (entry && entry !== before[place]) numbers.set(entry.numbers, begins[place]);
  }
  return { entries, begins, numbers };
}
