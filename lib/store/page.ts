/** A part of a long list, and the id after which the next part begins; null at the end. */
export interface Page<T> {
  readonly rows: readonly T[];
  readonly next: string | null;
}

/** Which part of a list: after the row with this id, at most so many. */
export interface PageOf {
  readonly after?: string | undefined;
  readonly take?: number | undefined;
}

const MOST = 200;

/** How many rows to ask for: one more than wanted, which tells whether there are more. */
export function wanted({ take = 50 }: PageOf): number {
  return Math.max(1, Math.min(take, MOST)) + 1;
}

/** The page out of the rows found by `wanted`. */
export function pageOf<T extends { readonly id: string }>(
  found: readonly T[],
  of: PageOf,
): Page<T> {
  const rows = found.slice(0, wanted(of) - 1);
  return { rows, next: found.length > rows.length ? (rows.at(-1)?.id ?? null) : null };
}
