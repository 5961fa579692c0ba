import { sourceText } from '#lib/safety/caution';
import { TWO_HOURS } from '#lib/safety/general-cautions';
import type { ReplannedEvent } from '#lib/shoot/day-log';
import { clockText, minutesText } from '#lib/shoot/day-words';
import type { PlanEntry } from '#lib/shoot/plan';
import type { Replan } from '#lib/shoot/replan';
import { isHeat } from '#lib/shoot/replan-ovens';
import type { RowNow } from '#lib/shoot/replan-rows';
import { taskIdOf } from '#lib/shoot/to-problem';

/** What to do at once about something that the day has broken already, and who says so. */
export interface NextAction {
  readonly text: string;
  readonly source: string | null;
}

/** Another order from now on, in words, to be taken or left. */
export interface ReplanNews {
  readonly nowMin: number;
  /** "Talk moves from 12:10 to 12:25", in the new order. */
  readonly changes: readonly string[];
  /** What was taken to be under way though nobody said so. */
  readonly assumed: readonly string[];
  readonly actions: readonly NextAction[];
  /** Must-rules that the new order breaks. */
  readonly broken: readonly string[];
  readonly wrap: string;
  readonly order: ReplannedEvent['payload'];
}

/** What a new order changes in the one that was promised, what is to be done at once, and the order itself. */
export function replanNews(
  replan: Replan,
  promised: readonly PlanEntry[],
  nowMin: number,
): ReplanNews {
  const { plan, rows } = replan;
  const was = new Map(promised.map((entry) => [entry.id, entry]));
  const told = plan.entries.filter(
    ({ id, kind, startMin }) =>
      kind !== 'appointment' && startMin >= nowMin && !hasBegun(rows.get(id)),
  );
  return {
    nowMin,
    changes: told.flatMap((entry) => changeOf(entry, was.get(entry.id))),
    assumed: plan.entries.flatMap(({ id, title }) => {
      const row = rows.get(id);
      return row?.kind === 'underWay' && row.assumed
        ? [`${title} is taken to be under way since ${clockText(row.startMin)}.`]
        : [];
    }),
    actions: [...lotActions(replan, nowMin), ...missedActions(replan, nowMin)],
    broken: plan.broken.filter(({ rule }) => rule !== 'perishable').map(({ message }) => message),
    wrap: clockText(plan.wrapMin),
    order: orderOf(plan.entries),
  };
}

/** The entries of a plan as an order that can be taken. */
function orderOf(entries: readonly PlanEntry[]): ReplannedEvent['payload'] {
  return {
    rows: entries
      .filter(({ kind }) => kind === 'step' || kind === 'washUp')
      .map(({ id, startMin, endMin, ovenId }) => ({ id, startMin, endMin, ovenId })),
    heats: entries.flatMap(({ id, kind, title, startMin, endMin, ovenId, milliC }) =>
      (kind === 'preheat' || kind === 'coolDown') && milliC !== null
        ? [{ id, kind, title, startMin, endMin, ovenId, milliC }]
        : [],
    ),
  };
}

function changeOf(entry: PlanEntry, was: PlanEntry | undefined): string[] {
  const at = clockText(entry.startMin);
  if (was === undefined) return [`New: ${entry.title} at ${at}`];
  if (was.startMin !== entry.startMin) {
    return [`${entry.title} moves from ${clockText(was.startMin)} to ${at}`];
  }
  const longer = isHeat(entry) || was.endMin === entry.endMin;
  return longer ? [] : [`${entry.title} ends at ${clockText(entry.endMin)}`];
}

/** Food that has stood out for longer than it may, or will have. */
function lotActions({ file, plan, rows }: Replan, nowMin: number): NextAction[] {
  const source = sourceText(TWO_HOURS.source);
  const lots = file.episode.segments.flatMap(({ perishables }) => perishables);
  return plan.lots.flatMap(({ perishableId, name, minutes, limitMin }): NextAction[] => {
    const spans = lots.find(({ id }) => id === perishableId)?.spans ?? [];
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
  });
}

/** Appointments that something else was in the way of. */
function missedActions({ plan, rows }: Replan, nowMin: number): NextAction[] {
  return plan.entries.flatMap(({ kind, hands, title, startMin, endMin }): NextAction[] => {
    if (kind !== 'appointment' || !hands || startMin > nowMin) return [];
    const over = plan.entries.find((other) => {
      const row = rows.get(other.id);
      return (
        other.hands &&
        hasBegun(row) &&
        other.startMin <= startMin &&
        other.endMin >= Math.min(endMin, nowMin)
      );
    });
    if (over === undefined) return [];
    const text =
      endMin > nowMin
        ? `${title} is now, until ${clockText(endMin)}, and ${over.title} is still under way.`
        : `${title} was due at ${clockText(startMin)}, while ${over.title} was under way: make up for it.`;
    return [{ text, source: null }];
  });
}

function hasBegun(row: RowNow | undefined): boolean {
  return row?.kind === 'over' || row?.kind === 'underWay';
}

/** The minute of an event that has happened; null for one that has not. */
function timeOf(row: RowNow | undefined, anchor: 'start' | 'end', nowMin: number): number | null {
  if (row?.kind === 'over') return anchor === 'start' ? row.startMin : row.endMin;
  if (row?.kind !== 'underWay') return null;
  return anchor === 'start' ? row.startMin : row.untilMin <= nowMin ? row.untilMin : null;
}
