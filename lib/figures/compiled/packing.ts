import type { Product } from '#lib/figures/compiled/summand';

/** Entries of a sum, with the numbers of their factors in one row, one entry after the other. */
export interface Packed {
  readonly entries: readonly Product[];
  readonly numbers: Float64Array;
}

/** Lays out the numbers of entries. */
export function pack(entries: readonly Product[]): Packed {
  const length = entries.reduce((sum, { numbers }) => sum + numbers.length, 0);
  return packAgain({ entries: [], numbers: new Float64Array(length) }, entries);
}

/**
 * Lays out the numbers of entries in the row of others that had the same arrangement, and are no longer read: of those
 * that are the very same objects they stand there already.
 */
export function packAgain(
  { entries: before, numbers: row }: Packed,
  entries: readonly Product[],
): Packed {
  let to = 0;
  for (let place = 0; place < entries.length; place += 1) {
    const entry = entries[place];
    if (!entry) continue;
    if (entry !== before[place]) row.set(entry.numbers, to);
    to += entry.numbers.length;
  }
  return { entries, numbers: row };
}
