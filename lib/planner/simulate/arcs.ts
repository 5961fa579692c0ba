import { completed } from '#lib/planner/face/defaults';
import { pastFacts } from '#lib/planner/face/past';
import { inRow, statesOf } from '#lib/planner/face/states-to-exact';
import type { Placed, PlannerProblem, ResourceId } from '#lib/planner/problem';

/** `to` (its start, or its end) is at least `gap` after `from`'s; tasks by their places in the plan. */
export interface Arc {
  readonly from: number;
  readonly fromEnd: boolean;
  readonly to: number;
  readonly toEnd: boolean;
  readonly gap: number;
  /** The rule's id: a lag, a resource or a stateful resource; of what is held back, `HELD`. */
  readonly rule: string;
  readonly kind: 'lag' | 'resource' | 'state' | 'held';
}

/** Time that a resource is less there: work planned before it is to be over when it begins. */
export interface Pause {
  readonly task: number;
  readonly resource: ResourceId;
  readonly from: number;
  readonly to: number;
}

/** A task cannot start before this. */
export interface Release {
  readonly task: number;
  readonly at: number;
  readonly rule: string;
}

/** What the order of a plan asks of its tasks, whatever their lengths. */
export interface OrderRules {
  readonly arcs: readonly Arc[];
  readonly releases: readonly Release[];
  readonly pauses: readonly Pause[];
}

/** Least lags, each resource's order and each state's order, as the plan has them. */
export function orderRules(problem: PlannerProblem, placed: readonly Placed[]): OrderRules {
  const place = new Map(placed.map(({ id }, index) => [id, index]));
  const resources = problem.resources.map((one) => chained(problem, placed, place, one));
  const states = stateOrder(problem, placed, place);
  return {
    arcs: [
      ...lagArcs(problem, place, 'min'),
      ...states.arcs,
      ...resources.flatMap(({ arcs }) => arcs),
    ],
    releases: [
      ...problem.tasks.flatMap(({ id, notBefore }): Release[] => {
        const task = place.get(id);
        const at = Math.max(0, notBefore ?? 0, problem.past?.now ?? 0);
        return task === undefined ? [] : [{ task, at, rule: id }];
      }),
      ...states.releases,
      ...resources.flatMap(({ releases }) => releases),
    ],
    pauses: resources.flatMap(({ pauses }) => pauses),
  };
}

/** Greatest lags, as arcs whose `gap` is the most that `to` may be after `from`. */
export function latestArcs(problem: PlannerProblem, placed: readonly Placed[]): Arc[] {
  return lagArcs(problem, new Map(placed.map(({ id }, index) => [id, index])), 'max');
}

function lagArcs(
  problem: PlannerProblem,
  place: ReadonlyMap<string, number>,
  side: 'min' | 'max',
): Arc[] {
  return problem.lags.flatMap((lag): Arc[] => {
    const from = place.get(lag.from);
    const to = place.get(lag.to);
    const gap = lag[side];
    if (gap === null || from === undefined || to === undefined || from === to) return [];
    const [fromEnd, toEnd] = [lag.fromAnchor === 'end', lag.toAnchor === 'end'];
    return [{ from, fromEnd, to, toEnd, gap, rule: lag.id, kind: 'lag' }];
  });
}

/** Somebody who has taken a unit of a resource: a task, or time that the unit is not there. */
interface Holder {
  readonly task: number | null;
  readonly start: number;
  readonly end: number;
  readonly units: number;
}

/**
 * The units of a resource from hand to hand: each task takes those that have been free for longest, and then
 * waits for whoever had them before. Never more is taken than there is, whatever the lengths; of one unit
 * alone it is the plan's order (partial-order schedules by chaining: Policella, Smith, Cesta, Oddi, 2004).
 */
function chained(
  problem: PlannerProblem,
  placed: readonly Placed[],
  place: ReadonlyMap<string, number>,
  { id, capacity }: PlannerProblem['resources'][number],
): OrderRules {
  const most = Math.max(0, ...capacity.map(({ units }) => units));
  const users: Holder[] = [
    ...problem.tasks.flatMap((task): Holder[] => {
      const at = place.get(task.id);
      const units = task.demands[id] ?? 0;
      const times = at === undefined ? undefined : placed[at];
      if (at === undefined || times === undefined || units === 0) return [];
      return times.end > times.start
        ? [{ task: at, start: times.start, end: times.end, units }]
        : [];
    }),
    ...capacity.flatMap(({ from, units }, index): Holder[] => {
      const end = capacity[index + 1]?.from ?? Infinity;
      return units < most ? [{ task: null, start: from, end, units: most - units }] : [];
    }),
  ].sort((a, b) => a.start - b.start || a.end - b.end || (a.task ?? -1) - (b.task ?? -1));
  const chains: Holder[][] = Array.from({ length: most }, () => []);
  const arcs: Arc[] = [];
  const releases: Release[] = [];
  const pauses: Pause[] = [];
  for (const user of users) {
    chains.sort((a, b) => (a.at(-1)?.end ?? -Infinity) - (b.at(-1)?.end ?? -Infinity));
    for (const chain of chains.slice(0, user.units)) {
      const last = chain.at(-1);
      if (last !== undefined && last.end <= user.start) tie(last, user, chain);
      chain.push(user);
    }
  }
  return { arcs, releases, pauses };

  function tie(from: Holder, to: Holder, chain: readonly Holder[]): void {
    if (to.task === null) {
      // All before it: who comes late on this unit runs into it, be it the last or not.
      for (const { task } of chain) {
        if (task === null || pauses.some((one) => one.task === task && one.from === to.start))
          continue;
        pauses.push({ task, resource: id, from: to.start, to: to.end });
      }
    } else {
      if (from.task === null) releases.push({ task: to.task, at: from.end, rule: id });
      const a = from.task ?? chain.findLast(({ task }) => task !== null)?.task ?? null;
      const b = to.task;
      if (a === null) return;
      if (arcs.some((arc) => arc.from === a && arc.to === b)) return;
      arcs.push({
        from: a,
        fromEnd: true,
        to: b,
        toEnd: false,
        gap: 0,
        rule: id,
        kind: 'resource',
      });
    }
  }
}

/** States stay in their order, each change with its time; those that share a state share it freely. */
function stateOrder(
  given: PlannerProblem,
  placed: readonly Placed[],
  place: ReadonlyMap<string, number>,
): { readonly arcs: readonly Arc[]; readonly releases: readonly Release[] } {
  const problem = completed(given);
  const arcs: Arc[] = [];
  const releases: Release[] = [];
  for (const { resource, states } of statesOf(problem, pastFacts(problem))) {
    const partOf = (task: number) => place.get(problem.tasks[task]?.id ?? '');
    const users = inRow(problem.tasks, states.users, ({ task }) => {
      return placed[partOf(task) ?? -1] ?? null;
    });
    let before: number[] | null = null;
    let block: number[] = [];
    let kind = states.initial;
    let gap = 0;
    for (const user of users) {
      const to = partOf(user.task);
      if (to === undefined) continue;
      if (user.kind !== kind) {
        gap = states.change[kind]?.[user.kind] ?? 0;
        before = block;
        block = [];
        kind = user.kind;
      }
      for (const from of before ?? [])
        arcs.push({ from, fromEnd: true, to, toEnd: false, gap, rule: resource.id, kind: 'state' });
      if (before?.length === 0) releases.push({ task: to, at: gap, rule: resource.id });
      block.push(to);
    }
  }
  return { arcs, releases };
}
