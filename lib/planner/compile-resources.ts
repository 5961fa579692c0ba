import { closure, gapBetween, NEVER } from '#lib/planner/changeovers';
import { ORIGIN, type Item, type Pair, type SharedUse, type StateUse } from '#lib/planner/compiled';
import type { PlannerProblem } from '#lib/planner/problem';

/**
 * Who may not overlap on the resources of a problem, who shares them and in which state each is needed.
 * @param items the tasks; the stretches in which units are withdrawn are added to them
 * @param clashes takes the ids of resources that no plan can keep to
 */
export function compileResources(
  problem: PlannerProblem,
  items: Item[],
  clashes: string[],
): { pairs: Pair[]; shared: SharedUse[]; stateful: StateUse[] } {
  const gaps = new Map<string, Pair>();
  const exclude = (a: number, b: number, gapAB: number, gapBA: number): void => {
    const known = gaps.get(`${a}-${b}`);
    gaps.set(`${a}-${b}`, {
      a,
      b,
      gapAB: Math.max(gapAB, known?.gapAB ?? 0),
      gapBA: Math.max(gapBA, known?.gapBA ?? 0),
    });
  };
  const shared: SharedUse[] = [];
  for (const resource of problem.resources) {
    const units = Math.max(0, ...resource.capacity.map((step) => step.units));
    const uses: { item: number; demand: number }[] = [];
    problem.tasks.forEach((task, index) => {
      const demand = task.demands[resource.id] ?? 0;
      if (demand > units) clashes.push(resource.id);
      else if (demand > 0 && task.maxLength > 0) uses.push({ item: index, demand });
    });
    if (uses.length === 0) continue;
    resource.capacity.forEach((step, index) => {
      const missing = units - step.units;
      if (missing <= 0) return;
      const until = resource.capacity[index + 1]?.from ?? NEVER;
      uses.push({ item: items.length, demand: missing });
      items.push({
        task: -1,
        start: { node: ORIGIN, offset: step.from },
        end: { node: ORIGIN, offset: until },
        group: -1,
      });
    });
    let several = false;
    uses.forEach((one, position) => {
      for (const other of uses.slice(position + 1)) {
        const fixed = (items[one.item]?.task ?? -1) < 0 && (items[other.item]?.task ?? -1) < 0;
        if (fixed) continue;
        if (one.demand + other.demand > units) exclude(one.item, other.item, 0, 0);
        else several = true;
      }
    });
    if (several) shared.push({ id: resource.id, units, uses });
  }
  const stateful: StateUse[] = [];
  for (const resource of problem.stateful) {
    const uses: { item: number; state: string }[] = [];
    problem.tasks.forEach((task, index) => {
      if (task.needs?.resource === resource.id) uses.push({ item: index, state: task.needs.state });
    });
    if (uses.length === 0) continue;
    const times = closure(resource);
    for (const use of uses) {
      if (gapBetween(times, resource.initial, use.state) >= NEVER) clashes.push(resource.id);
    }
    uses.forEach((one, position) => {
      for (const other of uses.slice(position + 1)) {
        if (one.state === other.state) continue;
        exclude(
          one.item,
          other.item,
          gapBetween(times, one.state, other.state),
          gapBetween(times, other.state, one.state),
        );
      }
    });
    stateful.push({ resource, uses });
  }
  return { pairs: [...gaps.values()], shared, stateful };
}
