import { downMinutes, minuteAt, nameOf, upMinutes, type Facts } from './checker-data';

/** Minutes unchilled within each lot's limit, and the plan's own clocks agree. */
export function lotFaults({ segments, plan, carried }: Facts): string[] {
  const faults: string[] = [];
  const lots = segments.flatMap((s) => s.perishables.map((lot) => ({ lot, segmentId: s.id })));
  for (const { lot, segmentId } of lots) {
    const minutes = lot.spans.reduce((sum, span) => {
      const from = carried.get(span.fromStepId)?.entry;
      const to = carried.get(span.toStepId)?.entry;
      if (!from || !to) return sum;
      return sum + Math.max(0, minuteAt(to, span.toAnchor) - minuteAt(from, span.fromAnchor));
    }, 0);
    const stated = plan.lots.filter((l) => l.perishableId === lot.id);
    if (!lot.thrownAway && minutes > downMinutes(lot.limitS)) {
      faults.push(
        `perishable: ${lot.name} stands ${minutes} min, ${downMinutes(lot.limitS)} allowed`,
      );
    }
    if (!lot.thrownAway && stated.length !== 1) {
      faults.push(`lots: ${lot.name} has ${stated.length} clocks`);
    }
    for (const clock of stated) {
      if (clock.minutes !== minutes) {
        faults.push(`lots: ${lot.name} stands ${minutes} min, the plan says ${clock.minutes}`);
      }
      if (clock.limitMin !== downMinutes(lot.limitS) || clock.segmentId !== segmentId) {
        faults.push(`lots: the clock of ${lot.name} has another limit or segment`);
      }
    }
  }
  const known = new Set(lots.map(({ lot }) => lot.id));
  for (const clock of plan.lots) {
    if (!known.has(clock.perishableId)) faults.push(`lots: ${clock.name} is no lot of that day`);
  }
  return faults;
}

const DIRTYING = new Set(['prep', 'cook', 'shoot', 'taste']);

/** One washing-up for each segment that leaves any, by hand, after its last step that dirties anything. */
export function washUpFaults({ segments, plan, carried }: Facts): string[] {
  const faults: string[] = [];
  const washUps = plan.entries.filter(
    (e) => e.kind === 'washUp' && !e.title.startsWith('Clean down'),
  );
  for (const segment of segments) {
    const own = washUps.filter((e) => e.segmentId === segment.id);
    const wanted = segment.washUpS > 0 ? 1 : 0;
    if (own.length !== wanted)
      faults.push(`washing-up: ${segment.title} has ${own.length} entries`);
    const dirtyUntil = [...carried.values()]
      .filter((c) => c.segment.id === segment.id && DIRTYING.has(c.step.role))
      .reduce((last, c) => Math.max(last, c.entry.endMin), -Infinity);
    for (const entry of own) {
      if (entry.endMin - entry.startMin !== upMinutes(segment.washUpS)) {
        faults.push(`washing-up: ${nameOf(entry)} should take ${upMinutes(segment.washUpS)} min`);
      }
      if (!entry.hands) faults.push(`washing-up: ${nameOf(entry)} takes hands and does not say so`);
      if (entry.startMin < dirtyUntil) {
        faults.push(
          `washing-up: ${nameOf(entry)} starts before ${segment.title} is done at ${dirtyUntil}`,
        );
      }
    }
  }
  for (const entry of washUps) {
    if (!segments.some((s) => s.id === entry.segmentId)) {
      faults.push(`washing-up: ${nameOf(entry)} belongs to no segment of that day`);
    }
  }
  return faults;
}

/** Meals in viewing order on a day as lived; on either kind of day apart by the gap where really eaten. */
export function mealFaults({ segments, day, carried }: Facts): string[] {
  const faults: string[] = [];
  const meals = segments.flatMap((segment) => {
    if (segment.kind !== 'recipe') return [];
    const eat = segment.steps.find((s) => s.role === 'eat');
    const entry = eat && carried.get(eat.id)?.entry;
    return entry ? [{ entry, eaten: segment.eaten.num > 0 }] : [];
  });
  if (day.kind === 'asLived') {
    meals.forEach((meal, i) => {
      const before = meals[i - 1];
      if (before && meal.entry.startMin < before.entry.startMin) {
        faults.push(
          `meals: ${nameOf(meal.entry)} is eaten before ${nameOf(before.entry)}, out of viewing order`,
        );
      }
    });
  }
  const eaten = meals.filter((m) => m.eaten).sort((a, b) => a.entry.startMin - b.entry.startMin);
  eaten.forEach((meal, i) => {
    const before = eaten[i - 1];
    const gap = before ? meal.entry.startMin - before.entry.startMin : Infinity;
    if (gap < day.mealGapMin) {
      faults.push(
        `meals: ${nameOf(meal.entry)} starts ${gap} min after the last, ${day.mealGapMin} asked`,
      );
    }
  });
  return faults;
}
