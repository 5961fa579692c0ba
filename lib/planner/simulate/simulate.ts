import type { TaskId } from '#lib/planner/problem';
import { seededRandom } from '#lib/planner/seeded-random';
import { passOver, roomFor, type OrderGraph, type Times } from '#lib/planner/simulate/pass';
import { latestOf } from '#lib/planner/simulate/promises';
import { triangularAt, triangularBelow, type Spread } from '#lib/planner/simulate/triangular';

/** How long everything takes, run by run: `lengths[run × tasks + task]`. */
export interface DrawnLengths {
  readonly runs: number;
  readonly ids: readonly TaskId[];
  readonly lengths: Float64Array;
}

export interface Drawing {
  readonly runs: number;
  readonly seed: number;
  /** Tasks that are not named here take as long as in the plan. */
  readonly spreads: ReadonlyMap<TaskId, Spread>;
  /** How long tasks that are under way have taken so far: they take at least that. */
  readonly taken?: ReadonlyMap<TaskId, number>;
}

/**
 * Lengths drawn from triangular distributions, each on its own. Each task of each run has a number of its
 * own whatever else is asked, so that two orders of the same tasks are compared on the same days.
 */
export function drawLengths(graph: OrderGraph, drawing: Drawing): DrawnLengths {
  const { runs, seed, spreads, taken } = drawing;
  const { ids, lengths: planned } = graph;
  const lengths = new Float64Array(runs * ids.length);
  const random = seededRandom(seed);
  for (let run = 0; run < runs; run += 1) {
    for (let task = 0; task < ids.length; task += 1) {
      const share = random();
      const spread = spreads.get(ids[task] as TaskId);
      const soFar = taken?.get(ids[task] as TaskId) ?? 0;
      lengths[run * ids.length + task] = Math.max(
        soFar,
        spread === undefined ? (planned[task] as number) : longerThan(spread, soFar, share),
      );
    }
  }
  return { runs, ids, lengths };
}

/** A draw from what is left of a distribution once so much has gone by. */
function longerThan(spread: Spread, soFar: number, share: number): number {
  const gone = soFar > 0 ? triangularBelow(spread, soFar) : 0;
  return triangularAt(spread, gone + share * (1 - gone));
}

/** The same days for an order of some of the same tasks; those that `fixed` names take so long each time. */
export function lengthsFor(
  graph: OrderGraph,
  drawn: DrawnLengths,
  fixed: ReadonlyMap<TaskId, number> = new Map(),
): DrawnLengths {
  const { runs } = drawn;
  const lengths = new Float64Array(runs * graph.ids.length);
  const place = new Map(drawn.ids.map((id, index) => [id, index]));
  graph.ids.forEach((id, task) => {
    const from = place.get(id);
    const always = fixed.get(id) ?? (from === undefined ? (graph.lengths[task] ?? 0) : null);
    for (let run = 0; run < runs; run += 1) {
      lengths[run * graph.ids.length + task] =
        always ?? (drawn.lengths[run * drawn.ids.length + (from as number)] as number);
    }
  });
  return { runs, ids: graph.ids, lengths };
}

/** What happened in all runs. */
export interface Simulated {
  readonly runs: number;
  /** When the last task is over, in ascending order. */
  readonly wraps: Float64Array;
  /** For each promise, in how many runs it is kept. */
  readonly kept: readonly number[];
}

/** Goes through the order once for each run. `seen` is shown every run, before the next is written over it. */
export function simulate(
  graph: OrderGraph,
  { runs, ids, lengths }: DrawnLengths,
  promises: readonly { readonly kept: (times: Times) => boolean }[],
  seen?: (times: Times) => void,
): Simulated {
  const pass = passOver(graph);
  const times = roomFor(graph);
  const wraps = new Float64Array(runs);
  const kept = promises.map(() => 0);
  for (let run = 0; run < runs; run += 1) {
    pass(lengths, run * ids.length, times);
    wraps[run] = latestOf(times.end);
    for (let index = 0; index < promises.length; index += 1) {
      if (promises[index]?.kept(times) === true) kept[index] = (kept[index] as number) + 1;
    }
    seen?.(times);
  }
  return { runs, wraps: wraps.sort(), kept };
}

/** The value that a share of the runs is not above: `percentile(wraps, 0.9)`. */
export function percentile(ascending: Float64Array, share: number): number {
  const last = ascending.length - 1;
  return ascending[Math.min(last, Math.max(0, Math.ceil(share * ascending.length) - 1))] ?? 0;
}
