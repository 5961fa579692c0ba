/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import type { Activity } from './activity';
import { lower, upper } from './atoms';
import type { Model } from './model';
import type { Phases } from './phases';

/**
 * What the search decides next: the open variable that was most active in conflicts, with the value that it
 * has in the best plan (phase saving: Pipatsrisawat & Darwiche, SAT 2007; towards a solution: Beck, JAIR 29,
 * 2007).
 *
 * Leftwards, where no event can be too early, a start is only asked to be no later than in the best plan.
 * When all are, and all active orders are decided, the starts are fixed from the left, each as early as it
 * can be: so a dive shortens the whole plan and not only what it has to.
 *
 * Invariant: every variable that was taken from the heap since the last `putBack` stands in `taken`.
 */
export class Branching {
  /** No event of the goal costs more for being earlier. */
  leftwards = false;
  private readonly taken: Int32Array;
  private takenSize = 0;
  /** Orders before this one are decided or free, as long as nothing is taken back. */
  private kept = 0;

  constructor(
    private readonly model: Model,
    private readonly activity: Activity,
    private readonly phases: Phases,
    private readonly decide: (b: number, v: number) => void,
  ) {
    this.taken = new Int32Array(2 * model.engine.variables + 16);
  }

  /** Decides something that is open. False if everything is fixed. */
  branch(hasPlan: boolean): boolean {
    const active = hasPlan ? this.mostActive() : -1;
    if (active >= 0) this.towards(active, this.valueOf(active));
    else {
      const start = !hasPlan || this.leftwards ? this.earliest() : -1;
      if (start >= 0) this.towards(start, this.leftValue(start, hasPlan));
      else {
        const open = this.anyOpen();
        if (open < 0) return false;
        this.towards(open, this.valueOf(open));
      }
    }
    return true;
  }

  /** Everything taken can be decided again: something was taken back. */
  putBack(): void {
    for (let at = 0; at < this.takenSize; at += 1) this.activity.put(this.taken[at]!);
    this.takenSize = 0;
    this.kept = 0;
  }

  /** Decides one more order as the best plan has it, among pairs that are not both free. */
  keepOrder(free: Uint8Array): boolean {
    const { pairs, firstOrder } = this.model;
    const { bound } = this.model.engine.trail;
    for (let k = this.kept; k < pairs.length; k += 1) {
      const order = firstOrder + k;
      if (bound[2 * order]! + bound[2 * order + 1]! === 0) continue;
      const { first, second } = pairs[k]!;
      if (free[first] === 1 || free[second] === 1) continue;
      this.kept = k + 1;
      if (this.phases.value[order] === 1) this.decide(lower(order), 1);
      else this.decide(upper(order), 0);
      return true;
    }
    this.kept = pairs.length;
    return false;
  }

  private mostActive(): number {
    const { trail } = this.model.engine;
    const { phases } = this;
    for (;;) {
      const variable = this.activity.take();
      if (variable < 0) return -1;
      this.taken[this.takenSize] = variable;
      this.takenSize += 1;
      if (this.takenSize === this.taken.length) this.putBack();
      const high = trail.high(variable);
      if (trail.low(variable) === high) continue;
      // Early enough; how early is seen at the end.
      if (this.leftwards && variable < this.model.firstOrder && phases.isAtLeast(variable, high))
        continue;
      return variable;
    }
  }

  private anyOpen(): number {
    const { trail } = this.model.engine;
    for (const variable of this.model.chosen) {
      if (trail.low(variable) < trail.high(variable)) return variable;
    }
    return -1;
  }

  /** The open start that can be earliest. */
  private earliest(): number {
    const { bound } = this.model.engine.trail;
    let found = -1;
    let least = 0;
    let latest = 0;
    for (const variable of this.model.start) {
      const low = bound[2 * variable]!;
      const high = -bound[2 * variable + 1]!;
      if (low === high || (found >= 0 && (low > least || (low === least && high >= latest))))
        continue;
      found = variable;
      least = low;
      latest = high;
    }
    return found;
  }

  /** The value to try first: of the best plan, else as early or as its tasks can begin. */
  private valueOf(variable: number): number {
    const { firstOrder, pairs, start, engine } = this.model;
    const { trail } = engine;
    if (this.phases.has[variable] === 1) return this.phases.value[variable]!;
    const pair = variable < firstOrder ? undefined : pairs[variable - firstOrder];
    if (pair === undefined) return trail.low(variable);
    return trail.low(start[pair.first]!) <= trail.low(start[pair.second]!) ? 1 : 0;
  }

  private leftValue(start: number, hasPlan: boolean): number {
    return hasPlan ? this.model.engine.trail.low(start) : this.valueOf(start);
  }

  /** Fixes the variable at a value or as near to it as it can be; above its low, first from above. */
  private towards(variable: number, value: number): void {
    const { trail } = this.model.engine;
    const low = trail.low(variable);
    const high = trail.high(variable);
    if (value <= low) this.decide(upper(variable), -low);
    else if (value >= high) this.decide(lower(variable), high);
    else {
      this.decide(upper(variable), -value);
      // Still open from below; of a start that is seen at the end.
      if (!this.leftwards || variable >= this.model.firstOrder) this.activity.put(variable);
    }
  }
}
