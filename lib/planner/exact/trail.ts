/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import { grown, type AtomList } from './atoms';

/** Why a bound rose: `payload << 2 | kind`, or NO_REASON for decisions and what holds at the root. */
export const NO_REASON = -1;
/** Kinds of reasons: a list in the arena of this trail, an arc, a nogood. */
export const BY_LIST = 0;
export const BY_ARC = 1;
export const BY_NOGOOD = 2;

/**
 * The bounds of all variables, every rise of a bound in order, and why it rose.
 *
 * Invariants:
 * - the entries of one bound are linked from `last[b]` by `previous`, each higher than the one before;
 * - `bound[b]` is the value of the entry `last[b]`, or the value at the start if there is none;
 * - no variable's domain is empty: `bound[2x] + bound[2x + 1] <= 0`; a rise that would empty one is not
 *   made but kept in `failBound`, `failValue`, `failReason`;
 * - the reason of an entry is true before the entry and implies it.
 */
export class Trail {
  readonly bound: Int32Array;
  readonly last: Int32Array;
  entryBound = new Int32Array(4096);
  entryOld = new Int32Array(4096);
  entryNew = new Int32Array(4096);
  entryPrevious = new Int32Array(4096);
  entryReason = new Int32Array(4096);
  size = 0;
  level = 0;
  /** First entry of each level; level 0 begins at 0. */
  levelStart = new Int32Array(256);
  private levelArena = new Int32Array(256);
  /** What could not be set: `failBound` -1 means that the reason alone is the conflict. */
  failBound = -1;
  failValue = 0;
  failReason = NO_REASON;
  /** Bounds as they were when level 1 began: what holds there needs no explanation. */
  readonly rootBound: Int32Array;
  private arena = new Int32Array(1 << 14);
  private arenaSize = 0;
  private open = 0;

  constructor(lows: readonly number[], highs: readonly number[]) {
    const count = lows.length;
    this.bound = new Int32Array(2 * count);
    for (let x = 0; x < count; x += 1) {
      this.bound[2 * x] = lows[x]!;
      this.bound[2 * x + 1] = -highs[x]!;
    }
    this.last = new Int32Array(2 * count).fill(-1);
    this.rootBound = this.bound.slice();
  }

  low(variable: number): number {
    return this.bound[2 * variable]!;
  }

  high(variable: number): number {
    return -this.bound[2 * variable + 1]!;
  }

  /** Begins a reason that is a list of atoms; `say` adds one. */
  because(): void {
    if (this.arenaSize + 4096 > this.arena.length) this.arena = grown(this.arena);
    this.open = this.arenaSize;
    this.arena[this.open] = 0;
    this.arenaSize += 1;
  }

  say(bound: number, value: number): void {
    const { arena } = this;
    const at = this.arenaSize;
    if (at + 2 > arena.length) {
      this.arena = grown(arena);
      this.say(bound, value);
      return;
    }
    arena[at] = bound;
    arena[at + 1] = value;
    arena[this.open]! += 1;
    this.arenaSize = at + 2;
  }

  /** The reason begun last, for `raise`. */
  said(): number {
    return (this.open << 2) | BY_LIST;
  }

  /** The reason begun last is itself the conflict. Returns false, as a propagator does. */
  failBecause(): boolean {
    this.failBound = -1;
    this.failReason = this.said();
    return false;
  }

  /** Adds the atoms of a listed reason to `out`. */
  readList(offset: number, out: AtomList): void {
    const { arena } = this;
    const end = offset + 1 + 2 * arena[offset]!;
    for (let at = offset + 1; at < end; at += 2) out.push(arena[at]!, arena[at + 1]!);
  }

  /** Raises bound `b` to at least `v`. False if that empties the domain; then the failure is kept. */
  raise(b: number, v: number, reason: number): boolean {
    const { bound } = this;
    const old = bound[b]!;
    if (v <= old) return true;
    if (v + bound[b ^ 1]! > 0) {
      this.failBound = b;
      this.failValue = v;
      this.failReason = reason;
      return false;
    }
    const entry = this.size;
    if (entry === this.entryBound.length) this.grow();
    this.entryBound[entry] = b;
    this.entryOld[entry] = old;
    this.entryNew[entry] = v;
    this.entryPrevious[entry] = this.last[b]!;
    this.entryReason[entry] = reason;
    this.last[b] = entry;
    bound[b] = v;
    this.size = entry + 1;
    return true;
  }

  /** Begins a new level, to be opened with a decision. */
  push(): void {
    if (this.level === 0) this.rootBound.set(this.bound);
    this.level += 1;
    if (this.level === this.levelStart.length) {
      this.levelStart = grown(this.levelStart);
      this.levelArena = grown(this.levelArena);
    }
    this.levelStart[this.level] = this.size;
    this.levelArena[this.level] = this.arenaSize;
  }

  /** Takes back every level above `level`. */
  backTo(level: number): void {
    if (this.level <= level) return;
    const { bound, last, entryBound, entryOld, entryPrevious } = this;
    const start = this.levelStart[level + 1]!;
    for (let entry = this.size - 1; entry >= start; entry -= 1) {
      const b = entryBound[entry]!;
      bound[b] = entryOld[entry]!;
      last[b] = entryPrevious[entry]!;
    }
    this.size = start;
    this.arenaSize = this.levelArena[level + 1]!;
    this.level = level;
  }

  /** At the root nothing is ever explained, so its entries and reasons can be forgotten. */
  forgetRoot(): void {
    if (this.level !== 0) throw new Error('only at the root');
    for (let entry = 0; entry < this.size; entry += 1) this.last[this.entryBound[entry]!] = -1;
    this.size = 0;
    this.arenaSize = 0;
  }

  /** The first entry by which the atom was true; -1 if it was so from the start. The atom must be true. */
  entryOf(b: number, v: number): number {
    const { entryOld, entryPrevious } = this;
    let entry = this.last[b]!;
    while (entry >= 0 && entryOld[entry]! >= v) entry = entryPrevious[entry]!;
    return entry;
  }

  /** The level of an entry. */
  levelOf(entry: number): number {
    const { levelStart } = this;
    let low = 0;
    let high = this.level;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (levelStart[middle]! <= entry) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  private grow(): void {
    this.entryBound = grown(this.entryBound);
    this.entryOld = grown(this.entryOld);
    this.entryNew = grown(this.entryNew);
    this.entryPrevious = grown(this.entryPrevious);
    this.entryReason = grown(this.entryReason);
  }
}
