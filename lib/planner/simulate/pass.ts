import type { TaskId } from '#lib/planner/problem';
import type { Arc, Pause } from '#lib/planner/simulate/arcs';
import type { Bundle } from '#lib/planner/simulate/one-go';

/**
 * A plan's order, ready to be gone through with any lengths: bundles of tasks that start together, in an order
 * in which each waits only for those before it.
 */
export interface OrderGraph {
  readonly ids: readonly TaskId[];
  /** Lengths that the plan has. */
  readonly lengths: Float64Array;
  readonly bundles: readonly Bundle[];
  /** By bundle, the arcs that lead to its tasks. */
  readonly arcs: readonly (readonly Arc[])[];
  /** By bundle, the earliest start that no task is the cause of. */
  readonly earliest: Float64Array;
  /** By task, times at which it must not be under way. */
  readonly pauses: readonly (readonly Pause[])[];
  /** By task, when it began, or NaN where it has not. */
  readonly begun: Float64Array;
  /** Lags that are counted and not waited for, since one pass cannot: they lead back in the order. */
  readonly notWaitedFor: readonly Arc[];
}

/** Starts, and ends of all tasks, by their places in the graph. */
export interface Times {
  readonly start: Float64Array;
  readonly end: Float64Array;
  /** By bundle, the arc that it waited for last; -1 for none. */
  readonly cause: Int32Array;
}

/** Room for the times of one pass. */
export function roomFor({ ids, bundles }: OrderGraph): Times {
  return {
    start: new Float64Array(ids.length),
    end: new Float64Array(ids.length),
    cause: new Int32Array(bundles.length),
  };
}

/**
 * When everything starts and ends with these lengths, in one pass, written over `into`. A task under way when
 * a pause begins goes on after it; one that has not begun by then begins after it.
 *
 * @param lengths by task, from place `offset` on
 */
export function pass(graph: OrderGraph, lengths: Float64Array, offset: number, into: Times): void {
  const { bundles, arcs, earliest, pauses, begun } = graph;
  const { start, end, cause } = into;
  for (let bundle = 0; bundle < bundles.length; bundle += 1) {
    const tasks = bundles[bundle] as Bundle;
    const own = arcs[bundle] as readonly Arc[];
    let at = earliest[bundle] as number;
    let because = -1;
    for (let index = 0; index < own.length; index += 1) {
      const { from, fromEnd, to, toEnd, gap } = own[index] as Arc;
      let need = ((fromEnd ? end[from] : start[from]) as number) + gap;
      if (toEnd) need -= lengths[offset + to] as number;
      if (tasks.length > 1) need -= shiftOf(tasks, to);
      if (need > at) {
        at = need;
        because = index;
      }
    }
    for (const { task, shift } of tasks) {
      const known = begun[task] as number;
      let from = Number.isNaN(known) ? at + shift : known;
      let until = from + (lengths[offset + task] as number);
      for (const pause of pauses[task] as readonly Pause[]) {
        if (from >= pause.to || until <= pause.from) continue;
        until += from >= pause.from ? pause.to - from : pause.to - pause.from;
        if (from >= pause.from) from = pause.to;
      }
      start[task] = from;
      end[task] = until;
    }
    cause[bundle] = because;
  }
}

function shiftOf(tasks: Bundle, task: number): number {
  return tasks.find((one) => one.task === task)?.shift ?? 0;
}

/** The plan's own times with nothing later than it must be, see `orderGraph`. */
export function leftShifted(graph: OrderGraph): Times {
  const times = roomFor(graph);
  pass(graph, graph.lengths, 0, times);
  return times;
}
