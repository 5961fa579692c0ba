/** The first of a row, in order of where they begin, that begins at a token or behind it; by halving. */
export function atOrBehind<T extends { readonly begin: number }>(
  row: readonly T[],
  token: number,
): T | undefined {
  let low = 0;
  let high = row.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((row[middle]?.begin ?? 0) < token) low = middle + 1;
    else high = middle;
  }
  return row[low];
}
