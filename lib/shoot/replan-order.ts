import type { OrderedHeat, ReplannedEvent } from '#lib/shoot/day-log';
import type { PlanEntry } from '#lib/shoot/plan';

type Order = ReplannedEvent['payload'] | null;

/** What an order that was taken says of an entry of the plan. */
export type Timed = Pick<PlanEntry, 'id' | 'kind' | 'startMin' | 'endMin' | 'hands' | 'ovenId'>;

/**
 * The entries of a plan in the order that was taken last: at its times, with its changes of the ovens in place of
 * the plan's own. What the order does not name stays where the plan has it, as an appointment or a step that was
 * added since. `heatOf` makes an entry of a change of an oven.
 */
export function inTakenOrder<E extends Timed>(
  entries: readonly E[],
  order: Order,
  heatOf: (heat: OrderedHeat) => E,
): E[] {
  if (order === null) return [...entries];
  const times = new Map(order.rows.map((row) => [row.id, row]));
  const timed = entries
    .filter(({ kind }) => kind !== 'preheat' && kind !== 'coolDown')
    .map((entry): E => {
      const at = times.get(entry.id);
      if (at === undefined) return entry;
      return { ...entry, startMin: at.startMin, endMin: at.endMin, ovenId: at.ovenId };
    });
  return [...timed, ...order.heats.map(heatOf)].sort(
    (a, b) =>
      a.startMin - b.startMin || Number(b.hands) - Number(a.hands) || (a.id < b.id ? -1 : 1),
  );
}

/** The entries of the day's plan as the person goes by them. */
export function promisedOrder(planned: readonly PlanEntry[], order: Order): PlanEntry[] {
  return inTakenOrder(planned, order, (heat) => ({
    ...heat,
    stepId: null,
    segmentId: null,
    hands: false,
    onCamera: false,
    racks: 0,
    burners: 0,
    why: '',
  }));
}
