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
  /** By bundle, the arcs that lead to its tasks; those that hold it back come last. */
  readonly arcs: readonly (readonly Arc[])[];
  /** By bundle, the earliest start that no task is the cause of. */
  readonly earliest: Float64Array;
  /** By bundle, until when it is held back by the clock; -Infinity where it is not. */
  readonly heldUntil: Float64Array;
  /** By bundle, greatest lags from tasks before it: nothing is held back past them. */
  readonly deadlines: readonly (readonly Arc[])[];
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
 * When everything starts and ends with these lengths, written over the times given, in one pass over the graph.
 * A task under way when a pause begins goes on after it; one that has not begun by then begins after it. What is
 * held back is held no longer than a greatest lag from something done allows.
 *
 * @returns a function of the lengths by task, from place `offset` on
 */
export function passOver(
  graph: OrderGraph,
): (lengths: Float64Array, offset: number, into: Times) => void {
  const { bundles, earliest, heldUntil, pauses, begun } = graph;
  const waits = flat(graph, (arcs) => arcs.filter(({ kind }) => kind !== 'held'), graph.arcs);
  const holds = flat(graph, (arcs) => arcs.filter(({ kind }) => kind === 'held'), graph.arcs);
  const limits = flat(graph, (arcs) => arcs, graph.deadlines);
  const firstHeld = graph.arcs.map((own) => own.filter(({ kind }) => kind !== 'held').length);
  return (lengths, offset, times) => {
    const { start, end, cause } = times;
    for (let bundle = 0; bundle < bundles.length; bundle += 1) {
      let at = earliest[bundle] as number;
      let because = -1;
      const first = waits.first[bundle] as number;
      for (let index = first; index < (waits.first[bundle + 1] as number); index += 1) {
        const need = needOf(waits, index, times, lengths, offset);
        if (need <= at) continue;
        at = need;
        because = index - first;
      }
      let held = heldUntil[bundle] as number;
      let holder = -1;
      for (let i = holds.first[bundle] as number; i < (holds.first[bundle + 1] as number); i += 1) {
        const need = needOf(holds, i, times, lengths, offset);
        if (need <= held) continue;
        held = need;
        holder = (firstHeld[bundle] as number) + i - (holds.first[bundle] as number);
      }
      if (held > at) {
        for (
          let i = limits.first[bundle] as number;
          i < (limits.first[bundle + 1] as number);
          i += 1
        )
          held = Math.min(held, needOf(limits, i, times, lengths, offset));
        if (held > at) {
          at = held;
          because = holder;
        }
      }
      for (const { task, shift } of bundles[bundle] as Bundle) {
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
  };
}

/** Arcs in rows of numbers, those of a bundle from `first[bundle]` on; gaps are to the bundle's own start. */
interface Flat {
  readonly first: Int32Array;
  readonly from: Int32Array;
  readonly fromEnd: Uint8Array;
  readonly to: Int32Array;
  readonly toEnd: Uint8Array;
  readonly gap: Float64Array;
}

/** When an arc lets its bundle start. */
function needOf(
  arcs: Flat,
  index: number,
  { start, end }: Times,
  lengths: Float64Array,
  offset: number,
): number {
  const from = arcs.from[index] as number;
  const begin = (arcs.fromEnd[index] === 1 ? end[from] : start[from]) as number;
  const need = begin + (arcs.gap[index] as number);
  if (arcs.toEnd[index] === 0) return need;
  return need - (lengths[offset + (arcs.to[index] as number)] as number);
}

function flat(
  { bundles }: OrderGraph,
  pick: (arcs: readonly Arc[]) => readonly Arc[],
  byBundle: readonly (readonly Arc[])[],
): Flat {
  const rows = byBundle.map(pick);
  const all = rows.flat();
  const first = new Int32Array(rows.length + 1);
  rows.forEach((own, bundle) => (first[bundle + 1] = (first[bundle] ?? 0) + own.length));
  const shifts = new Map(bundles.flat().map(({ task, shift }) => [task, shift]));
  return {
    first,
    from: Int32Array.from(all, ({ from }) => from),
    fromEnd: Uint8Array.from(all, ({ fromEnd }) => (fromEnd ? 1 : 0)),
    to: Int32Array.from(all, ({ to }) => to),
    toEnd: Uint8Array.from(all, ({ toEnd }) => (toEnd ? 1 : 0)),
    gap: Float64Array.from(all, ({ to, gap }) => gap - (shifts.get(to) ?? 0)),
  };
}

/** The plan's own times with nothing later than it must be, see `orderGraph`. */
export function leftShifted(graph: OrderGraph): Times {
  const times = roomFor(graph);
  passOver(graph)(graph.lengths, 0, times);
  return times;
}
