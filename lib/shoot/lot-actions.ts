import { filmedTogether, type DayFile } from '#lib/episode/also-filmed';
import type { Perishable } from '#lib/episode/step-schema';
import { sourceText } from '#lib/safety/caution';
import { TWO_HOURS } from '#lib/safety/general-cautions';
import { minutesText } from '#lib/shoot/day-words';
import { floorMin } from '#lib/shoot/minutes';
import { taskIdOf } from '#lib/shoot/problem-parts';
import type { RowNow } from '#lib/shoot/replan-rows';

/** What to do at once about something that the day has broken already, and who says so. */
export interface NextAction {
  readonly text: string;
  readonly source: string | null;
}

/** Food that may stand out of the refrigerator for so long on the day. */
export interface DayLot extends Pick<Perishable, 'id' | 'name' | 'spans'> {
  readonly limitMin: number;
}

/** The lots of a day that have a clock: what is thrown away after its picture has none. */
export function dayLots(file: DayFile): DayLot[] {
  const { day, episode } = filmedTogether(file);
  const ids = new Set(day?.segments.map(({ segmentId }) => segmentId));
  return episode.segments
    .filter(({ id }) => ids.has(id))
    .flatMap(({ perishables }) => perishables)
    .filter(({ thrownAway }) => !thrownAway)
    .map(({ id, name, spans, limitS }) => ({ id, name, spans, limitMin: floorMin(limitS) }));
}

/**
 * The next thing to do about each lot that has stood out for longer than it may, will have in the order as it stands,
 * or was left out by a step that was skipped. The two-hour rule with its source (REFERENCES.md, section 5).
 *
 * @param entries the order that the person goes by: what has not begun is taken to be when it is promised, or now
 */
export function lotsNow(
  lots: readonly DayLot[],
  entries: readonly { readonly id: string; readonly startMin: number; readonly endMin: number }[],
  rows: ReadonlyMap<string, RowNow>,
  nowMin: number,
): NextAction[] {
  const byId = new Map(entries.map((entry) => [entry.id, entry]));
  const expected = (stepId: string, anchor: 'start' | 'end'): number | null => {
    const id = taskIdOf(stepId);
    const row = rows.get(id);
    if (row?.kind === 'skipped') return null;
    if (row?.kind === 'over') return anchor === 'start' ? row.startMin : row.endMin;
    if (row?.kind === 'underWay') return anchor === 'start' ? row.startMin : row.untilMin;
    const entry = byId.get(id);
    if (entry === undefined) return null;
    const late = Math.max(0, nowMin - entry.startMin);
    return (anchor === 'start' ? entry.startMin : entry.endMin) + late;
  };
  return lots.flatMap((lot) => {
    const minutes = lot.spans.reduce((sum, span) => {
      const from = expected(span.fromStepId, span.fromAnchor);
      const to = expected(span.toStepId, span.toAnchor);
      return from === null || to === null ? sum : sum + Math.max(0, to - from);
    }, 0);
    return lotAction(lot, minutes, rows, nowMin);
  });
}

/**
 * The next thing to do about one lot.
 * @param minutes for how long it will have stood out when the day is over
 */
export function lotAction(
  { name, limitMin, spans }: Omit<DayLot, 'id'>,
  minutes: number,
  rows: ReadonlyMap<string, RowNow>,
  nowMin: number,
): NextAction[] {
  const source = sourceText(TWO_HOURS.source);
  const stretches = spans.map((span) => {
    const from = timeOf(rows.get(taskIdOf(span.fromStepId)), span.fromAnchor, nowMin);
    const to = timeOf(rows.get(taskIdOf(span.toStepId)), span.toAnchor, nowMin);
    return { from, to, left: rows.get(taskIdOf(span.toStepId))?.kind === 'skipped' };
  });
  const out = stretches.reduce(
    (sum, { from, to }) => sum + (from === null ? 0 : Math.max(0, (to ?? nowMin) - from)),
    0,
  );
  const most = `at most ${minutesText(limitMin)} is allowed`;
  if (out > limitMin) {
    const text = `Throw ${name} away, or keep it for the picture only: it has stood out for ${minutesText(out)}, and ${most}.`;
    return [{ text, source }];
  }
  if (minutes > limitMin) {
    const text = `Chill ${name} as soon as it can be done: it would stand out for ${minutesText(minutes)}, and ${most}.`;
    return [{ text, source }];
  }
  if (stretches.some(({ from, left }) => from !== null && left)) {
    const text = `Chill ${name} now: what would have put it away was skipped, it has stood out for ${minutesText(out)}, and ${most}.`;
    return [{ text, source }];
  }
  return [];
}

/** The minute of an event that has happened; null for one that has not. */
function timeOf(row: RowNow | undefined, anchor: 'start' | 'end', nowMin: number): number | null {
  if (row?.kind === 'over') return anchor === 'start' ? row.startMin : row.endMin;
  if (row?.kind !== 'underWay') return null;
  return anchor === 'start' ? row.startMin : row.untilMin <= nowMin ? row.untilMin : null;
}
