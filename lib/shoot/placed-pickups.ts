import { PICKUP_STEP, pickupRef, rowKey } from '#lib/shoot/day-log';
import type { DayFold, DayPickup } from '#lib/shoot/fold-day';
import type { PlanEntry } from '#lib/shoot/plan';
import { taskIdOf } from '#lib/shoot/problem-parts';

/** The segment of the day that its pickups stand in. */
export const PICKUPS = 'pickups';
const TITLE_MAX = 200;

/** Pickups that are neither got nor done without. */
export function openPickups(fold: Pick<DayFold, 'pickups' | 'skippedAt'>): DayPickup[] {
  return fold.pickups.filter(
    ({ id, gotAt }) => gotAt === null && !fold.skippedAt.has(rowKey(pickupRef(id))),
  );
}

/** The entries of pickups that an order which was taken has placed. */
export function placedPickups(fold: Pick<DayFold, 'pickups' | 'order'>): PlanEntry[] {
  const rows = new Map(fold.order?.rows.map((row) => [row.id, row]));
  return fold.pickups.flatMap(({ id, text }): PlanEntry[] => {
    const row = rows.get(taskIdOf(PICKUP_STEP + id));
    if (row === undefined) return [];
    return [
      {
        ...row,
        kind: 'step',
        stepId: PICKUP_STEP + id,
        segmentId: PICKUPS,
        title: pickupTitle(text),
        hands: true,
        onCamera: true,
        milliC: null,
        racks: 0,
        burners: 0,
        why: '',
      },
    ];
  });
}

/** Words of one line, as long as a step's title may be. */
export function pickupTitle(text: string): string {
  return text
    .replaceAll(/[\r\n\u2028\u2029]+/g, ' ')
    .trim()
    .slice(0, TITLE_MAX);
}
