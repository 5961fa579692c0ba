import type { DayFold } from '#lib/shoot/fold-day';
import type { LiveRow } from '../live-row';

/** How a row stands in the order, and in words. */
export interface RowState {
  readonly kind: 'done' | 'now' | 'open';
  readonly words: string;
}

/** The row that was marked done last, which is the one a slip of the finger concerns. */
export function lastDone(
  { doneAt }: DayFold,
  rows: readonly LiveRow[],
): { readonly row: LiveRow; readonly at: string } | null {
  const [last] = rows
    .flatMap((row) => {
      const at = doneAt.get(row.key);
      return at === undefined ? [] : [{ row, at }];
    })
    .sort((a, b) => (a.at < b.at ? 1 : a.at > b.at ? -1 : 0));
  return last ?? null;
}

/** When rows were done that the order no longer has: a step taken out, a plan made anew. */
export function leftOver(
  { doneAt }: DayFold,
  rows: readonly LiveRow[],
  clock: (at: string) => string,
): string[] {
  const there = new Set(rows.map(({ key }) => key));
  return [...doneAt]
    .filter(([key]) => !there.has(key) && !key.startsWith('entry pickup:'))
    .map(([, at]) => clock(at));
}
