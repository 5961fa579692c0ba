import type { Oven } from '#lib/episode/kitchen-schema';
import type { DayFacts } from '#lib/shoot/day-facts';
import { changeMin } from '#lib/shoot/minutes';
import type { PlanEntry } from '#lib/shoot/plan';
import type { RowNow } from '#lib/shoot/replan-rows';
import { taskIdOf } from '#lib/shoot/problem-parts';
import type { OvenChoice } from '#lib/shoot/oven-choice';

/** Whether an entry is an oven on its way to another temperature. */
export function isHeat({ kind }: Pick<PlanEntry, 'kind'>): boolean {
  return kind === 'preheat' || kind === 'coolDown';
}

/** A change of an oven that has begun, by its id in the promised order. */
export interface BegunHeat {
  readonly id: string;
  readonly milliC: number;
  readonly startMin: number;
  readonly readyMin: number;
}

/** What is looked at to tell how hot the ovens are. */
export interface OvenFacts {
  readonly facts: DayFacts;
  readonly promised: readonly PlanEntry[];
  readonly rows: ReadonlyMap<string, RowNow>;
  readonly nowMin: number;
  readonly choice: OvenChoice;
}

/**
 * How hot an oven is: as its last use left it, or on its way to where the promised order has it by now; that begins
 * when it was promised, or when the oven was free of what was in it.
 */
export function ovenNow(
  oven: Oven,
  { facts, promised, rows, nowMin, choice }: OvenFacts,
): { readonly milliC: number; readonly heat: BegunHeat | null } {
  let milliC = oven.coldMilliC;
  let last = { startMin: -Infinity, endMin: -Infinity };
  for (const { step } of facts.steps) {
    const row = rows.get(taskIdOf(step.id));
    if (step.oven === null || choice.get(step.id) !== oven.id) continue;
    if (row?.kind !== 'over' && row?.kind !== 'underWay') continue;
    if (row.startMin < last.startMin) continue;
    last = { startMin: row.startMin, endMin: row.kind === 'over' ? row.endMin : row.untilMin };
    milliC = step.oven.milliC;
  }
  const due = promised
    .filter((entry) => entry.ovenId === oven.id && isHeat(entry) && entry.startMin <= nowMin)
    .at(-1);
  if (due === undefined || due.milliC === null || due.milliC === milliC) {
    return { milliC, heat: null };
  }
  const startMin = Math.max(due.startMin, last.endMin);
  // What came after that change in the promised order has been in the oven already.
  if (last.startMin >= due.endMin || startMin > nowMin) return { milliC, heat: null };
  const readyMin = startMin + changeMin(oven, milliC, due.milliC);
  return { milliC, heat: { id: due.id, milliC: due.milliC, startMin, readyMin } };
}

/**
 * The minute before which no oven can be ready for a step, by task id. A plan that knows of the day's beginning
 * alone would take an oven for heated in time that has already passed.
 */
export function ovensReady(of: OvenFacts): Map<string, number> {
  const ready = new Map<string, number>();
  for (const oven of of.facts.ovens) {
    const { milliC, heat } = ovenNow(oven, of);
    for (const { step } of of.facts.steps) {
      if (step.oven === null || of.choice.get(step.id) !== oven.id) continue;
      const wanted = step.oven.milliC;
      const fresh = of.nowMin + changeMin(oven, milliC, wanted);
      const turned = heat === null ? fresh : of.nowMin + changeMin(oven, heat.milliC, wanted);
      const readyMin = heat?.milliC === wanted ? heat.readyMin : Math.max(fresh, turned);
      ready.set(taskIdOf(step.id), readyMin);
    }
  }
  return ready;
}
