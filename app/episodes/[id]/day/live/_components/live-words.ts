import type { RowEvent } from '#lib/shoot/day-log';
import type { DayFold } from '#lib/shoot/fold-day';
import type { LiveRow } from '../live-row';

/** How a row stands in the order, and in words. */
export interface RowState {
  readonly kind: 'done' | 'skipped' | 'now' | 'underWay' | 'open';
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

/** How a row stands in the order, in words. */
export function stateOfRow(
  row: LiveRow,
  {
    now,
    next,
    fold,
    behind,
    clock,
  }: {
    readonly now: LiveRow | null;
    readonly next: LiveRow | null;
    readonly fold: DayFold;
    readonly behind: boolean;
    readonly clock: (at: string) => string;
  },
): RowState {
  const done = fold.doneAt.get(row.key);
  if (done !== undefined) return { kind: 'done', words: `done ${clock(done)}` };
  const skipped = fold.skippedAt.get(row.key);
  if (skipped !== undefined) return { kind: 'skipped', words: `skipped ${clock(skipped)}` };
  const times = fold.redone.get(row.key) ?? 0;
  const again = times === 0 ? '' : ', again';
  const since = fold.startedAt.get(row.key);
  if (row === now) return { kind: 'now', words: `now${again}` };
  if (since !== undefined) {
    return { kind: 'underWay', words: `under way since ${clock(since)}${again}` };
  }
  if (row === next) return { kind: 'open', words: `next${again}` };
  return { kind: 'open', words: behind ? 'over' : again.replace(', ', '') };
}

/** What was just pressed, for who does not see the screen. */
export const SAID: Readonly<Record<RowEvent['kind'], string>> = {
  started: 'Started',
  done: 'Done',
  skipped: 'Skipped',
  redo: 'To be made again',
  takenBack: 'Taken back',
};
