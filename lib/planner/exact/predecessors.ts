/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import type { Propagator } from './engine';
import { boundsOf, type Occupation } from './occupation';
import { ALWAYS, UNKNOWN } from './pairs';
import type { Trail } from './trail';
import { UnaryView } from './unary-view';

/**
 * On a unary resource a task starts after all that is known to come before it, one after the other: no
 * earlier than E + their lengths, for those that start from E (the pushing half of detectable precedences,
 * Vilím, CPAIOR 2004; which task is before which is said by the orders of pairs, so that decisions count too).
 *
 * Invariant of an explanation: each named task is before the pushed one by its order and starts from E, and
 * their lengths give the new start.
 */
export class Predecessors implements Propagator {
  readonly wakes: readonly number[];
  readonly turn = 2;
  private readonly views: readonly UnaryView[];
  /** `[view][pushed * count + other]`: the order bound that says that `other` is before. */
  private readonly order: readonly Int32Array[];

  /** @param orderOf the order bound by which its second argument is before its first (see `ordersOf`) */
  constructor(
    readonly name: string,
    occupations: readonly Occupation[],
    orderOf: (after: number, before: number) => number,
  ) {
    const count = occupations.length;
    const forwards = new Int32Array(count * count).fill(UNKNOWN);
    const backwards = new Int32Array(count * count).fill(UNKNOWN);
    const orders: number[] = [];
    for (let task = 0; task < count; task += 1) {
      for (let other = 0; other < count; other += 1) {
        if (task === other) continue;
        const bound = orderOf(task, other);
        forwards[task * count + other] = bound;
        backwards[other * count + task] = bound;
        if (bound >= 0) orders.push(bound);
      }
    }
    this.order = [forwards, backwards];
    this.views = [new UnaryView(occupations, true), new UnaryView(occupations, false)];
    this.wakes = [...new Set([...boundsOf(occupations), ...orders])];
  }

  propagate(trail: Trail): boolean {
    for (const [index, view] of this.views.entries()) {
      view.read(trail);
      if (!this.push(trail, view, this.order[index]!)) return false;
    }
    return true;
  }

  private push(trail: Trail, view: UnaryView, order: Int32Array): boolean {
    const { count, early, late, length, byEarly } = view;
    for (let place = count - 1; place > 0; place -= 1) {
      const task = byEarly[place]!;
      // A start that is fixed cannot be pushed; that those before it do not fit is an overload.
      if (early[task]! + length[task]! >= late[task]!) continue;
      let sum = 0;
      let several = 0;
      let best = early[task]!;
      let from = -1;
      const row = task * count;
      // By their differences, those before it can start earlier than it can.
      for (let at = place - 1; at >= 0; at -= 1) {
        const other = byEarly[at]!;
        if (!isBefore(trail, order[row + other]!)) continue;
        sum += length[other]!;
        several += 1;
        // One alone is pushed by its own difference.
        if (several > 1 && early[other]! + sum > best) {
          best = early[other]! + sum;
          from = at;
        }
      }
      if (from < 0 || view.isEarly(trail, task, best)) continue;
      const begin = early[byEarly[from]!]!;
      trail.because();
      for (let at = from; at < place; at += 1) {
        const other = byEarly[at]!;
        const bound = order[row + other]!;
        if (!isBefore(trail, bound)) continue;
        view.sayEarly(trail, other, begin);
        if (bound >= 0) trail.say(bound, 1 - (bound & 1));
      }
      if (!view.push(trail, task, best)) return false;
    }
    return true;
  }
}

/** An order's lower bound says so at 1, its upper bound (negated) at 0. */
function isBefore({ bound }: Trail, order: number): boolean {
  if (order === ALWAYS) return true;
  return order >= 0 && bound[order]! >= 1 - (order & 1);
}
