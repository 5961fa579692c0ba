import type { Placed, PlannerProblem } from '#lib/planner/problem';
import type { Arc } from '#lib/planner/simulate/arcs';

/** Tasks whose starts are tied to each other by a fixed lag, each so long after the bundle's own start. */
export type Bundle = readonly { readonly task: number; readonly shift: number }[];

/** Bundles in an order that one pass can go through, the arcs it waits for, and those it cannot. */
export interface OneGo {
  readonly bundles: readonly Bundle[];
  readonly bundleOf: readonly number[];
  readonly arcs: readonly Arc[];
  readonly left: readonly Arc[];
}

/**
 * An order of the tasks in which every arc leads forwards; of what could be next, what the plan has first. Lags
 * that lead around in a circle with the orders on the resources are left out.
 */
export function inOneGo(
  problem: PlannerProblem,
  placed: readonly Placed[],
  arcs: readonly Arc[],
): OneGo {
  const raw = bundled(problem, placed);
  const rawOf: number[] = [];
  raw.forEach((bundle, index) => bundle.forEach(({ task }) => (rawOf[task] = index)));
  const firstStart = raw.map((bundle) =>
    Math.min(...bundle.map(({ task }) => placed[task]?.start ?? 0)),
  );
  let waiting = arcs.filter(({ from, to }) => rawOf[from] !== rawOf[to]);
  const kept: Arc[] = [];
  const left: Arc[] = arcs.filter(
    (arc) => arc.kind === 'lag' && !waiting.includes(arc) && !within(arc),
  );
  const open = new Set(raw.map((_, index) => index));
  const order: number[] = [];
  while (open.size > 0) {
    const blocked = new Set(waiting.map(({ to }) => rawOf[to] ?? 0));
    const free = [...open].filter((index) => !blocked.has(index));
    if (free.length === 0) {
      // A circle: its lags are left out first.
      const next = [...open].sort(byStart)[0] ?? 0;
      const drop = waiting.filter(({ to }) => rawOf[to] === next);
      const lags = drop.filter(({ kind }) => kind === 'lag');
      const out = lags.length > 0 ? lags : drop;
      left.push(...out);
      waiting = waiting.filter((arc) => !out.includes(arc));
      continue;
    }
    const next = free.sort(byStart)[0] ?? 0;
    open.delete(next);
    order.push(next);
    kept.push(...waiting.filter(({ from }) => rawOf[from] === next));
    waiting = waiting.filter(({ from }) => rawOf[from] !== next);
  }
  const bundles = order.map((index) => raw[index] ?? []);
  const bundleOf: number[] = [];
  bundles.forEach((bundle, index) => bundle.forEach(({ task }) => (bundleOf[task] = index)));
  return { bundles, bundleOf, arcs: kept, left };

  function byStart(a: number, b: number): number {
    return (firstStart[a] ?? 0) - (firstStart[b] ?? 0) || a - b;
  }

  /** What the bundle itself keeps. */
  function within({ from, to, fromEnd, toEnd }: Arc): boolean {
    return rawOf[from] === rawOf[to] && !fromEnd && !toEnd;
  }
}

/** Tasks that a lag from start to start ties to each other exactly; the first of each starts with its bundle. */
function bundled(problem: PlannerProblem, placed: readonly Placed[]): Bundle[] {
  const place = new Map(placed.map(({ id }, index) => [id, index]));
  const parent = placed.map((_, index) => index);
  const root = (index: number): number => {
    const up = parent[index] ?? index;
    return up === index ? index : root(up);
  };
  for (const lag of problem.lags) {
    const [from, to] = [place.get(lag.from), place.get(lag.to)];
    const tied = lag.fromAnchor === 'start' && lag.toAnchor === 'start' && lag.min === lag.max;
    if (!tied || lag.min === null || from === undefined || to === undefined) continue;
    parent[Math.max(root(from), root(to))] = Math.min(root(from), root(to));
  }
  const groups = new Map<number, number[]>();
  placed.forEach((_, index) => {
    groups.set(root(index), [...(groups.get(root(index)) ?? []), index]);
  });
  return [...groups.values()].map((tasks) => {
    const first = Math.min(...tasks.map((task) => placed[task]?.start ?? 0));
    return tasks.map((task) => ({ task, shift: (placed[task]?.start ?? first) - first }));
  });
}
