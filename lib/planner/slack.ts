import type { PlanToExplain } from '#lib/planner/bindings';
import { completed, type WholeProblem } from '#lib/planner/face/defaults';
import { pastFacts } from '#lib/planner/face/past';
import { inRow, statesOf } from '#lib/planner/face/states-to-exact';
import type { Placed, PlannerProblem, TaskId } from '#lib/planner/problem';

/** A part of the plan that can be moved as a whole, or the blocks and the beginning that cannot. */
interface Part extends Placed {
  readonly fixed: boolean;
}

/** `to` starts at least `gap` after `from` starts. */
interface Arc {
  readonly from: Part;
  readonly to: Part;
  readonly gap: number;
}

/**
 * By task: how much later it may start without anything ending after `until`, if whatever comes after it is
 * moved as well. Lengths, the order on each resource, and spans that are limited stay as they are in the plan,
 * so it is slack that can be relied on; another order may leave more.
 *
 * Law: all tasks started as late as their slack allows are a plan again, over by `until`.
 *
 * @param until the end of the last task if left out
 */
export function slackOf(
  given: PlannerProblem,
  plan: PlanToExplain,
  until: number = plan.placed.reduce((latest, { end }) => Math.max(latest, end), 0),
): ReadonlyMap<TaskId, number> {
  const latest = latestStarts(given, plan, until);
  return new Map(plan.placed.map(({ id, start }) => [id, (latest.get(id) ?? start) - start]));
}

function latestStarts(
  given: PlannerProblem,
  plan: PlanToExplain,
  until: number,
): ReadonlyMap<string, number> {
  const problem = completed(given);
  const past = pastFacts(problem);
  const tasks = plan.placed.map((one): Part => ({ ...one, fixed: past.begun.has(one.id) }));
  const changes = plan.changeovers.map(
    (change, index): Part & { readonly change: (typeof plan.changeovers)[number] } => ({
      id: `change ${index}`,
      start: change.start,
      end: change.end,
      fixed: change.start < (past.now ?? 0),
      change,
    }),
  );
  const arcs = [
    ...lagArcs(problem, tasks),
    ...spanArcs(problem, tasks),
    ...resourceArcs(problem, tasks, changes),
    ...stateArcs(problem, tasks, changes),
  ];
  const late = new Map<Part, number>();
  for (const part of [...tasks, ...changes]) {
    const endBy = problem.tasks.find(({ id }) => id === part.id)?.endBy ?? until;
    const end = Math.min(until, endBy, problem.horizon);
    late.set(part, part.fixed ? part.start : Math.max(part.start, end - (part.end - part.start)));
  }
  // As often as there are parts: longer chains repeat themselves.
  for (let round = 0; round <= late.size; round += 1) {
    let changed = false;
    for (const { from, to, gap } of arcs) {
      const limit = (late.get(to) ?? to.start) - gap;
      if ((late.get(from) ?? from.start) <= limit) continue;
      late.set(from, limit);
      changed = true;
    }
    if (!changed) break;
  }
  return new Map([...late].map(([{ id }, start]) => [id, start]));
}

function lagArcs(problem: WholeProblem, tasks: readonly Part[]): Arc[] {
  const byId = new Map(tasks.map((part) => [part.id, part]));
  return problem.lags.flatMap((lag) => {
    const from = byId.get(lag.from);
    const to = byId.get(lag.to);
    if (from === undefined || to === undefined || from === to) return [];
    // What is kept between the starts, the lengths being what they are.
    const shift = from[lag.fromAnchor] - from.start - (to[lag.toAnchor] - to.start);
    return [
      ...(lag.min === null ? [] : [{ from, to, gap: lag.min + shift }]),
      ...(lag.max === null ? [] : [{ from: to, to: from, gap: -lag.max - shift }]),
    ].filter((arc) => !(arc.from.fixed && arc.to.fixed));
  });
}

/** Limited spans may not become longer; those that are none may not begin to be. */
function spanArcs(problem: WholeProblem, tasks: readonly Part[]): Arc[] {
  const byId = new Map(tasks.map((part) => [part.id, part]));
  return problem.spanLimits.flatMap(({ spans }) =>
    spans.flatMap((span) => {
      const from = byId.get(span.from);
      const to = byId.get(span.to);
      if (from === undefined || to === undefined || from === to) return [];
      const shift = from[span.fromAnchor] - from.start - (to[span.toAnchor] - to.start);
      const most = Math.max(0, to[span.toAnchor] - from[span.fromAnchor]);
      return [{ from: to, to: from, gap: -most - shift }];
    }),
  );
}

/**
 * Who is over before another begins stays so. Then only those overlap that do so now, all at one time, where
 * their units were enough (intervals that overlap two by two have a time in common).
 */
function resourceArcs(
  problem: WholeProblem,
  tasks: readonly Part[],
  changes: readonly (Part & { readonly change: PlanToExplain['changeovers'][number] })[],
): Arc[] {
  return problem.resources.flatMap(({ id, capacity }) => {
    const most = Math.max(0, ...capacity.map(({ units }) => units));
    const users: Part[] = [
      ...tasks.filter(
        (part) => (problem.tasks.find((task) => task.id === part.id)?.demands[id] ?? 0) > 0,
      ),
      ...changes.filter(({ change: { resource, from, to } }) => {
        const stateful = problem.stateful.find((one) => one.id === resource);
        return (stateful?.changeoverDemands?.[from]?.[to]?.[id] ?? 0) > 0;
      }),
      ...capacity.flatMap(({ from, units }, index): Part[] =>
        units === most
          ? []
          : [
              {
                id: `${id} less`,
                start: from,
                end: capacity[index + 1]?.from ?? Infinity,
                fixed: true,
              },
            ],
      ),
    ].filter(({ start, end }) => end > start);
    return users.flatMap((from) =>
      users.flatMap((to) => {
        if (from === to || from.end > to.start || (from.fixed && to.fixed)) return [];
        return [{ from, to, gap: from.end - from.start }];
      }),
    );
  });
}

/** States stay in their order, each change with its time. */
function stateArcs(
  problem: WholeProblem,
  tasks: readonly Part[],
  changes: readonly (Part & { readonly change: PlanToExplain['changeovers'][number] })[],
): Arc[] {
  const byId = new Map(tasks.map((part) => [part.id, part]));
  return statesOf(problem, pastFacts(problem)).flatMap(({ resource, states }) => {
    const own = changes.filter(({ change }) => change.resource === resource.id);
    const arcs: Arc[] = [];
    let before: Part[] = [];
    let block: Part[] = [];
    let kind = -1;
    let from = -1;
    const users = inRow(problem.tasks, states.users, ({ task }) => {
      return byId.get(problem.tasks[task]?.id ?? '') ?? null;
    });
    for (const user of users) {
      const part = byId.get(problem.tasks[user.task]?.id ?? '');
      if (part === undefined) continue;
      if (user.kind !== kind) {
        before = block;
        from = kind;
        block = [];
      }
      for (const one of before) {
        const gap = states.change[from]?.[user.kind] ?? 0;
        if (!one.fixed || !part.fixed)
          arcs.push({ from: one, to: part, gap: one.end - one.start + gap });
      }
      kind = user.kind;
      block.push(part);
    }
    for (const made of own) {
      for (const user of users) {
        const part = byId.get(problem.tasks[user.task]?.id ?? '');
        if (part === undefined) continue;
        if (part.start >= made.end) arcs.push({ from: made, to: part, gap: made.end - made.start });
        else if (part.end <= made.start)
          arcs.push({ from: part, to: made, gap: part.end - part.start });
      }
    }
    return arcs.filter(({ from, to }) => !(from.fixed && to.fixed));
  });
}
