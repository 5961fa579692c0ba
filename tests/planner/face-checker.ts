import type { PlacedChangeover } from '#lib/planner/answer';
import type { Goal, GoalTerm, Placed, PlannerProblem, Task } from '#lib/planner/problem';

/**
 * A second opinion on a plan and on what it costs, in the words of the face alone: every rule by itself, units
 * added up at every moment. Shares no code with the planners.
 */
export interface Plan {
  readonly placed: readonly Placed[];
  readonly changeovers: readonly PlacedChangeover[];
}

/** A stateful resource's uses in the order in which they count. */
interface Use {
  readonly task: Task;
  readonly start: number;
  readonly end: number;
  readonly state: string;
}

function find(placed: readonly Placed[], id: string): Placed | undefined {
  return placed.find((one) => one.id === id);
}

function usesOf(problem: PlannerProblem, placed: readonly Placed[], resource: string): Use[] {
  const uses: Use[] = [];
  for (const task of problem.tasks) {
    const one = find(placed, task.id);
    if (one === undefined || task.needs?.resource !== resource) continue;
    uses.push({ task, start: one.start, end: one.end, state: task.needs.state });
  }
  return inRow(problem, uses);
}

/** By start; of equal starts what may have no length first, then by place in the list. */
function inRow<T extends { readonly task: Task; readonly start: number; readonly end: number }>(
  problem: PlannerProblem,
  uses: T[],
): T[] {
  const finished = (task: Task) =>
    problem.past?.begun.find(({ id }) => id === task.id)?.end ?? null;
  const mayBeNothing = (use: T): number =>
    (finished(use.task) === null ? use.task.minLength : use.end - use.start) === 0 ? 0 : 1;
  return [...uses].sort(
    (a, b) =>
      a.start - b.start ||
      mayBeNothing(a) - mayBeNothing(b) ||
      problem.tasks.indexOf(a.task) - problem.tasks.indexOf(b.task),
  );
}

/** What is wrong with a plan; nothing if every rule holds. */
export function wrongWith(problem: PlannerProblem, { placed, changeovers }: Plan): string[] {
  const wrong: string[] = [];
  const past = problem.past ?? null;
  const begun = (id: string) => past?.begun.find((one) => one.id === id);
  const isOver = (id: string) => (begun(id)?.end ?? null) !== null;
  const isPast = (id: string, anchor: 'start' | 'end') =>
    begun(id) !== undefined && (anchor === 'start' || isOver(id));
  for (const task of problem.tasks) {
    const all = placed.filter(({ id }) => id === task.id);
    const [one] = all;
    const fact = begun(task.id);
    if (all.length > 1) wrong.push(`${task.id}: placed twice`);
    if (one === undefined) {
      if (task.optional !== true || fact !== undefined) wrong.push(`${task.id}: left out`);
      continue;
    }
    const { start, end } = one;
    if (!Number.isInteger(start) || !Number.isInteger(end)) wrong.push(`${task.id}: no time`);
    if (end > problem.horizon) wrong.push(`${task.id}: after the horizon`);
    if (end < start) wrong.push(`${task.id}: ends before it starts`);
    if (fact !== undefined && start !== fact.start) wrong.push(`${task.id}: its start is known`);
    if (fact?.end != null) {
      if (end !== fact.end) wrong.push(`${task.id}: its end is known`);
      continue;
    }
    const now = past?.now ?? 0;
    if (fact === undefined) {
      if (start < Math.max(0, now)) wrong.push(`${task.id}: before now`);
      if (task.notBefore !== null && start < task.notBefore) wrong.push(`${task.id}: too early`);
    } else if (end < now) wrong.push(`${task.id}: it still runs`);
    if (end - start < task.minLength) wrong.push(`${task.id}: too short`);
    // What runs beyond its longest length or its end may only end at once.
    const atOnce = fact !== undefined && end === now;
    if (end - start > task.maxLength && !atOnce) wrong.push(`${task.id}: too long`);
    if (task.endBy !== null && end > task.endBy && !atOnce) wrong.push(`${task.id}: too late`);
  }
  for (const lag of problem.lags) {
    const from = find(placed, lag.from);
    const to = find(placed, lag.to);
    if (from === undefined || to === undefined) continue;
    if (isPast(lag.from, lag.fromAnchor) && isPast(lag.to, lag.toAnchor)) continue;
    const gap = to[lag.toAnchor] - from[lag.fromAnchor];
    if (lag.min !== null && gap < lag.min) wrong.push(`${lag.id}: too soon`);
    if (lag.max !== null && gap > lag.max) wrong.push(`${lag.id}: too late`);
  }
  for (const { id, limit, spans } of problem.spanLimits) {
    const open = spans.some(
      (span) => !isPast(span.from, span.fromAnchor) || !isPast(span.to, span.toAnchor),
    );
    let sum = 0;
    for (const span of spans) {
      const from = find(placed, span.from);
      const to = find(placed, span.to);
      if (from === undefined || to === undefined) continue;
      sum += Math.max(0, to[span.toAnchor] - from[span.fromAnchor]);
    }
    if (open && sum > limit) wrong.push(`${id}: ${sum} in all`);
  }
  for (const { id, tasks, least, most } of problem.choices ?? []) {
    const count = tasks.filter((task) => find(placed, task) !== undefined).length;
    if (count < least || count > most) wrong.push(`${id}: ${count} of them`);
  }
  for (const { id, capacity } of problem.resources) {
    for (let time = Math.max(0, past?.now ?? 0); time < problem.horizon; time += 1) {
      let units = 0;
      for (const step of capacity) if (step.from <= time) units = step.units;
      let taken = 0;
      for (const task of problem.tasks) {
        const one = find(placed, task.id);
        if (one !== undefined && one.start <= time && time < one.end)
          taken += task.demands[id] ?? 0;
      }
      for (const change of changeovers) {
        const resource = problem.stateful.find((one) => one.id === change.resource);
        const demands = resource?.changeoverDemands?.[change.from]?.[change.to] ?? {};
        if (change.start <= time && time < change.end) taken += demands[id] ?? 0;
      }
      if (taken > units) wrong.push(`${id}: ${taken} of ${units} at ${time}`);
    }
  }
  for (const resource of problem.stateful) {
    const uses = usesOf(problem, placed, resource.id);
    const seen: PlacedChangeover[] = [];
    let state = resource.initial;
    let free = 0;
    let last: Use | null = null;
    for (const use of uses) {
      const fact = begun(use.task.id) !== undefined;
      if (use.state !== state) {
        const time = resource.changeover[state]?.[use.state];
        const known = fact && (last === null || begun(last.task.id) !== undefined);
        if (!known) {
          if (time === undefined) wrong.push(`${resource.id}: ${state} to ${use.state}`);
          else if (use.start < free + time)
            wrong.push(`${resource.id}: ${state} to ${use.state} before ${use.task.id}`);
        }
        const own = changeovers.filter(
          (one) =>
            one.resource === resource.id &&
            one.from === state &&
            one.to === use.state &&
            one.end <= use.start &&
            (one.start >= free || known),
        );
        // What takes somebody's time and is not known to have begun has not begun.
        const takes =
          Object.keys(resource.changeoverDemands?.[state]?.[use.state] ?? {}).length > 0;
        if (takes && !fact && own.some((one) => one.start < (past?.now ?? 0)))
          wrong.push(`${resource.id}: a changeover before now`);
        const length = time ?? 0;
        if (length > 0 && !own.some((one) => one.end - one.start === length))
          wrong.push(`${resource.id}: no changeover before ${use.task.id}`);
        seen.push(...own);
        state = use.state;
        free = use.end;
      }
      free = Math.max(free, use.end);
      last = use;
    }
    for (const change of changeovers) {
      if (change.resource === resource.id && !seen.includes(change))
        wrong.push(`${resource.id}: a changeover that nothing asks for`);
    }
  }
  return wrong;
}

/** What a plan costs by a goal. */
export function worth(problem: PlannerProblem, goal: Goal, placed: readonly Placed[]): number {
  if (goal.kind === 'sum')
    return goal.terms.reduce((sum, term) => sum + termOf(problem, term, placed), 0);
  let latest = 0;
  for (const one of placed) {
    if (goal.events === 'all ends') latest = Math.max(latest, one.end);
    else {
      for (const event of goal.events)
        if (event.task === one.id) latest = Math.max(latest, one[event.anchor]);
    }
  }
  const { step, origin } = goal.grid ?? { step: 1, origin: 0 };
  let point = origin;
  while (point < latest) point += step;
  while (point - step >= latest) point -= step;
  return point;
}

function termOf(problem: PlannerProblem, term: GoalTerm, placed: readonly Placed[]): number {
  switch (term.kind) {
    case 'completion':
      return (find(placed, term.event.task)?.[term.event.anchor] ?? 0) * term.weight;
    case 'lateness': {
      const time = find(placed, term.event.task)?.[term.event.anchor];
      if (time === undefined) return 0;
      return time < term.due ? term.early * (term.due - time) : term.late * (time - term.due);
    }
    case 'span': {
      const from = find(placed, term.from.task)?.[term.from.anchor];
      const to = find(placed, term.to.task)?.[term.to.anchor];
      if (from === undefined || to === undefined) return 0;
      return Math.max(0, to - from) * term.weight;
    }
    case 'moved': {
      let sum = 0;
      for (const { id, start } of term.from) {
        const now = find(placed, id);
        if (now !== undefined) sum += Math.abs(now.start - start);
      }
      return sum * term.weight;
    }
    case 'leftOut':
      return find(placed, term.task) === undefined ? term.weight : 0;
    case 'switches': {
      const row: Use[] = [];
      for (const task of problem.tasks) {
        const one = find(placed, task.id);
        if (one === undefined || one.end === one.start) continue;
        if ((task.demands[term.resource] ?? 0) === 0) continue;
        row.push({ task, start: one.start, end: one.end, state: task.group ?? '' });
      }
      const sorted = inRow(problem, row);
      let count = 0;
      for (let place = 1; place < sorted.length; place += 1)
        if (sorted[place]?.task.group !== sorted[place - 1]?.task.group) count += 1;
      return count * term.weight;
    }
    case 'changeover':
    case 'stateOn': {
      const resource = problem.stateful.find(({ id }) => id === term.resource);
      if (resource === undefined) return 0;
      let changing = 0;
      let on = 0;
      let state = resource.initial;
      let until: number | null = null;
      for (const use of usesOf(problem, placed, resource.id)) {
        if (use.state !== state) {
          changing += resource.changeover[state]?.[use.state] ?? 0;
          on += use.end - use.start;
          until = use.end;
        } else {
          const since: number = until ?? use.start;
          const again =
            resource.initial === use.state
              ? 0
              : (resource.changeover[resource.initial]?.[use.state] ?? Infinity);
          if (use.start > since) on += Math.min(use.start - since, again);
          on += Math.max(0, use.end - Math.max(use.start, since));
          until = Math.max(since, use.end);
        }
        state = use.state;
      }
      return (term.kind === 'stateOn' ? on : changing) * term.weight;
    }
  }
}
