/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import { lower, upper } from './atoms';
import type { Moment } from './draft';
import type { Propagator } from './engine';
import type { Atom } from './implications';
import type { RowCost } from './problem';
import type { Trail } from './trail';

/** A user of a row as variables: when it is there, from when to when, of which kind, and what it costs. */
export interface RowMember {
  readonly there: readonly Atom[];
  readonly begin: Moment;
  readonly finish: Moment;
  /** It is at least so long. */
  readonly length: number;
  readonly kind: number;
  readonly cost: number;
}

/**
 * What each user of a row costs by what stands before it: the least over all that may still be its neighbour.
 *
 * A user of its own kind may be the one it follows if no other kind is known to stand between; one of another
 * kind if nothing of a kind not its own is; it may be the first of all if nothing is known to stand before it.
 * Of the users of its kind that it follows, the one that ends last is the least.
 *
 * Invariant of an explanation "costs v at least": for each that could stand before it, it is named either why
 * it does not (not there, after it, or something between), or the bounds by which following it costs v.
 */
export class RowCosts implements Propagator {
  readonly name: string;
  readonly wakes: readonly number[];
  readonly turn = 2;
  private readonly count: number;

  /** @param before `[a * count + b]`: where a stands before b; true or false where that is certain */
  constructor(
    private readonly row: RowCost,
    private readonly members: readonly RowMember[],
    private readonly before: readonly (Atom | boolean)[],
  ) {
    this.name = row.name;
    this.count = members.length;
    const orders = before.flatMap((atom) => (typeof atom === 'boolean' ? [] : [atom[0]]));
    const own = members.flatMap(({ there, begin, finish }) => [
      ...there.map(([bound]) => bound),
      ...[lower(finish[0]), upper(finish[0]), lower(begin[0]), upper(begin[0])],
    ]);
    this.wakes = [...new Set([...orders, ...own, ...members.map(({ cost }) => upper(cost))])];
  }

  propagate(trail: Trail): boolean {
    for (let user = 0; user < this.count; user += 1) {
      const { there, cost } = this.members[user]!;
      if (!there.every(([b, v]) => trail.bound[b]! >= v)) continue;
      const known = trail.bound[lower(cost)]!;
      const least = this.leastCost(trail, user, known);
      if (least <= known) continue;
      const reach = Math.min(least, 1 - trail.bound[upper(cost)]!);
      trail.because();
      for (const [b, v] of there) trail.say(b, v);
      this.explain(trail, user, reach);
      if (!trail.raise(lower(cost), reach, trail.said())) return false;
    }
    return true;
  }

  /** The least cost of all that may stand before `user`, itself (first of all) included; stops at `enough`. */
  private leastCost(trail: Trail, user: number, enough: number): number {
    let least = Infinity;
    for (let other = 0; other < this.count && least > enough; other += 1) {
      const cost = this.costAfter(trail, other, user);
      if (cost < least && this.obstacle(trail, other, user) === null) least = cost;
    }
    return least;
  }

  private lengthOf(trail: Trail, user: number): number {
    const { begin, finish, length } = this.members[user]!;
    if (begin[0] === finish[0]) return length;
    const apart = trail.bound[lower(finish[0])]! + finish[1] + trail.bound[upper(begin[0])]!;
    return Math.max(length, apart - begin[1]);
  }

  /** What `user` costs at least after `other`; after itself: as the first of all. */
  private costAfter(trail: Trail, other: number, user: number): number {
    const { row, members } = this;
    const { kind, finish } = members[user]!;
    if (other === user) return row.first[kind]! + row.on * this.lengthOf(trail, user);
    const before = members[other]!;
    if (before.kind !== kind)
      return row.change[before.kind]![kind]! + row.on * this.lengthOf(trail, user);
    if (row.on === 0) return 0;
    const later =
      trail.bound[lower(finish[0])]! + finish[1] + trail.bound[upper(before.finish[0])]!;
    const keep = row.keep[kind] ?? null;
    const most = keep === null ? Infinity : this.lengthOf(trail, user) + keep;
    return row.on * Math.max(0, Math.min(later - before.finish[1], most));
  }

  /** Atoms by which `other` cannot be what `user` follows; null if it may be. */
  private obstacle(trail: Trail, other: number, user: number): readonly Atom[] | null {
    const { members, count } = this;
    const { kind } = members[other]!;
    const first = other === user;
    if (!first) {
      const away = this.absence(trail, other) ?? this.whyNot(trail, other, user);
      if (away !== null) return away;
    }
    for (let between = 0; between < count; between += 1) {
      if (between === user || between === other) continue;
      const member = members[between]!;
      if (!first && member.kind === kind) continue;
      const ahead = this.why(trail, between, user);
      if (ahead === null) continue;
      const after = first ? [] : this.why(trail, other, between);
      if (after === null) continue;
      if (!member.there.every(([b, v]) => trail.bound[b]! >= v)) continue;
      return [...member.there, ...ahead, ...after];
    }
    return null;
  }

  private absence(trail: Trail, user: number): readonly Atom[] | null {
    const away = this.members[user]!.there.find(([b, v]) => trail.bound[b ^ 1]! >= 1 - v);
    return away === undefined ? null : [[away[0] ^ 1, 1 - away[1]]];
  }

  /** The atoms by which `a` is known to stand before `b`; null if it is not known to. */
  private why(trail: Trail, a: number, b: number): readonly Atom[] | null {
    const order = this.before[a * this.count + b]!;
    if (typeof order === 'boolean') return order ? [] : null;
    return trail.bound[order[0]]! >= order[1] ? [order] : null;
  }

  /** The atoms by which `a` is known not to stand before `b`. */
  private whyNot(trail: Trail, a: number, b: number): readonly Atom[] | null {
    return this.why(trail, b, a);
  }

  private explain(trail: Trail, user: number, value: number): void {
    for (let other = 0; other < this.count; other += 1) {
      if (this.costAfter(trail, other, user) >= value) {
        this.sayCost(trail, other, user, value);
        continue;
      }
      for (const [b, v] of this.obstacle(trail, other, user)!) trail.say(b, v);
    }
  }

  private sayCost(trail: Trail, other: number, user: number, value: number): void {
    const { row, members } = this;
    const { kind, finish } = members[user]!;
    const before = members[other]!;
    if (other !== user && before.kind === kind) {
      if (value <= 0) return;
      const needed = Math.ceil(value / row.on);
      const end = trail.bound[lower(finish[0])]!;
      trail.say(lower(finish[0]), end);
      trail.say(upper(before.finish[0]), needed - (end + finish[1]) + before.finish[1]);
      const keep = row.keep[kind] ?? null;
      if (keep !== null) this.sayLength(trail, user, needed - keep);
      return;
    }
    const fixed = other === user ? row.first[kind]! : row.change[before.kind]![kind]!;
    if (value > fixed) this.sayLength(trail, user, Math.ceil((value - fixed) / row.on));
  }

  /** Adds "it is at least so long" to the reason. */
  private sayLength(trail: Trail, user: number, needed: number): void {
    const { begin, finish, length } = this.members[user]!;
    if (needed <= length) return;
    const end = trail.bound[lower(finish[0])]!;
    trail.say(lower(finish[0]), end);
    trail.say(upper(begin[0]), needed - (end + finish[1]) + begin[1]);
  }
}
