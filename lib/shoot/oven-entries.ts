import type { Episode } from '#lib/episode/schema';
import type { DayFacts } from '#lib/shoot/day-facts';
import { degreesText } from '#lib/shoot/day-words';
import { changeMin } from '#lib/shoot/minutes';
import { plainEntry } from '#lib/shoot/plain-entry';
import type { PlanEntry } from '#lib/shoot/plan';

/**
 * The heating and cooling that the placed oven steps ask for, one entry for each change of
 * temperature, ending when the step begins: as late as possible, so that no oven stands hot and empty.
 * Where a plan leaves too little time, the entry takes what there is.
 */
export function ovenEntries(
  facts: DayFacts,
  steps: readonly PlanEntry[],
  region: Episode['region'],
): PlanEntry[] {
  return facts.ovens.flatMap((oven) => {
    const uses = steps
      .filter((entry) => entry.ovenId === oven.id && entry.milliC !== null)
      .sort((a, b) => a.startMin - b.startMin || a.endMin - b.endMin || (a.id < b.id ? -1 : 1));
    const entries: PlanEntry[] = [];
    let milliC = oven.coldMilliC;
    let freeMin = facts.day.startMin;
    for (const use of uses) {
      const wanted = use.milliC ?? milliC;
      if (wanted === milliC) {
        freeMin = Math.max(freeMin, use.endMin);
        continue;
      }
      const need = changeMin(oven, milliC, wanted);
      const heats = wanted > milliC;
      const degrees = degreesText(wanted, region);
      const startMin = Math.min(use.startMin, Math.max(freeMin, use.startMin - need));
      const kind = heats ? 'preheat' : 'coolDown';
      const title = heats
        ? `Heat ${oven.name} to ${degrees}`
        : `Let ${oven.name} cool to ${degrees}`;
      entries.push({
        ...plainEntry(`oven:${oven.id}:${entries.length + 1}`, kind, title),
        startMin: Math.max(facts.day.startMin, startMin),
        endMin: Math.max(facts.day.startMin, use.startMin),
        ovenId: oven.id,
        milliC: wanted,
        why: `so that it is at ${degrees} for ${use.title}`,
      });
      milliC = wanted;
      freeMin = use.endMin;
    }
    return entries;
  });
}
