/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import type { Difference } from './differences';
import { NO_PATH } from './longest-paths';
import { placeOf, type Model } from './model';
import type { Event } from './problem';

/**
 * A time before which the latest of some events cannot be: all work on a resource, shared by all its units, after the
 * first of it can begin, and what must still follow the last of it. The load bound of resource-constrained projects
 * (Klein & Scholl 1999, from memory); it costs one walk over the tasks, and at 2,000 of them it is all there is.
 *
 * Invariant: of tasks that are always in the plan, with their least lengths and the most units there ever are, so no
 * plan is below it.
 */
export function workloadBound(model: Model, events: readonly Event[]): number {
  const { plain, start, end, endOffset } = model;
  const { trail } = model.engine;
  const tails = tailsOf(model, events, trail.bound.length / 2);
  let bound = 0;
  for (const { capacity, demands } of plain.resources) {
    const most = Math.max(0, ...capacity.map(({ units }) => units));
    if (most === 0) continue;
    let [work, head, tail] = [0, Infinity, Infinity];
    for (const [task, units] of demands.entries()) {
      const after = tails[end[task]!]!;
      const { minLength } = plain.tasks[task]!;
      if (units === 0 || minLength === 0 || after === NO_PATH || model.presence.has(task)) continue;
      work += units * minLength;
      head = Math.min(head, trail.low(start[task]!));
      tail = Math.min(tail, after - endOffset[task]!);
    }
    if (work > 0) bound = Math.max(bound, head + Math.ceil(work / most) + tail);
  }
  return bound;
}

/** By variable: how much later than it the latest of the events is at least; `NO_PATH` where none must follow. */
function tailsOf(model: Model, events: readonly Event[], variables: number): Int32Array {
  const tails = new Int32Array(variables).fill(NO_PATH);
  for (const event of events) {
    const [variable, offset] = placeOf(model, event);
    tails[variable] = Math.max(tails[variable]!, offset);
  }
  const always = model.differences.filter(({ ifBound }) => ifBound < 0);
  // A path visits a variable once: more rounds than variables would mean a positive cycle, which the root refuses.
  for (let round = 0, raised = true; raised && round < variables; round += 1) {
    raised = relaxed(tails, always);
  }
  return tails;
}

function relaxed(tails: Int32Array, differences: readonly Difference[]): boolean {
  let raised = false;
  for (let at = differences.length - 1; at >= 0; at -= 1) {
    const { from, to, weight } = differences[at]!;
    if (tails[to] === NO_PATH || tails[to]! + weight <= tails[from]!) continue;
    tails[from] = tails[to]! + weight;
    raised = true;
  }
  return raised;
}
