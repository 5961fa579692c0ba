import type { Placed, PlannerProblem } from '#lib/planner/problem';
import { orderRules } from '#lib/planner/simulate/arcs';
import { heldBack } from '#lib/planner/simulate/held-back';
import { inOneGo } from '#lib/planner/simulate/one-go';
import type { OrderGraph } from '#lib/planner/simulate/pass';

/**
 * The order of a plan that keeps every rule: on each resource as in the plan, each task as early as least
 * lags, windows and that order allow. A task that the plan holds back so that a greatest lag or a sum of spans
 * is kept stays held back, not by the clock but as long as in the plan after what it is held back for waits for.
 *
 * Law: at the plan's own lengths no task starts later than in the plan, and every rule that the plan keeps is kept.
 */
export function orderGraph(problem: PlannerProblem, plan: readonly Placed[]): OrderGraph {
  const known = new Set(problem.tasks.map(({ id }) => id));
  const placed = plan.filter(({ id }) => known.has(id));
  const rules = orderRules(problem, placed);
  const begunAt = new Map((problem.past?.begun ?? []).map(({ id, start }) => [id, start]));
  const { bundles, bundleOf, arcs, left } = inOneGo(problem, placed, rules.arcs);
  const earliest = new Float64Array(bundles.length).fill(-Infinity);
  const hold = (task: number, at: number): void => {
    const bundle = bundleOf[task] ?? 0;
    const shift = bundles[bundle]?.find((one) => one.task === task)?.shift ?? 0;
    earliest[bundle] = Math.max(earliest[bundle] ?? at, at - shift);
  };
  for (const { task, at } of rules.releases) hold(task, at);
  const graph: OrderGraph = {
    ids: placed.map(({ id }) => id),
    lengths: Float64Array.from(placed, ({ start, end }) => end - start),
    bundles,
    arcs: bundles.map((_, bundle) => arcs.filter(({ to }) => bundleOf[to] === bundle)),
    earliest,
    pauses: placed.map((_, task) => rules.pauses.filter((pause) => pause.task === task)),
    begun: Float64Array.from(placed, ({ id }) => begunAt.get(id) ?? Number.NaN),
    notWaitedFor: left,
  };
  const held = heldBack(problem, placed, graph, bundleOf);
  for (const { task, at } of held.releases) hold(task, at);
  return {
    ...graph,
    arcs: graph.arcs.map((own, bundle) => [
      ...own,
      ...held.arcs.filter(({ to }) => bundleOf[to] === bundle),
    ]),
  };
}
