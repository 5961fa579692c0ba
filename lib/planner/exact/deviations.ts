/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import type { Propagator } from './engine';
import type { Trail } from './trail';

/** `weight × max(0, bound + offset)`: what a bound that has risen so far costs at least. */
export interface CostTerm {
  readonly bound: number;
  readonly offset: number;
  readonly weight: number;
}

/**
 * `total ≥ Σ weight × max(0, bound + offset)` with weights above 0: a weighted sum of lateness (lower
 * bounds) and earliness (upper bounds). Propagated to the bounds as a linear inequality, explained as in
 * pseudo-Boolean reasoning: terms are left out or named at less than they are, as far as the slack goes.
 *
 * Invariant: at a fixpoint `low(total)` is at least the sum of the terms' least costs, and no term alone can
 * cost more than what the others leave of `high(total)`.
 */
export class Deviations implements Propagator {
  readonly wakes: readonly number[];
  readonly turn = 1;
  private readonly cost: Float64Array;

  constructor(
    readonly name: string,
    private readonly total: number,
    private readonly terms: readonly CostTerm[],
  ) {
    this.wakes = [...new Set([...terms.map(({ bound }) => bound), 2 * total + 1])];
    this.cost = new Float64Array(terms.length);
  }

  propagate(trail: Trail): boolean {
    const { bound } = trail;
    const { cost, terms, total } = this;
    let sum = 0;
    for (let index = 0; index < terms.length; index += 1) {
      const term = terms[index]!;
      cost[index] = term.weight * Math.max(0, bound[term.bound]! + term.offset);
      sum += cost[index]!;
    }
    if (sum > bound[2 * total]!) {
      const reach = Math.min(sum, 1 - bound[2 * total + 1]!);
      trail.because();
      this.explain(trail, -1, sum - reach);
      if (!trail.raise(2 * total, reach, trail.said())) return false;
    }
    const room = -bound[2 * total + 1]! - sum;
    for (let index = 0; index < terms.length; index += 1) {
      const term = terms[index]!;
      const most = Math.floor((room + cost[index]!) / term.weight);
      const against = term.offset - most;
      // The bound may not go above `most - offset`.
      if (against <= bound[term.bound ^ 1]!) continue;
      trail.because();
      trail.say(2 * total + 1, bound[2 * total + 1]!);
      const slack = term.weight * (most + 1) - (room + cost[index]!) - 1;
      this.explain(trail, index, slack);
      if (!trail.raise(term.bound ^ 1, against, trail.said())) return false;
    }
    return true;
  }

  /** Names what makes the sum of all terms but `except`, less at most `slack`. */
  private explain(trail: Trail, except: number, slack: number): void {
    const { terms, cost } = this;
    let left = slack;
    for (let index = 0; index < terms.length; index += 1) {
      if (index === except || cost[index] === 0) continue;
      const term = terms[index]!;
      const root = Math.max(0, trail.rootBound[term.bound]! + term.offset) * term.weight;
      if (cost[index]! - root <= left) {
        left -= cost[index]! - root;
        continue;
      }
      const less = Math.floor(left / term.weight);
      left -= less * term.weight;
      trail.say(term.bound, trail.bound[term.bound]! - less);
    }
  }
}
