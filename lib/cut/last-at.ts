/** The last of a row in order that begins at an offset or before it. */
export function lastAt<T extends { readonly start: number }>(
  row: readonly T[],
  offset: number,
): T | undefined {
  let low = 0;
  let high = row.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((row[middle]?.start ?? 0) <= offset) low = middle + 1;
    else high = middle;
  }
  return row[low - 1];
}
