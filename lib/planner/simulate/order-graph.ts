import type { Placed, PlannerProblem } from '#lib/planner/problem';
import { latestArcs, orderRules, type Arc, type Release } from '#lib/planner/simulate/arcs';
import { heldBack } from '#lib/planner/simulate/held-back';
import { inOneGo } from '#lib/planner/simulate/one-go';
import type { OrderGraph } from '#lib/planner/simulate/pass';

/**
 * The order of a plan that keeps every rule: on each resource as in the plan, each task as early as least
 * lags, windows and that order allow. A task that the plan holds back so that a greatest lag or a sum of spans
 * is kept stays held back, not by the clock but as long as in the plan after what it is held back for waits for, and
 * no longer than a greatest lag from something done allows.
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
  const heldUntil = earliest.slice();
  const hold = (until: Float64Array, { task, at }: Release): void => {
    const bundle = bundleOf[task] ?? 0;
    const shift = bundles[bundle]?.find((one) => one.task === task)?.shift ?? 0;
    until[bundle] = Math.max(until[bundle] ?? at, at - shift);
  };
  for (const release of rules.releases) hold(earliest, release);
  const to = (own: readonly Arc[]) =>
    bundles.map((_, bundle) => own.filter((arc) => bundleOf[arc.to] === bundle));
  const deadlines = latestArcs(problem, placed).filter(
    (arc) => (bundleOf[arc.from] ?? 0) < (bundleOf[arc.to] ?? 0),
  );
  const graph: OrderGraph = {
    ids: placed.map(({ id }) => id),
    lengths: Float64Array.from(placed, ({ start, end }) => end - start),
    bundles,
    arcs: to(arcs),
    earliest,
    heldUntil,
    deadlines: to(deadlines),
    pauses: placed.map((_, task) => rules.pauses.filter((pause) => pause.task === task)),
    begun: Float64Array.from(placed, ({ id }) => begunAt.get(id) ?? Number.NaN),
    notWaitedFor: left,
  };
  const held = heldBack(problem, placed, graph, bundleOf);
  for (const release of held.releases) hold(heldUntil, release);
  return { ...graph, arcs: to([...arcs, ...held.arcs]) };
}
