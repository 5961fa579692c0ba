import type { ReplannedEvent } from '#lib/shoot/day-log';
import { clockText } from '#lib/shoot/day-words';
import { lotAction, type NextAction } from '#lib/shoot/lot-actions';
import type { PlanEntry } from '#lib/shoot/plan';
import type { Replan } from '#lib/shoot/replan';
import type { NotPlaced } from '#lib/shoot/replan-pickups';
import { isHeat } from '#lib/shoot/replan-ovens';
import type { RowNow } from '#lib/shoot/replan-rows';

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
  /** What is to be got later and has no place, and why. */
  readonly notPlaced: readonly NotPlaced[];
  readonly wrap: string;
  readonly order: ReplannedEvent['payload'];
}

/** What a new order changes in the one that was promised, what is to be done at once, and the order itself. */
export function replanNews(
  replan: Replan,
  promised: readonly PlanEntry[],
  nowMin: number,
  notPlaced: readonly NotPlaced[] = [],
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
    notPlaced,
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
  const lots = file.episode.segments.flatMap(({ perishables }) => perishables);
  return plan.lots.flatMap(({ perishableId, name, minutes, limitMin }) => {
    const spans = lots.find(({ id }) => id === perishableId)?.spans ?? [];
    return lotAction({ name, limitMin, spans }, minutes, rows, nowMin);
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
