/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import { lower, upper } from './atoms';
import type { Propagator } from './engine';
import type { Trail } from './trail';

/**
 * A variable that takes only the values `origin + k × step`: bounds between two of them move on to the next.
 * The reason is the weakest bound that lies above the point before.
 */
export class Grid implements Propagator {
  readonly wakes: readonly number[];
  readonly turn = 0;

  constructor(
    readonly name: string,
    private readonly variable: number,
    private readonly step: number,
    private readonly origin: number,
  ) {
    this.wakes = [lower(variable), upper(variable)];
  }

  propagate(trail: Trail): boolean {
    const { step, origin } = this;
    for (const b of this.wakes) {
      // Upper bounds are negated, and so is their grid.
      const from = b === lower(this.variable) ? origin : -origin;
      const next = from + step * Math.ceil((trail.bound[b]! - from) / step);
      if (next === trail.bound[b]!) continue;
      trail.because();
      trail.say(b, next - step + 1);
      if (!trail.raise(b, next, trail.said())) return false;
    }
    return true;
  }
}
