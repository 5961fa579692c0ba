import type { Episode } from '#lib/episode/schema';
import { FOOD_CODE_COOLING, sourceText } from '#lib/safety/caution';
import { COOLING } from '#lib/safety/time-limits';
import type { DayFacts } from '#lib/shoot/day-facts';
import { clockText, degreesText } from '#lib/shoot/day-words';
import type { PlanEntry } from '#lib/shoot/plan';

/**
 * What to mind at the last heat of each dish that is kept after the day, by its step: by when it must have cooled, from
 * the plan's own times. A dish that is held hot longer cools from then; its step says so by standing later.
 *
 * @example keptDishes(facts, entries, 'EU').get('bake')
 *   // 'is kept: cool it to 21 °C by 14:20 and to 5 °C by 18:20 (FDA Food Code, 3-501.14(A))'
 */
export function keptDishes(
  facts: DayFacts,
  entries: readonly PlanEntry[],
  region: Episode['region'],
): ReadonlyMap<string, string> {
  const kept = new Set(
    facts.day.segments.flatMap(({ segmentId, fate }) => (fate === 'kept' ? [segmentId] : [])),
  );
  const byStep = new Map(entries.map((entry) => [entry.stepId ?? '', entry]));
  return new Map(
    facts.segments
      .filter(({ id }) => kept.has(id))
      .flatMap((segment) => {
        const heated = segment.steps
          .filter(({ oven, burners, applianceId }) => oven || burners > 0 || applianceId)
          .flatMap(({ id }) => byStep.get(id) ?? [])
          .sort((a, b) => b.endMin - a.endMin)[0];
        if (heated === undefined) return [];
        const by = (milliC: number, withinS: number): string =>
          `to ${degreesText(milliC, region)} by ${clockText(heated.endMin + withinS / 60)}`;
        const first = by(COOLING.midMilliC, COOLING.midWithinS);
        const then = by(COOLING.endMilliC, COOLING.endWithinS);
        const words = `is kept: cool it ${first} and ${then} (${sourceText(FOOD_CODE_COOLING)})`;
        return [[heated.stepId ?? '', words] as const];
      }),
  );
}
