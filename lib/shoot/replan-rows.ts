import { rowKey, rowRefOf } from '#lib/shoot/day-log';
import type { DayFold } from '#lib/shoot/fold-day';
import type { PlanEntry } from '#lib/shoot/plan';

/** What is looked at in an entry of the order that was promised. */
export type PromisedEntry = Pick<
  PlanEntry,
  'id' | 'kind' | 'stepId' | 'startMin' | 'endMin' | 'hands'
>;

/** How an entry stands at an instant, in minutes of the filming day. */
export type RowNow =
  | { readonly kind: 'over'; readonly startMin: number; readonly endMin: number }
  | { readonly kind: 'skipped'; readonly atMin: number }
  | {
      readonly kind: 'underWay';
      readonly startMin: number;
      /** When it is expected to be over, not before now. */
      readonly untilMin: number;
      /** Nobody said that it was begun: it is the first that is not over, and its time has come. */
      readonly assumed: boolean;
    }
  | { readonly kind: 'open' };

/** The present minute of the day, and the minute in which an instant lies. */
export interface DayClock {
  readonly nowMin: number;
  readonly minuteOf: (at: string) => number;
}

/**
 * How the steps and washing-ups of an order stand, by entry id. Of a step that was marked done and never begun, the
 * promised start is taken, or so much before its end as it usually takes, whichever is earlier: food that stands
 * out is then never counted too short.
 *
 * What is first in the order and not over is taken to be under way once its time has come, up to and with the first
 * that takes the hands, unless something else has them: who is busy does not press 'Started' each time.
 */
export function rowsNow(
  entries: readonly PromisedEntry[],
  fold: DayFold,
  { nowMin, minuteOf }: DayClock,
): Map<string, RowNow> {
  const known = (at: string | undefined) =>
    at === undefined ? null : Math.min(nowMin, minuteOf(at));
  const rows = new Map<string, RowNow>();
  const asked = entries.filter(({ kind }) => kind === 'step' || kind === 'washUp');
  let handsFree = -Infinity;
  for (const entry of asked) {
    const row = marked(entry, fold, known, { nowMin, minuteOf });
    rows.set(entry.id, row);
    if (row.kind === 'over' && entry.hands) handsFree = Math.max(handsFree, row.endMin);
  }
  const taken = asked.some(({ id, hands }) => hands && rows.get(id)?.kind === 'underWay');
  for (const { id, startMin, endMin, hands } of [...asked].sort(inOrder)) {
    if (rows.get(id)?.kind !== 'open') continue;
    if (startMin > nowMin || (hands && taken)) break;
    const begun = hands ? Math.min(nowMin, Math.max(startMin, handsFree)) : startMin;
    const untilMin = Math.max(nowMin, begun + endMin - startMin);
    rows.set(id, { kind: 'underWay', startMin: begun, untilMin, assumed: true });
    if (hands) break;
  }
  return rows;
}

/**
 * By how many minutes the day is behind what was promised: the most that anything is late which is under way, or
 * should have begun. 0 where nothing is.
 */
export function slipMin(
  entries: readonly PromisedEntry[],
  rows: ReadonlyMap<string, RowNow>,
  nowMin: number,
): number {
  return entries.reduce((most, { id, startMin, endMin }) => {
    const row = rows.get(id);
    if (row?.kind === 'underWay') return Math.max(most, row.untilMin - endMin);
    return row?.kind === 'open' ? Math.max(most, nowMin - startMin) : most;
  }, 0);
}

function marked(
  entry: PromisedEntry,
  fold: DayFold,
  known: (at: string | undefined) => number | null,
  { nowMin, minuteOf }: DayClock,
): RowNow {
  const key = rowKey(rowRefOf(entry));
  const length = entry.endMin - entry.startMin;
  const begun = known(fold.startedAt.get(key));
  const done = known(fold.doneAt.get(key));
  if (done !== null) {
    const startMin = Math.min(done, begun ?? Math.min(entry.startMin, done - length));
    return { kind: 'over', startMin, endMin: done };
  }
  const skipped = known(fold.skippedAt.get(key));
  if (skipped !== null) return { kind: 'skipped', atMin: skipped };
  if (begun === null) return { kind: 'open' };
  const longer = fold.longerUntil.get(key);
  const untilMin = Math.max(nowMin, longer === undefined ? begun + length : minuteOf(longer));
  return { kind: 'underWay', startMin: begun, untilMin, assumed: false };
}

function inOrder(a: PromisedEntry, b: PromisedEntry): number {
  return a.startMin - b.startMin || Number(b.hands) - Number(a.hands) || (a.id < b.id ? -1 : 1);
}
