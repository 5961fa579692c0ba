import type { Anchor } from '#lib/planner/problem';
import type { DayFacts } from '#lib/shoot/day-facts';
import { clockText, minutesText } from '#lib/shoot/day-words';
import { ceilMin, floorMin } from '#lib/shoot/minutes';
import type { PlanEntry } from '#lib/shoot/plan';
import { pinTimeWords } from '#lib/shoot/pins';

/**
 * Why a step or a washing-up stands where it does, in words: the rule that kept it from standing
 * earlier (the day's start, a pin, another step, the last meal, the oven, hands, camera, burners), or
 * the one it was kept back for (food that stands out, a greatest lag, what comes next). Never empty.
 */
export function reasonFor(
  entry: PlanEntry,
  entries: readonly PlanEntry[],
  facts: DayFacts,
): string {
  const byStep = new Map(
    entries.flatMap((e) => (e.stepId === null ? [] : [[e.stepId, e] as const])),
  );
  return (
    pinned(entry, facts) ??
    byRule(entry, byStep, facts) ??
    afterStep(entry, byStep, facts) ??
    afterMeal(entry, byStep, facts) ??
    afterResource(entry, entries) ??
    (entry.startMin === facts.day.startMin ? "the day's start" : null) ??
    keptBack(entry, byStep, facts) ??
    beforeNext(entry, entries, byStep, facts) ??
    'moved with the steps it is tied to'
  );
}

function at(entry: PlanEntry, anchor: Anchor): number {
  return anchor === 'start' ? entry.startMin : entry.endMin;
}

function pinned(entry: PlanEntry, facts: DayFacts): string | null {
  const pin = facts.day.pins.find(
    (p) =>
      p.stepId === entry.stepId &&
      (p.notBeforeMin === entry.startMin || p.notAfterMin === entry.startMin),
  );
  return pin === undefined ? null : `${pinTimeWords(pin)}, as pinned`;
}

/** What the step itself brings along: light, a rest, its segment's story. */
function byRule(
  entry: PlanEntry,
  byStep: ReadonlyMap<string, PlanEntry>,
  facts: DayFacts,
): string | null {
  const found = facts.stepById.get(entry.stepId ?? '');
  if (found === undefined) return null;
  const { step, segment } = found;
  if (step.daylight && facts.light?.fromMin === entry.startMin) {
    return `daylight from ${clockText(entry.startMin)}`;
  }
  if (step.role !== 'taste' && step.role !== 'eat') return null;
  const rested = segment.steps.find((other) => {
    const end = byStep.get(other.id)?.endMin;
    return other.restS > 0 && end !== undefined && end + ceilMin(other.restS) === entry.startMin;
  });
  if (rested === undefined) return null;
  return `${minutesText(ceilMin(rested.restS))} of rest after ${rested.title}`;
}

function afterStep(
  entry: PlanEntry,
  byStep: ReadonlyMap<string, PlanEntry>,
  facts: DayFacts,
): string | null {
  for (const link of facts.links) {
    const from = byStep.get(link.fromStepId);
    if (link.toStepId !== entry.stepId || link.minLagS === null || from === undefined) continue;
    const min = ceilMin(link.minLagS);
    if (at(entry, link.toAnchor) !== at(from, link.fromAnchor) + min) continue;
    const since = link.fromAnchor === 'end' ? `after ${from.title}` : `after ${from.title} starts`;
    return min === 0 ? since : `${minutesText(min)} ${since}`;
  }
  if (entry.kind !== 'washUp') return null;
  const last = [...byStep.values()].find(
    (e) => e.segmentId === entry.segmentId && e.endMin === entry.startMin,
  );
  return last === undefined ? null : `after ${last.title}`;
}

function afterMeal(
  entry: PlanEntry,
  byStep: ReadonlyMap<string, PlanEntry>,
  facts: DayFacts,
): string | null {
  if (!facts.meals.some((meal) => meal.stepId === entry.stepId)) return null;
  for (const meal of facts.meals) {
    const other = byStep.get(meal.stepId);
    if (other === undefined || other.id === entry.id) continue;
    if (other.startMin + facts.day.mealGapMin === entry.startMin) {
      return `${minutesText(facts.day.mealGapMin)} after the start of ${other.title}`;
    }
  }
  return null;
}

function afterResource(entry: PlanEntry, entries: readonly PlanEntry[]): string | null {
  const before = entries.filter((e) => e.id !== entry.id && e.endMin === entry.startMin);
  const clock = clockText(entry.startMin);
  if (entry.ovenId !== null) {
    const change = before.find((e) => e.ovenId === entry.ovenId && e.stepId === null);
    if (change !== undefined) return `oven ready at ${clock}`;
    const use = before.find((e) => e.ovenId === entry.ovenId);
    if (use !== undefined) return `oven free at ${clock}, after ${use.title}`;
  }
  const hands = entry.hands ? before.find((e) => e.hands) : undefined;
  if (hands !== undefined) return `hands free at ${clock}, after ${hands.title}`;
  const camera = entry.onCamera ? before.find((e) => e.onCamera) : undefined;
  if (camera !== undefined) return `camera free at ${clock}, after ${camera.title}`;
  const burner = entry.burners > 0 ? before.find((e) => e.burners > 0) : undefined;
  return burner === undefined ? null : `burner free at ${clock}, after ${burner.title}`;
}

function keptBack(
  entry: PlanEntry,
  byStep: ReadonlyMap<string, PlanEntry>,
  facts: DayFacts,
): string | null {
  for (const link of facts.links) {
    const to = byStep.get(link.toStepId);
    if (link.fromStepId !== entry.stepId || link.maxLagS === null || to === undefined) continue;
    const max = floorMin(link.maxLagS);
    if (at(to, link.toAnchor) !== at(entry, link.fromAnchor) + max) continue;
    return `kept back: at most ${minutesText(max)} before ${to.title} (${link.reason})`;
  }
  const lot = facts.segments
    .flatMap((segment) => segment.perishables)
    .find(
      (perishable) =>
        !perishable.thrownAway && perishable.spans.some((s) => s.fromStepId === entry.stepId),
    );
  return lot === undefined ? null : `kept back so that ${lot.name} stands out less`;
}

function beforeNext(
  entry: PlanEntry,
  entries: readonly PlanEntry[],
  byStep: ReadonlyMap<string, PlanEntry>,
  facts: DayFacts,
): string | null {
  for (const link of facts.links) {
    const to = byStep.get(link.toStepId);
    if (link.fromStepId !== entry.stepId || link.minLagS === null || to === undefined) continue;
    const gap = at(to, link.toAnchor) - at(entry, link.fromAnchor);
    if (gap === ceilMin(link.minLagS)) return `just in time for ${to.title}`;
  }
  const next = entries.find((e) => e.id !== entry.id && e.startMin === entry.endMin);
  return next === undefined ? null : `just before ${next.title}`;
}
