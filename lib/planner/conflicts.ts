import { direct } from '#lib/planner/changeovers';
import { lowerBound, type Compiled, type Moment } from '#lib/planner/compiled';
import type { TimeNet } from '#lib/planner/time-net';

/** One way to settle a conflict: `to` at least `gap` after `from`. */
export interface Remedy {
  readonly from: Moment;
  readonly to: Moment;
  readonly gap: number;
  /** The items whose order it fixes, for weighing; −1 where it concerns none. */
  readonly first: number;
  readonly second: number;
}

/** Rules broken if everything starts as early as the net allows, and the ways to settle it. */
export interface Conflict {
  readonly at: number;
  readonly remedies: readonly Remedy[];
}

/** The earliest time of a moment: its lower bound from time 0. */
export function earliest(net: TimeNet, moment: Moment): number {
  return (net.low[moment.node] as number) + moment.offset;
}

/**
 * All conflicts of the earliest plan of `net`: exclusive items too close, shared resources overdrawn
 * (the first moment of each), changeovers too short between neighbours, sums of spans over their limit.
 * Of the exclusive pairs only those in `open` are looked at: the others are in order already.
 * None means that the earliest plan keeps every rule that was compiled.
 */
export function conflictsOf(compiled: Compiled, net: TimeNet, open: readonly number[]): Conflict[] {
  const { items } = compiled;
  const start = items.map((item) => earliest(net, item.start));
  const end = items.map((item) => earliest(net, item.end));
  const found: Conflict[] = [];
  for (const index of open) {
    const pair = compiled.pairs[index];
    if (pair === undefined) continue;
    const startA = start[pair.a] as number;
    const startB = start[pair.b] as number;
    if (startB >= (end[pair.a] as number) + pair.gapAB) continue;
    if (startA >= (end[pair.b] as number) + pair.gapBA) continue;
    found.push({
      at: Math.max(startA, startB),
      remedies: [
        order(compiled, pair.a, pair.b, pair.gapAB),
        order(compiled, pair.b, pair.a, pair.gapBA),
      ],
    });
  }
  overdrawn(compiled, start, end, found);
  shortChangeovers(compiled, start, end, found);
  longSpans(compiled, net, found);
  return found;
}

function order(compiled: Compiled, first: number, second: number, gap: number): Remedy {
  const before = compiled.items[first];
  const after = compiled.items[second];
  if (before === undefined || after === undefined) throw new Error('No such item');
  return { from: before.end, to: after.start, gap, first, second };
}

function overdrawn(compiled: Compiled, start: number[], end: number[], found: Conflict[]): void {
  for (const resource of compiled.shared) {
    const moments = [...new Set(resource.uses.map((use) => start[use.item] as number))];
    moments.sort((a, b) => a - b);
    for (const at of moments) {
      const active = resource.uses.filter(
        (use) => (start[use.item] as number) <= at && at < (end[use.item] as number),
      );
      const taken = active.reduce((sum, use) => sum + use.demand, 0);
      if (taken <= resource.units) continue;
      const remedies = active.flatMap((one) =>
        active
          .filter((other) => other.item !== one.item)
          .map((other) => order(compiled, one.item, other.item, 0)),
      );
      found.push({ at, remedies });
      break;
    }
  }
}

function shortChangeovers(
  compiled: Compiled,
  start: number[],
  end: number[],
  found: Conflict[],
): void {
  for (const { resource, uses } of compiled.stateful) {
    const sorted = [...uses].sort(
      (a, b) => (start[a.item] as number) - (start[b.item] as number) || a.item - b.item,
    );
    let state = resource.initial;
    let free = 0;
    let last = -1;
    for (const use of sorted) {
      const at = start[use.item] as number;
      const gap = direct(resource, state, use.state);
      if (state !== use.state && at < free + gap && at >= free) {
        const item = compiled.items[use.item];
        if (item === undefined) continue;
        if (last < 0) {
          const origin = { node: 0, offset: 0 };
          const later = { from: origin, to: item.start, gap, first: -1, second: use.item };
          found.push({ at, remedies: [later] });
        } else {
          const back = direct(resource, use.state, state);
          found.push({
            at,
            remedies: [order(compiled, last, use.item, gap), order(compiled, use.item, last, back)],
          });
        }
        break;
      }
      const until = end[use.item] as number;
      if (state !== use.state || until > free) {
        free = Math.max(until, state === use.state ? free : until);
        last = use.item;
      }
      state = use.state;
    }
  }
}

function longSpans(compiled: Compiled, net: TimeNet, found: Conflict[]): void {
  for (const limit of compiled.spans) {
    const spans = limit.spans.map((span) => ({
      ...span,
      now: Math.max(0, earliest(net, span.to) - earliest(net, span.from)),
      least: Math.max(0, lowerBound(net, span.from, span.to)),
    }));
    const over = spans.reduce((sum, span) => sum + span.now, 0) - limit.limit;
    if (over <= 0) continue;
    const remedies = spans
      .filter((span) => span.now > span.least)
      .sort((a, b) => b.now - b.least - (a.now - a.least))
      .map((span) => ({
        from: span.to,
        to: span.from,
        gap: -Math.max(span.least, span.now - over),
        first: -1,
        second: -1,
      }));
    found.push({ at: Math.min(...spans.map((span) => earliest(net, span.from))), remedies });
  }
}
