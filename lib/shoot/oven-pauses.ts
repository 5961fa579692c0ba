import type { DayFacts } from '#lib/shoot/day-facts';
import { clockText, minutesText } from '#lib/shoot/day-words';
import type { PlanEntry } from '#lib/shoot/plan';

/** So long a dish is out between two times in the oven without a word: common practice, no source. */
const LONGEST_PAUSE_MIN = 10;

/**
 * Where a dish goes back into an oven long after it came out: the later entry by its id, with what to look at. The
 * plan knows no rule for it; where a tie between the two says how long it takes, nothing is remarked.
 */
export function ovenPauses(
  { stepById, links }: Pick<DayFacts, 'stepById' | 'links'>,
  entries: readonly PlanEntry[],
): ReadonlyMap<string, string> {
  const remarks = new Map<string, string>();
  const last = new Map<string, PlanEntry>();
  const inOven = entries
    .filter(({ kind, ovenId, stepId }) => kind === 'step' && ovenId !== null && stepId !== null)
    .sort((a, b) => a.startMin - b.startMin);
  for (const entry of inOven) {
    const dish = stepById.get(entry.stepId ?? '')?.segment.id;
    if (dish === undefined) continue;
    const before = last.get(dish);
    const pause = before === undefined ? 0 : entry.startMin - before.endMin;
    const isTied = links.some(
      ({ fromStepId, toStepId, minLagS, maxLagS }) =>
        fromStepId === before?.stepId &&
        toStepId === entry.stepId &&
        ((minLagS ?? 0) > 0 || maxLagS !== null),
    );
    if (before !== undefined && !isTied && pause > LONGEST_PAUSE_MIN) {
      const since = `${minutesText(pause)} after ${before.title} came out of the oven at ${clockText(before.endMin)}`;
      remarks.set(
        entry.id,
        `${since}: the same food has cooled by then, and its minutes may not do. Tie the two steps to keep them together`,
      );
    }
    if (before === undefined || entry.endMin >= before.endMin) last.set(dish, entry);
  }
  return remarks;
}
