/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import { packByBound, type AtomList, type ListsByBound } from './atoms';
import { BY_ARC, type Trail } from './trail';

/** `to ≥ from + weight` between variables, always or only where the atom `(ifBound, ifValue)` holds. */
export interface Difference {
  readonly from: number;
  readonly to: number;
  readonly weight: number;
  readonly ifBound: number;
  readonly ifValue: number;
}

/** A difference that always holds: `to ≥ from + weight`. */
export function always(from: number, to: number, weight: number): Difference {
  return { from, to, weight, ifBound: -1, ifValue: 0 };
}

/**
 * Difference constraints, plain and under a condition, propagated to their fixpoint as arcs between bounds
 * (generalized precedences as in Schutt, Feydy, Stuckey, Wallace, J. Scheduling 16, 2013; the shortest-path
 * propagation itself is Bellman 1958).
 *
 * Each difference is two arcs: lower bounds push forwards, upper bounds push back. Invariant at a fixpoint:
 * for every arc whose condition holds, `bound[to] >= bound[from] + weight`; and a condition is false where
 * its arc would empty a domain. The reason of a push is read off the arc when it is asked for, so that a
 * weaker atom gets a weaker reason.
 */
export class Differences {
  private readonly out: ListsByBound;
  private readonly when: ListsByBound;
  private readonly from: Int32Array;
  private readonly to: Int32Array;
  private readonly weight: Int32Array;
  private readonly ifBound: Int32Array;
  private readonly ifValue: Int32Array;

  constructor(
    private readonly trail: Trail,
    differences: readonly Difference[],
  ) {
    const count = 2 * differences.length;
    this.from = new Int32Array(count);
    this.to = new Int32Array(count);
    this.weight = new Int32Array(count);
    this.ifBound = new Int32Array(count);
    this.ifValue = new Int32Array(count);
    differences.forEach((difference, index) => {
      const { from, to, weight, ifBound, ifValue } = difference;
      this.set(2 * index, 2 * from, 2 * to, weight, ifBound, ifValue);
      this.set(2 * index + 1, 2 * to + 1, 2 * from + 1, weight, ifBound, ifValue);
    });
    const arcs = this.from.map((_, arc) => arc);
    const conditional = arcs.filter((arc) => this.ifBound[arc]! >= 0);
    const conditions = conditional.map((arc) => this.ifBound[arc]!);
    this.out = packByBound(trail.bound.length, this.from, arcs);
    this.when = packByBound(trail.bound.length, conditions, conditional);
  }

  private set(arc: number, from: number, to: number, weight: number, ifB: number, ifV: number) {
    this.from[arc] = from;
    this.to[arc] = to;
    this.weight[arc] = weight;
    this.ifBound[arc] = ifB;
    this.ifValue[arc] = ifV;
  }

  /** Bound `b` rose: follows its arcs, and those that wait for it. False on a conflict. */
  follow(b: number): boolean {
    const { trail, out, when, to, weight, ifBound, ifValue } = this;
    const { bound } = trail;
    const value = bound[b]!;
    const { items } = out;
    for (let at = out.start[b]!, end = out.start[b + 1]!; at < end; at += 1) {
      const arc = items[at]!;
      const target = to[arc]!;
      const pushed = value + weight[arc]!;
      const condition = ifBound[arc]!;
      if (pushed <= bound[target]!) continue;
      if (condition < 0 || bound[condition]! >= ifValue[arc]!) {
        if (!trail.raise(target, pushed, (arc << 2) | BY_ARC)) return false;
      } else if (pushed + bound[target ^ 1]! > 0) {
        if (!this.forbid(arc)) return false;
      }
    }
    for (let at = when.start[b]!, end = when.start[b + 1]!; at < end; at += 1) {
      const arc = when.items[at]!;
      if (value < ifValue[arc]!) continue;
      const pushed = bound[this.from[arc]!]! + weight[arc]!;
      if (pushed <= bound[to[arc]!]!) continue;
      if (!trail.raise(to[arc]!, pushed, (arc << 2) | BY_ARC)) return false;
    }
    return true;
  }

  /** The arc would empty its target's domain, so its condition is false. */
  private forbid(arc: number): boolean {
    const { trail } = this;
    const not = this.ifBound[arc]! ^ 1;
    const value = 1 - this.ifValue[arc]!;
    if (trail.bound[not]! >= value) return true;
    const against = this.to[arc]! ^ 1;
    const limit = trail.bound[against]!;
    trail.because();
    trail.say(against, limit);
    trail.say(this.from[arc]!, 1 - limit - this.weight[arc]!);
    return trail.raise(not, value, trail.said());
  }

  /** Why `arc` raised its target to at least `value`. */
  explain(arc: number, value: number, into: AtomList): void {
    into.push(this.from[arc]!, value - this.weight[arc]!);
    const condition = this.ifBound[arc]!;
    if (condition >= 0) into.push(condition, this.ifValue[arc]!);
  }
}
