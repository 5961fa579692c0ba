/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import { lower, upper } from './atoms';
import type { Propagator } from './engine';
import type { Occupation } from './occupation';
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
  readonly wakes: Int32Array;
  readonly turn = 1;
  private readonly sides: readonly Side[];
  /** For each place in `wakes`: the side, and the task that may start later or whose order is new. */
  private readonly wakesSide: Uint8Array;
  private readonly wakesTask: Int32Array;
  private readonly wakesMoved: Uint8Array;

  /** @param orderOf the order bound by which its second argument is before its first (see `ordersOf`) */
  constructor(
    readonly name: string,
    occupations: readonly Occupation[],
    orderOf: (after: number, before: number) => number,
  ) {
    const count = occupations.length;
    this.sides = [true, false].map((forwards) => ({
      view: new UnaryView(occupations, forwards),
      order: new Int32Array(count * count).fill(UNKNOWN),
      // Everything is looked at once.
      fresh: new Uint8Array(count).fill(1),
      moved: new Uint8Array(count),
      movedList: new Int32Array(count),
      movedSize: 0,
      isAnyFresh: true,
    }));
    const most = 2 * count * count;
    const wakes = new Int32Array(most);
    this.wakesSide = new Uint8Array(most);
    this.wakesTask = new Int32Array(most);
    this.wakesMoved = new Uint8Array(most);
    let size = 0;
    const wake = (bound: number, side: number, task: number, moved: number): void => {
      wakes[size] = bound;
      this.wakesSide[size] = side;
      this.wakesTask[size] = task;
      this.wakesMoved[size] = moved;
      size += 1;
    };
    occupations.forEach(({ start, end }, task) => {
      wake(lower(start), 0, task, 1);
      wake(upper(end), 1, task, 1);
    });
    for (let task = 0; task < count; task += 1) {
      for (let other = 0; other < count; other += 1) {
        if (task === other) continue;
        const bound = orderOf(task, other);
        this.sides[0]!.order[task * count + other] = bound;
        this.sides[1]!.order[other * count + task] = bound;
        if (bound < 0) continue;
        wake(bound, 0, task, 0);
        wake(bound, 1, other, 0);
      }
    }
    this.wakes = wakes.subarray(0, size);
  }

  woken(place: number): void {
    const side = this.sides[this.wakesSide[place]!]!;
    const task = this.wakesTask[place]!;
    if (this.wakesMoved[place] === 0) {
      side.fresh[task] = 1;
      side.isAnyFresh = true;
    } else if (side.moved[task] === 0) {
      side.moved[task] = 1;
      side.movedList[side.movedSize] = task;
      side.movedSize += 1;
    }
  }

  propagate(trail: Trail): boolean {
    for (const side of this.sides) {
      if (!side.isAnyFresh && side.movedSize === 0) continue;
      side.view.read(trail);
      if (!this.push(trail, side)) return false;
      side.fresh.fill(0);
      side.isAnyFresh = false;
      for (let at = 0; at < side.movedSize; at += 1) side.moved[side.movedList[at]!] = 0;
      side.movedSize = 0;
    }
    return true;
  }

  /** Whether anything that comes before the task has changed since it was looked at. */
  private concerns(trail: Trail, side: Side, task: number): boolean {
    const { order, fresh, movedList, movedSize } = side;
    if (fresh[task] === 1) return true;
    const row = task * side.view.count;
    for (let at = 0; at < movedSize; at += 1) {
      if (isBefore(trail, order[row + movedList[at]!]!)) return true;
    }
    return false;
  }

  private push(trail: Trail, side: Side): boolean {
    const { view, order } = side;
    const { count, early, late, length, byEarly } = view;
    for (let place = count - 1; place > 0; place -= 1) {
      const task = byEarly[place]!;
      // A start that is fixed cannot be pushed; that those before it do not fit is an overload.
      if (early[task]! + length[task]! >= late[task]!) continue;
      if (!this.concerns(trail, side, task)) continue;
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

/** Forwards or backwards in time. */
interface Side {
  readonly view: UnaryView;
  /** `[pushed * count + other]`: the order bound that says that `other` is before. */
  readonly order: Int32Array;
  /** Tasks of which an order is new, and tasks that start later, since the last fixpoint. */
  readonly fresh: Uint8Array;
  readonly moved: Uint8Array;
  /** The tasks marked in `moved`, one after another. */
  readonly movedList: Int32Array;
  movedSize: number;
  isAnyFresh: boolean;
}

/** An order's lower bound says so at 1, its upper bound (negated) at 0. */
function isBefore({ bound }: Trail, order: number): boolean {
  if (order === ALWAYS) return true;
  return order >= 0 && bound[order]! >= 1 - (order & 1);
}
