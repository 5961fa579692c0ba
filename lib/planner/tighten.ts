import { lowerBound, type Compiled, type Moment } from '#lib/planner/compiled';
import { earliest } from '#lib/planner/conflicts';
import { flatten, type Effort, type Style } from '#lib/planner/flatten';
import type { TimeNet } from '#lib/planner/time-net';

const STYLE: Style = { pick: 'time', order: 'wrap', noise: 0 };

/**
 * Shortens what should be short without ending later: first each span of the span limits, then the
 * pauses between neighbouring uses of one state. Each is tried at its least length, then half-way;
 * one that leaves no plan is left as it was. Starts of what stands open move later by this.
 */
export function tighten(compiled: Compiled, start: TimeNet, effort: Effort): TimeNet {
  let net = start.copy();
  net.add(compiled.sink, 0, -(net.low[compiled.sink] as number));
  for (const limit of compiled.spans) {
    for (const span of limit.spans) net = shorten(compiled, net, span.from, span.to, effort);
  }
  for (const { uses } of compiled.stateful) {
    const sorted = uses
      .map((use) => ({ state: use.state, item: compiled.items[use.item] }))
      .flatMap(({ state, item }) => (item === undefined ? [] : [{ state, item }]))
      .sort((a, b) => earliest(net, a.item.start) - earliest(net, b.item.start));
    for (const [index, use] of sorted.entries()) {
      const previous = sorted[index - 1];
      if (previous === undefined || previous.state !== use.state) continue;
      net = shorten(compiled, net, previous.item.end, use.item.start, effort);
    }
  }
  return net;
}

function shorten(
  compiled: Compiled,
  net: TimeNet,
  from: Moment,
  to: Moment,
  effort: Effort,
): TimeNet {
  const now = earliest(net, to) - earliest(net, from);
  const least = Math.max(0, lowerBound(net, from, to));
  if (now <= least) return net;
  for (const most of [least, Math.floor((least + now) / 2)]) {
    const trial = net.copy();
    if (!trial.add(to.node, from.node, to.offset - most - from.offset)) continue;
    effort.fails = 4;
    const settled = flatten(compiled, trial, STYLE, effort);
    if (settled !== null) return settled;
  }
  return net;
}
