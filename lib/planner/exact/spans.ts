/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import { lower, upper } from './atoms';
import type { Propagator } from './engine';
import type { Atom } from './implications';
import type { Trail } from './trail';

/**
 * `cost ≥ to − from + offset` where all conditions hold: a span between two events that both may move, as a
 * linear inequality over three variables, propagated to the bounds.
 *
 * Invariant at a fixpoint, where the conditions hold: `low(cost) ≥ low(to) − high(from) + offset`, and the same
 * solved for `to` and for `from`. Each explanation names the conditions and the two bounds that give the third,
 * no stronger than needed.
 */
export class Spans implements Propagator {
  readonly wakes: readonly number[];
  readonly turn = 0;

  constructor(
    readonly name: string,
    private readonly cost: number,
    private readonly from: number,
    private readonly to: number,
    private readonly offset: number,
    private readonly conditions: readonly Atom[],
  ) {
    const own = [lower(to), upper(from), upper(cost)];
    this.wakes = [...new Set([...own, ...conditions.map(([bound]) => bound)])];
  }

  propagate(trail: Trail): boolean {
    const { bound } = trail;
    const { cost, from, to, offset } = this;
    let open: Atom | null = null;
    for (const atom of this.conditions) {
      if (bound[atom[0]]! >= atom[1]) continue;
      if (open !== null || bound[atom[0] ^ 1]! >= 1 - atom[1]) return true;
      open = atom;
    }
    const least = bound[lower(to)]! + bound[upper(from)]! + offset;
    const most = -bound[upper(cost)]!;
    if (open !== null) {
      if (least <= most) return true;
      this.because(trail, open);
      trail.say(upper(cost), -most);
      trail.say(lower(to), bound[lower(to)]!);
      trail.say(upper(from), most + 1 - offset - bound[lower(to)]!);
      return trail.raise(open[0] ^ 1, 1 - open[1], trail.said());
    }
    if (least > bound[lower(cost)]!) {
      const reach = Math.min(least, most + 1);
      this.because(trail, null);
      trail.say(lower(to), bound[lower(to)]!);
      trail.say(upper(from), reach - offset - bound[lower(to)]!);
      if (!trail.raise(lower(cost), reach, trail.said())) return false;
    }
    // to ≤ from + most − offset, as upper bounds (negated) and as lower bounds.
    const latest = bound[upper(from)]! - most + offset;
    if (latest > bound[upper(to)]!) {
      this.because(trail, null);
      trail.say(upper(cost), -most);
      trail.say(upper(from), bound[upper(from)]!);
      if (!trail.raise(upper(to), latest, trail.said())) return false;
    }
    const earliest = bound[lower(to)]! - most + offset;
    if (earliest > bound[lower(from)]!) {
      this.because(trail, null);
      trail.say(upper(cost), -most);
      trail.say(lower(to), bound[lower(to)]!);
      if (!trail.raise(lower(from), earliest, trail.said())) return false;
    }
    return true;
  }

  private because(trail: Trail, except: Atom | null): void {
    trail.because();
    for (const atom of this.conditions) if (atom !== except) trail.say(atom[0], atom[1]);
  }
}
