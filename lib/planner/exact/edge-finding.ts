/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import type { Propagator } from './engine';
import { boundsOf, type Occupation } from './occupation';
import type { Trail } from './trail';
import { ThetaLambdaTree } from './theta-lambda-tree';
import { UnaryView } from './unary-view';

/**
 * Overload checking and edge finding on a unary resource: if the tasks that must be over by L, with one more,
 * do not fit before L, then that one comes after them all (Carlier & Pinson, Management Science 35, 1989; by
 * Θ-Λ-trees in n log n as in Vilím, CP 2004; explained as in Vilím, CPAIOR 2005).
 *
 * Invariant of an explanation: the named tasks start from E and are over by L, the pushed task starts from E,
 * and together they are longer than L - E; those that give the new start are also named with their starts.
 * What the sum exceeds by is used to leave out short tasks, then to widen L.
 */
export class EdgeFinding implements Propagator {
  readonly wakes: readonly number[];
  readonly turn = 2;
  private readonly views: readonly UnaryView[];
  private readonly byLate: Int32Array;
  private readonly place: Int32Array;
  private readonly tree: ThetaLambdaTree;
  private readonly dropped: Uint8Array;

  constructor(
    readonly name: string,
    occupations: readonly Occupation[],
  ) {
    this.wakes = boundsOf(occupations);
    this.views = [new UnaryView(occupations, true), new UnaryView(occupations, false)];
    this.byLate = Int32Array.from(occupations, (_, index) => index);
    this.place = new Int32Array(occupations.length);
    this.tree = new ThetaLambdaTree(occupations.length);
    this.dropped = new Uint8Array(occupations.length);
  }

  propagate(trail: Trail): boolean {
    for (const view of this.views) {
      view.read(trail);
      if (!this.find(trail, view)) return false;
    }
    return true;
  }

  private find(trail: Trail, view: UnaryView): boolean {
    const { count, early, late, length, byEarly } = view;
    const { byLate, place, tree } = this;
    for (let index = 1; index < count; index += 1) {
      const task = byLate[index]!;
      let at = index - 1;
      while (at >= 0 && late[byLate[at]!]! > late[task]!) {
        byLate[at + 1] = byLate[at]!;
        at -= 1;
      }
      byLate[at + 1] = task;
    }
    for (let at = 0; at < count; at += 1) place[byEarly[at]!] = at;
    tree.clear();
    for (let index = 0; index < count; index += 1) {
      const task = byLate[index]!;
      tree.add(place[task]!, early[task]!, length[task]!);
      if (tree.thetaEnd > late[task]!) return this.overload(trail, view, late[task]!);
    }
    tree.beginLambda();
    for (let index = count - 1; index > 0; index -= 1) {
      const last = byLate[index]!;
      tree.toLambda(place[last]!);
      // A start that is fixed cannot be pushed.
      if (early[last]! + length[last]! >= late[last]!) tree.drop(place[last]!);
      const limit = late[byLate[index - 1]!]!;
      while (tree.lambdaEnd > limit && tree.lambdaPlace >= 0) {
        const at = tree.lambdaPlace;
        const task = byEarly[at]!;
        const start = tree.thetaEnd;
        if (late[task]! > limit && !view.isEarly(trail, task, start)) {
          if (!this.pushAfter(trail, view, task, limit, start)) return false;
        }
        tree.drop(at);
      }
    }
    return true;
  }

  private overload(trail: Trail, view: UnaryView, limit: number): boolean {
    const { early, late, length, byEarly, count } = view;
    let sum = 0;
    let from = count - 1;
    for (; from >= 0; from -= 1) {
      const task = byEarly[from]!;
      if (late[task]! > limit) continue;
      sum += length[task]!;
      if (early[task]! + sum > limit) break;
    }
    const begin = early[byEarly[from]!]!;
    const left = this.drop(view, from, count, limit, begin + sum - limit - 1);
    const wider = left >> 1;
    trail.because();
    for (let at = from; at < count; at += 1) {
      const task = byEarly[at]!;
      if (late[task]! > limit || this.dropped[task] === 1) continue;
      view.sayEarly(trail, task, begin - (left - wider));
      view.sayLate(trail, task, limit + wider);
    }
    return trail.failBecause();
  }

  /** Marks tasks at positions `from` to `to` that are short enough to drop; returns the slack left. */
  private drop(view: UnaryView, from: number, to: number, limit: number, slack: number): number {
    const { late, length, byEarly, count } = view;
    let left = slack;
    for (let at = from; at < count; at += 1) {
      const task = byEarly[at]!;
      const short = at < to && late[task]! <= limit && length[task]! <= left;
      this.dropped[task] = short ? 1 : 0;
      if (short) left -= length[task]!;
    }
    return left;
  }

  /** `pushed` comes after those due by `limit`, so it starts no earlier than `start`. */
  private pushAfter(
    trail: Trail,
    view: UnaryView,
    pushed: number,
    limit: number,
    start: number,
  ): boolean {
    const { early, late, length, byEarly, count } = view;
    // The fewest last tasks that give the start, and the fewest that with `pushed` do not fit.
    let sum = 0;
    let giver = -1;
    let shower = -1;
    let begin = 0;
    let slack = 0;
    for (let at = count - 1; at >= 0 && (giver < 0 || shower < 0); at -= 1) {
      const task = byEarly[at]!;
      if (late[task]! > limit) continue;
      sum += length[task]!;
      if (giver < 0 && early[task]! + sum >= start) giver = at;
      const from = Math.min(early[task]!, early[pushed]!);
      if (shower < 0 && from + sum + length[pushed]! > limit) {
        shower = at;
        begin = from;
        slack = from + sum + length[pushed]! - limit - 1;
      }
    }
    if (giver < shower) {
      // All of the givers are needed; they show it as well.
      shower = giver;
      const from = Math.min(early[byEarly[giver]!]!, early[pushed]!);
      begin = from;
      let all = 0;
      for (let at = giver; at < count; at += 1) {
        const task = byEarly[at]!;
        if (late[task]! <= limit) all += length[task]!;
      }
      slack = from + all + length[pushed]! - limit - 1;
      if (slack < 0) return true;
    }
    const left = this.drop(view, shower, giver, limit, slack);
    const given = early[byEarly[giver]!]!;
    trail.because();
    for (let at = shower; at < count; at += 1) {
      const task = byEarly[at]!;
      if (late[task]! > limit || this.dropped[task] === 1) continue;
      view.sayEarly(trail, task, at >= giver ? given : begin);
      view.sayLate(trail, task, limit + left);
    }
    view.sayEarly(trail, pushed, begin);
    return view.push(trail, pushed, start);
  }
}
