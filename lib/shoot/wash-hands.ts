import { FOOD_CODE_HANDS, sourceText } from '#lib/safety/caution';
import { cleanedSegments, rawSteps } from '#lib/shoot/contact-rules';
import type { DayFacts } from '#lib/shoot/day-facts';
import { clockText } from '#lib/shoot/day-words';
import type { PlanEntry } from '#lib/shoot/plan';
import { cleanIdOf } from '#lib/shoot/problem-parts';

/**
 * Where hands go from raw animal food to work that nobody has said touches food at all, before the clean-down: the
 * first such entry after each raw step, by its id, with what to do first.
 *
 * A warning and no rule of the plan. What the published rules forbid is raw work before or among work on food eaten as
 * it is without cleaning between (REFERENCES 5.5, from FDA Food Code 2022, 3-302.11), and that is planned for
 * (`addContact`); of a change of tasks they ask that hands be washed (2-301.14), which takes no clean-down of board and
 * counter, and which a talk to the camera, say, may not need.
 */
export function handsToWash(
  facts: DayFacts,
  entries: readonly PlanEntry[],
): ReadonlyMap<string, string> {
  const remarks = new Map<string, string>();
  const cleaned = cleanedSegments(facts);
  for (const segment of cleaned) {
    const clean = entries.find(({ id }) => id === cleanIdOf(segment.id));
    for (const { id: stepId } of rawSteps(segment)) {
      const raw = entries.find((entry) => entry.stepId === stepId);
      if (raw === undefined || !raw.hands) continue;
      const next = entries.find(
        ({ id, hands, startMin, endMin }) =>
          hands && endMin > startMin && startMin >= raw.endMin && id !== raw.id,
      );
      const cleanedFrom = clean?.startMin ?? Number.POSITIVE_INFINITY;
      if (next === undefined || next.id === clean?.id || next.startMin >= cleanedFrom) continue;
      const isClean = cleaned.some(({ id }) => next.id === cleanIdOf(id));
      if (isClean || contactOf(next, facts) !== null) continue;
      remarks.set(
        next.id,
        `wash your hands first: until ${clockText(raw.endMin)} they touched raw food (${raw.title}), and the clean-down is later (${sourceText(FOOD_CODE_HANDS)})`,
      );
    }
  }
  return remarks;
}

function contactOf({ stepId }: PlanEntry, facts: DayFacts): string | null {
  return facts.stepById.get(stepId ?? '')?.step.contact ?? null;
}
