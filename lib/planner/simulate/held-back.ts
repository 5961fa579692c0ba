import type { Placed, PlannerProblem } from '#lib/planner/problem';
import type { Arc, Release } from '#lib/planner/simulate/arcs';
import { leftShifted, type OrderGraph } from '#lib/planner/simulate/pass';

/** Rule of an arc or a release that holds a task back for the sake of what must come soon after it. */
export const HELD = 'held back';

/** `from` starts no earlier than `gap` after `to` starts, although `to` comes after it. */
interface Back {
  readonly from: number;
  readonly to: number;
  readonly gap: number;
}

/** Room for what adding up minutes in binary leaves over. */
const EQUAL = 1e-6;

/** Starts of all tasks by their places. */
type Starts = Float64Array;

/**
 * What the plan holds back: tasks that could start earlier by themselves, but for a greatest lag or a limit on
 * spans to something later. They stay where the plan has them, unless they follow there straight on something
 * that is held back itself. Each is tied to the last thing that has begun by then and that the later one waits
 * for, at the plan's distance; to the clock where nothing has.
 */
export function heldBack(
  problem: PlannerProblem,
  placed: readonly Placed[],
  graph: OrderGraph,
  bundleOf: readonly number[],
): { readonly arcs: readonly Arc[]; readonly releases: readonly Release[] } {
  const { lengths, bundles, arcs, earliest, begun, notWaitedFor } = graph;
  const lengthOf = (task: number): number => lengths[task] ?? 0;
  const backs = [
    ...backArcs(problem, placed),
    ...notWaitedFor.map(({ from, fromEnd, to, toEnd, gap }): Back => ({
      from: to,
      to: from,
      gap: gap + (fromEnd ? lengthOf(from) : 0) - (toEnd ? lengthOf(to) : 0),
    })),
  ];
  const needOf = (starts: Starts, { from, fromEnd, to, toEnd, gap }: Arc): number =>
    (starts[from] ?? 0) + (fromEnd ? lengthOf(from) : 0) + gap - (toEnd ? lengthOf(to) : 0);

  const causes = new Map<number, number | null>();
  let starts = settled(new Map());
  for (let round = 0; round <= bundles.length; round += 1) {
    const fresh = bundles.flatMap((_, bundle) =>
      !causes.has(bundle) && isHeld(bundle) ? [bundle] : [],
    );
    if (fresh.length === 0) break;
    for (const bundle of fresh) causes.set(bundle, causeOf(bundle, bundle, new Set()));
    starts = settled(
      new Map([...causes.keys()].map((bundle) => [bundle, placed[firstOf(bundle)]?.start ?? 0])),
    );
  }

  const found: { arcs: Arc[]; releases: Release[] } = { arcs: [], releases: [] };
  for (const [bundle, cause] of causes) {
    if (!isHeld(bundle)) continue;
    const to = firstOf(bundle);
    const at = starts[to] ?? 0;
    if (cause === null) {
      found.releases.push({ task: to, at, rule: HELD });
      continue;
    }
    const begins = starts[cause] ?? 0;
    const over = begins + lengthOf(cause);
    const fromEnd = over <= at + EQUAL;
    const gap = at - (fromEnd ? over : begins);
    found.arcs.push({ from: cause, fromEnd, to, toEnd: false, gap, rule: HELD, kind: 'held' });
  }
  return found;

  /** The task of a bundle that starts with it. */
  function firstOf(bundle: number): number {
    return bundles[bundle]?.find(({ shift }) => shift === 0)?.task ?? 0;
  }

  /** The least times, with some bundles not before a time, that keep everything that the plan keeps. */
  function settled(holds: ReadonlyMap<number, number>): Starts {
    const { start } = leftShifted(graph);
    const raise = (task: number, need: number): boolean => {
      const by = need - (start[task] ?? 0);
      if (by <= EQUAL || !Number.isNaN(begun[task])) return false;
      for (const one of bundles[bundleOf[task] ?? 0] ?? []) {
        start[one.task] = (start[one.task] ?? 0) + by;
      }
      return true;
    };
    for (const [bundle, at] of holds) raise(firstOf(bundle), at);
    // The plan itself keeps every one of these, so no start ends up after its own.
    for (let round = 0; round <= placed.length; round += 1) {
      let moved = false;
      for (const own of arcs) {
        for (const arc of own) if (raise(arc.to, needOf(start, arc))) moved = true;
      }
      for (const { from, to, gap } of backs) {
        if (raise(from, (start[to] ?? 0) + gap)) moved = true;
      }
      if (!moved) break;
    }
    return start;
  }

  /** Whether nothing before it explains a start. */
  function isHeld(bundle: number): boolean {
    const first = firstOf(bundle);
    if ((bundles[bundle] ?? []).some(({ task }) => !Number.isNaN(begun[task]))) return false;
    const shiftOf = (task: number): number => (starts[task] ?? 0) - (starts[first] ?? 0);
    const free = Math.max(
      earliest[bundle] ?? 0,
      ...(arcs[bundle] ?? []).map((arc) => needOf(starts, arc) - shiftOf(arc.to)),
    );
    return (starts[first] ?? 0) > free + EQUAL;
  }

  /** The task before `held` in the order that keeps this bundle back, straight or through others. */
  function causeOf(bundle: number, held: number, seen: Set<number>): number | null {
    seen.add(bundle);
    const tasks = new Set((bundles[bundle] ?? []).map(({ task }) => task));
    const tight =
      bundle === held
        ? []
        : (arcs[bundle] ?? []).filter(
            (arc) => needOf(starts, arc) >= (starts[arc.to] ?? 0) - EQUAL,
          );
    for (const { from } of tight) if ((bundleOf[from] ?? 0) < held) return from;
    const later = [
      ...tight.map(({ from }) => bundleOf[from] ?? 0),
      ...backs
        .filter(
          ({ from, to, gap }) =>
            tasks.has(from) && (starts[to] ?? 0) + gap >= (starts[from] ?? 0) - EQUAL,
        )
        .map(({ to }) => bundleOf[to] ?? 0),
    ];
    for (const next of later) {
      if (seen.has(next)) continue;
      const cause = causeOf(next, held, seen);
      if (cause !== null) return cause;
    }
    return null;
  }
}

/** Greatest lags, and limited spans, which must not become longer than the plan has them. */
function backArcs(problem: PlannerProblem, placed: readonly Placed[]): Back[] {
  const place = new Map(placed.map(({ id }, index) => [id, index]));
  const spans = problem.spanLimits.flatMap(({ spans }) =>
    spans.map((span) => ({ ...span, most: null })),
  );
  const lags = problem.lags.flatMap((lag) => (lag.max === null ? [] : [{ ...lag, most: lag.max }]));
  return [...lags, ...spans].flatMap(({ from: a, fromAnchor, to: b, toAnchor, most }): Back[] => {
    const [from, to] = [place.get(a), place.get(b)];
    const [before, after] = [placed[from ?? -1], placed[to ?? -1]];
    if (from === undefined || to === undefined || from === to || !before || !after) return [];
    const shift = after[toAnchor] - after.start - (before[fromAnchor] - before.start);
    const now = Math.max(0, after[toAnchor] - before[fromAnchor]);
    return [{ from, to, gap: shift - (most ?? now) }];
  });
}
