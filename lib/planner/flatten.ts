import { lowerBound, type Compiled, type Moment } from '#lib/planner/compiled';
import { conflictsOf, earliest, type Conflict, type Remedy } from '#lib/planner/conflicts';
import { Contradiction, propagate } from '#lib/planner/propagate';
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
  /** Nets that are no longer needed, to be written over: making new ones is what takes the time. */
  readonly spare: TimeNet[];
}

/** More choices for each item than any try needs, unless two rules push each other on and on. */
const CHOICES_PER_ITEM = 8;

interface Choice {
  readonly net: TimeNet;
  /** Pairs of which the order is still open; those fixed once stay fixed further down. */
  readonly open: readonly number[];
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
  const most = CHOICES_PER_ITEM * compiled.items.length;
  let net: TimeNet | null = start.copy(effort.spare.pop());
  let open = propagate(compiled, net, compiled.allPairs);
  if (open instanceof Contradiction) {
    effort.spare.push(net);
    return null;
  }
  for (;;) {
    if (net !== null) {
      const conflicts = conflictsOf(compiled, net, open);
      if (conflicts.length === 0 || stack.length > most) {
        release(stack, effort);
        return conflicts.length === 0 ? net : null;
      }
      const conflict = pickConflict(conflicts, net, style, effort);
      const remedies = ranked(compiled, net, conflict, style, effort);
      if (remedies.length > 0) {
        stack.push({ net, open, remedies, next: 0 });
      } else {
        effort.spare.push(net);
        for (const { first, second } of conflict.remedies) blame(effort.weights, first, second);
        effort.fails -= 1;
      }
    }
    if (effort.fails <= 0) {
      release(stack, effort);
      return null;
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
    const trial = top.next === top.remedies.length ? top.net : top.net.copy(effort.spare.pop());
    if (trial.add(remedy.from.node, remedy.to.node, gapOf(remedy))) {
      const left = propagate(compiled, trial, top.open);
      if (!(left instanceof Contradiction)) {
        net = trial;
        open = left;
        continue;
      }
      blame(effort.weights, left.first, left.second);
    }
    effort.spare.push(trial);
    blame(effort.weights, remedy.first, remedy.second);
    effort.fails -= 1;
  }
}

/** Gives back the nets of choices with ways left; where none is left, the last way wrote over it. */
function release(stack: readonly Choice[], effort: Effort): void {
  for (const choice of stack) {
    if (choice.next < choice.remedies.length) effort.spare.push(choice.net);
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
