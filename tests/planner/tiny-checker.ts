import type { Placed, PlannerProblem } from '#lib/planner/problem';

/**
 * A second opinion on a placement, unit of time by unit of time: slow, and sharing nothing with the
 * planner. Returns what is wrong in words; nothing if every rule holds.
 */
export function faultsOf(problem: PlannerProblem, placed: readonly Placed[]): string[] {
  const faults: string[] = [];
  const at = (id: string) => {
    const found = placed.filter((entry) => entry.id === id);
    const [entry] = found;
    if (entry === undefined || found.length !== 1)
      throw new Error(`${id}: ${found.length} entries`);
    return entry;
  };
  const end = Math.max(0, ...placed.map((entry) => entry.end));
  if (end > problem.horizon) faults.push('past the horizon');
  for (const task of problem.tasks) {
    const entry = at(task.id);
    const length = entry.end - entry.start;
    if (length < task.minLength || length > task.maxLength) faults.push(`${task.id}: length`);
    if (entry.start < Math.max(0, task.notBefore ?? 0)) faults.push(`${task.id}: too early`);
    if (task.endBy !== null && entry.end > task.endBy) faults.push(`${task.id}: too late`);
  }
  for (const lag of problem.lags) {
    const gap = at(lag.to)[lag.toAnchor] - at(lag.from)[lag.fromAnchor];
    if (lag.min !== null && gap < lag.min) faults.push(`${lag.id}: too soon`);
    if (lag.max !== null && gap > lag.max) faults.push(`${lag.id}: too long after`);
  }
  for (const limit of problem.spanLimits) {
    let sum = 0;
    for (const span of limit.spans) {
      const length = at(span.to)[span.toAnchor] - at(span.from)[span.fromAnchor];
      if (length > 0) sum += length;
    }
    if (sum > limit.limit) faults.push(`${limit.id}: ${sum} in all`);
  }
  for (const resource of problem.resources) {
    for (let time = 0; time < end; time += 1) {
      const units = resource.capacity.filter((step) => step.from <= time).at(-1)?.units ?? 0;
      const taken = problem.tasks
        .filter((task) => at(task.id).start <= time && time < at(task.id).end)
        .reduce((sum, task) => sum + (task.demands[resource.id] ?? 0), 0);
      if (taken > 0 && taken > units)
        faults.push(`${resource.id}: ${taken} of ${units} at ${time}`);
    }
  }
  for (const resource of problem.stateful) {
    // Walk the clock: while anything is in use its state is fixed; a change takes the time since then.
    const uses = problem.tasks
      .filter((task) => task.needs?.resource === resource.id)
      .sort((a, b) => at(a.id).end - at(b.id).end);
    let state = resource.initial;
    let usedUntil = 0;
    for (let time = 0; time <= end; time += 1) {
      for (const task of uses.filter((use) => at(use.id).start === time)) {
        const wanted = task.needs?.state ?? state;
        if (wanted !== state) {
          const needed = resource.changeover[state]?.[wanted];
          if (needed === undefined || time - usedUntil < needed) {
            faults.push(`${resource.id}: ${state} → ${wanted} before ${task.id}`);
          }
          state = wanted;
          usedUntil = time;
        }
        usedUntil = Math.max(usedUntil, at(task.id).end);
      }
    }
  }
  return faults;
}
