import { lowerBound, type Compiled, type Moment } from '#lib/planner/compile';
import { conflictsOf, earliest, type Conflict, type Remedy } from '#lib/planner/conflicts';
import type { TimeNet } from '#lib/planner/time-net';

/** How a try chooses: which conflict first, which order first, and how much chance is mixed in. */
export interface Style {
  readonly pick: 'time' | 'slack' | 'weight';
  readonly order: 'wrap' | 'early' | 'slack' | 'group';
  readonly noise: number;
}

/** What a try may use up, and what it learns: items that were part of a dead end weigh more. */
export interface Effort {
  fails: number;
  readonly weights: Float64Array;
  readonly random: () => number;
}

interface Choice {
  readonly net: TimeNet;
  readonly remedies: readonly Remedy[];
  next: number;
}

/**
 * Settles conflict after conflict of the earliest plan by fixing orders, with backtracking, until the
 * earliest plan keeps every rule; null if `effort.fails` dead ends were met or all ways were tried.
 * (Precedence constraint posting: Cesta, Oddi, Smith, "A constraint-based method for project
 * scheduling with time windows", J. Heuristics 8, 2002 — from memory.)
 *
 * Law: the earliest times of a returned net break no compiled rule; no bound of `start` is lost.
 */
export function flatten(
  compiled: Compiled,
  start: TimeNet,
  style: Style,
  effort: Effort,
): TimeNet | null {
  const stack: Choice[] = [];
  let net: TimeNet | null = start.copy();
  if (!propagate(compiled, net, effort.weights)) return null;
  for (;;) {
    if (net !== null) {
      const conflicts = conflictsOf(compiled, net);
      if (conflicts.length === 0) return net;
      const settled: TimeNet = net;
      const conflict = pickConflict(conflicts, settled, style, effort);
      stack.push({
        net: settled,
        remedies: ranked(compiled, settled, conflict, style, effort),
        next: 0,
      });
    }
    net = null;
    const top = stack[stack.length - 1];
    if (top === undefined) return null;
    const remedy = top.remedies[top.next];
    if (remedy === undefined) {
      stack.pop();
      continue;
    }
    top.next += 1;
    const trial = top.next === top.remedies.length ? top.net : top.net.copy();
    const fits = trial.add(remedy.from.node, remedy.to.node, gapOf(remedy));
    if (fits && propagate(compiled, trial, effort.weights)) {
      net = trial;
      continue;
    }
    blame(effort.weights, remedy.first, remedy.second);
    effort.fails -= 1;
    if (effort.fails <= 0) return null;
  }
}

function gapOf(remedy: Remedy): number {
  return remedy.from.offset + remedy.gap - remedy.to.offset;
}

function blame(weights: Float64Array, first: number, second: number): void {
  if (first >= 0) weights[first] = (weights[first] as number) + 1;
  if (second >= 0) weights[second] = (weights[second] as number) + 1;
}

/** How much room a remedy leaves: negative where it is impossible. */
function slack(net: TimeNet, remedy: Remedy): number {
  return -lowerBound(net, remedy.to, remedy.from) - remedy.gap;
}

/** Fixes every order of which only one way is left, and tightens spans; false at a contradiction. */
export function propagate(compiled: Compiled, net: TimeNet, weights: Float64Array): boolean {
  const { items } = compiled;
  let changed = true;
  while (changed) {
    changed = false;
    for (const pair of compiled.pairs) {
      const a = items[pair.a];
      const b = items[pair.b];
      if (a === undefined || b === undefined) continue;
      if (lowerBound(net, a.end, b.start) >= pair.gapAB) continue;
      if (lowerBound(net, b.end, a.start) >= pair.gapBA) continue;
      const canAB = -lowerBound(net, b.start, a.end) >= pair.gapAB;
      const canBA = -lowerBound(net, a.start, b.end) >= pair.gapBA;
      if (canAB && canBA) continue;
      changed = true;
      const fixed = canAB
        ? net.add(a.end.node, b.start.node, a.end.offset + pair.gapAB - b.start.offset)
        : canBA && net.add(b.end.node, a.start.node, b.end.offset + pair.gapBA - a.start.offset);
      if (!fixed) {
        blame(weights, pair.a, pair.b);
        return false;
      }
    }
    for (const limit of compiled.spans) {
      const least = limit.spans.map((span) => Math.max(0, lowerBound(net, span.from, span.to)));
      const spare = limit.limit - least.reduce((sum, span) => sum + span, 0);
      if (spare < 0) return false;
      for (const [index, span] of limit.spans.entries()) {
        const most = (least[index] as number) + spare;
        if (-lowerBound(net, span.to, span.from) <= most) continue;
        changed = true;
        const { from, to } = span;
        if (!net.add(to.node, from.node, to.offset - most - from.offset)) return false;
      }
    }
  }
  return true;
}

function pickConflict(
  conflicts: readonly Conflict[],
  net: TimeNet,
  style: Style,
  effort: Effort,
): Conflict {
  const key = (conflict: Conflict): number => {
    if (style.pick === 'time') return conflict.at;
    if (style.pick === 'slack') {
      return conflict.remedies.reduce((sum, remedy) => sum + Math.max(0, slack(net, remedy)), 0);
    }
    const heaviest = conflict.remedies.reduce(
      (most, { first, second }) =>
        Math.max(most, (effort.weights[first] ?? 0) + (effort.weights[second] ?? 0)),
      0,
    );
    return conflict.at - heaviest * 1e6;
  };
  return conflicts.reduce(
    (best, conflict) => {
      const value = key(conflict);
      return value < best.value ? { conflict, value } : best;
    },
    { conflict: conflicts[0] as Conflict, value: key(conflicts[0] as Conflict) },
  ).conflict;
}

/** The possible remedies of a conflict, the most promising first. */
function ranked(
  compiled: Compiled,
  net: TimeNet,
  conflict: Conflict,
  style: Style,
  effort: Effort,
): Remedy[] {
  const sink: Moment = { node: compiled.sink, offset: 0 };
  return conflict.remedies
    .filter((remedy) => slack(net, remedy) >= 0)
    .map((remedy, index) => ({ remedy, index, score: score(remedy) }))
    .sort((a, b) => a.score - b.score || a.index - b.index)
    .map((entry) => entry.remedy);

  function score(remedy: Remedy): number {
    const room = slack(net, remedy);
    const from = earliest(net, remedy.from);
    const chance = style.noise * effort.random();
    const first = compiled.items[remedy.first];
    const second = compiled.items[remedy.second];
    const since = first === undefined ? from : earliest(net, first.start);
    switch (style.order) {
      case 'wrap': {
        const wrap = from + remedy.gap + lowerBound(net, remedy.to, sink);
        return Math.max(wrap, earliest(net, sink)) + chance + since * 1e-3 - room * 1e-6;
      }
      case 'early':
        return since + chance - room * 1e-6;
      case 'slack':
        return -room + chance + since * 1e-6;
      case 'group':
        return (first?.group ?? 0) > (second?.group ?? 0) ? 1e6 + since : since + chance;
    }
  }
}
