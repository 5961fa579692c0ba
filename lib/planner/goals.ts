import { direct } from '#lib/planner/changeovers';
import type { Anchor, Placed, PlannerProblem } from '#lib/planner/problem';

/** What a plan is judged by, the most important first; less is better. */
export interface Goals {
  /** End of the last task. */
  readonly wrap: number;
  /** Summed spans over all span limits. */
  readonly spans: number;
  /** Time in use, in changeover, or held between two uses of one state, over all stateful resources. */
  readonly stateOn: number;
  /** Neighbours on a resource of one unit that belong to different groups. */
  readonly switches: number;
}

/**
 * The goals of a placement. A pause between two uses of the same state counts at most the changeover
 * from the initial state, since by then it would rather be left and made again.
 */
export function goalsOf(problem: PlannerProblem, placed: readonly Placed[]): Goals {
  const byId = new Map(placed.map((entry) => [entry.id, entry]));
  const at = (id: string, anchor: Anchor): number => byId.get(id)?.[anchor] ?? 0;
  const wrap = placed.reduce((latest, entry) => Math.max(latest, entry.end), 0);
  let spans = 0;
  for (const limit of problem.spanLimits) {
    for (const span of limit.spans) {
      spans += Math.max(0, at(span.to, span.toAnchor) - at(span.from, span.fromAnchor));
    }
  }
  let stateOn = 0;
  for (const resource of problem.stateful) {
    let state = resource.initial;
    let free: number | null = null;
    for (const use of sorted(problem, byId, (task) => task.needs?.resource === resource.id)) {
      const wanted = use.task.needs?.state ?? state;
      const gap = free === null ? 0 : Math.max(0, use.start - free);
      stateOn +=
        state === wanted
          ? Math.min(gap, direct(resource, resource.initial, wanted))
          : direct(resource, state, wanted);
      stateOn += Math.max(0, use.end - Math.max(use.start, free ?? use.start));
      free = Math.max(use.end, free ?? use.end);
      state = wanted;
    }
  }
  let switches = 0;
  for (const resource of problem.resources) {
    if (Math.max(0, ...resource.capacity.map((step) => step.units)) !== 1) continue;
    const users = sorted(problem, byId, (task) => (task.demands[resource.id] ?? 0) > 0);
    users.forEach((use, index) => {
      const previous = users[index - 1];
      if (previous !== undefined && previous.task.group !== use.task.group) switches += 1;
    });
  }
  return { wrap, spans, stateOn, switches };
}

/** Negative if `a` is the better plan, by the first goal in which they differ. */
export function compareGoals(a: Goals, b: Goals): number {
  return a.wrap - b.wrap || a.spans - b.spans || a.stateOn - b.stateOn || a.switches - b.switches;
}

function sorted(
  problem: PlannerProblem,
  byId: ReadonlyMap<string, Placed>,
  wanted: (task: PlannerProblem['tasks'][number]) => boolean,
) {
  return problem.tasks
    .filter(wanted)
    .map((task) => ({
      task,
      start: byId.get(task.id)?.start ?? 0,
      end: byId.get(task.id)?.end ?? 0,
    }))
    .sort((a, b) => a.start - b.start || a.end - b.end || (a.task.id < b.task.id ? -1 : 1));
}
