import { direct } from '#lib/planner/changeovers';
import type { Anchor, Placed, PlannerProblem } from '#lib/planner/problem';

/** The id under which an answer names the horizon among the broken rules. */
export const HORIZON = 'horizon';

/**
 * The ids of the rules that a placement breaks, sorted: lags and span limits by their own id, windows
 * and lengths by the task's id, resources by theirs, the horizon as "horizon". Empty if all hold.
 */
export function brokenRules(problem: PlannerProblem, placed: readonly Placed[]): string[] {
  const broken = new Set<string>();
  const byId = new Map(placed.map((entry) => [entry.id, entry]));
  const at = (id: string, anchor: Anchor): number => byId.get(id)?.[anchor] ?? Number.NaN;
  for (const task of problem.tasks) {
    const start = at(task.id, 'start');
    const end = at(task.id, 'end');
    const inWindow =
      start >= Math.max(0, task.notBefore ?? 0) &&
      end - start >= task.minLength &&
      end - start <= task.maxLength &&
      (task.endBy === null || end <= task.endBy);
    if (!inWindow) broken.add(task.id);
    if (end > problem.horizon) broken.add(HORIZON);
  }
  for (const lag of problem.lags) {
    const gap = at(lag.to, lag.toAnchor) - at(lag.from, lag.fromAnchor);
    const holds = (lag.min === null || gap >= lag.min) && (lag.max === null || gap <= lag.max);
    if (!holds) broken.add(lag.id);
  }
  for (const limit of problem.spanLimits) {
    const sum = limit.spans.reduce(
      (total, span) =>
        total + Math.max(0, at(span.to, span.toAnchor) - at(span.from, span.fromAnchor)),
      0,
    );
    if (sum > limit.limit) broken.add(limit.id);
  }
  for (const resource of problem.resources) {
    if (overdrawn(problem, byId, resource)) broken.add(resource.id);
  }
  for (const resource of problem.stateful) {
    if (wrongState(problem, byId, resource)) broken.add(resource.id);
  }
  return [...broken].sort();
}

function overdrawn(
  problem: PlannerProblem,
  byId: ReadonlyMap<string, Placed>,
  resource: PlannerProblem['resources'][number],
): boolean {
  const uses = problem.tasks.flatMap((task) => {
    const entry = byId.get(task.id);
    const demand = task.demands[resource.id] ?? 0;
    return entry === undefined || demand === 0 ? [] : [{ ...entry, demand }];
  });
  const unitsAt = (time: number): number =>
    resource.capacity.reduce((units, step) => (step.from <= time ? step.units : units), 0);
  const moments = [...uses.map((use) => use.start), ...resource.capacity.map((step) => step.from)];
  return moments.some((time) => {
    const taken = uses
      .filter((use) => use.start <= time && time < use.end)
      .reduce((sum, use) => sum + use.demand, 0);
    return taken > 0 && taken > unitsAt(time);
  });
}

function wrongState(
  problem: PlannerProblem,
  byId: ReadonlyMap<string, Placed>,
  resource: PlannerProblem['stateful'][number],
): boolean {
  const uses = problem.tasks
    .flatMap((task) => {
      const entry = byId.get(task.id);
      return entry === undefined || task.needs?.resource !== resource.id
        ? []
        : [{ ...entry, state: task.needs.state }];
    })
    .sort((a, b) => a.start - b.start || a.end - b.end || (a.id < b.id ? -1 : 1));
  let state = resource.initial;
  let free = 0;
  for (const use of uses) {
    if (use.state === state) {
      free = Math.max(free, use.end);
      continue;
    }
    if (use.start < free + direct(resource, state, use.state)) return true;
    state = use.state;
    free = use.end;
  }
  return false;
}
