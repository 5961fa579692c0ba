/** The place in a row, in order of where they begin, of the first that begins at a token or behind it; by halving. */
export function indexAt(row: readonly { readonly begin: number }[], token: number): number {
  let low = 0;
  let high = row.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((row[middle]?.begin ?? 0) < token) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The first of a row, in order of where they begin, that begins at a token or behind it. */
export const atOrBehind = <T extends { readonly begin: number }>(
  row: readonly T[],
  token: number,
): T | undefined => row[indexAt(row, token)];
