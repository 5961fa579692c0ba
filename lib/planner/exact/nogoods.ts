/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import { grown, type AtomList } from './atoms';
import { BY_NOGOOD, type Trail } from './trail';

/** Before its atoms a nogood has its size, its number of levels, and its activity (a float). */
const HEAD = 3;
/** Of this few levels a nogood is kept for good ("glue"; Audemard & Simon, IJCAI 2009). */
const KEPT_LEVELS = 2;
const FADE = 0.999;

/**
 * The learned nogoods: sets of atoms that cannot all be true. Each is watched by two of its atoms
 * (Moskewicz et al., "Chaff", DAC 2001): only when a watched atom becomes true is the nogood looked at.
 *
 * Invariant at a fixpoint: of the two watched atoms (the first two) none is true, unless the other is
 * false. If all but the first are true, the first was made false with this nogood as the reason; while it
 * is a reason, its first atom stays first. The atoms of one nogood are on different bounds.
 *
 * The watch list of a bound holds, for each nogood, the value of the watched atom and another atom of the
 * nogood; most visits end at these two without touching the nogood.
 */
export class Nogoods {
  private data: Int32Array<ArrayBuffer> = new Int32Array(1 << 14);
  private activity = new Float32Array(this.data.buffer);
  private used = 0;
  private all = new Int32Array(1024);
  /** How many are kept now. */
  size = 0;
  private readonly lists: Int32Array[];
  private readonly listSize: Int32Array;
  private bumpBy = 1;
  private readonly units: number[] = [];

  constructor(private readonly trail: Trail) {
    this.lists = Array.from(trail.bound, () => new Int32Array(0));
    this.listSize = new Int32Array(trail.bound.length);
  }

  /**
   * Keeps a nogood of two atoms or more; its second atom must be the one made true last after the first.
   * Returns the reason for making its first atom false.
   */
  add(atoms: AtomList, levels: number): number {
    const words = HEAD + 2 * atoms.size;
    while (this.used + words > this.data.length) {
      this.data = grown(this.data);
      this.activity = new Float32Array(this.data.buffer);
    }
    const id = this.used;
    this.used += words;
    this.data[id] = atoms.size;
    this.data[id + 1] = levels;
    this.activity[id + 2] = this.bumpBy;
    for (let index = 0; index < atoms.size; index += 1) {
      this.data[id + HEAD + 2 * index] = atoms.bound[index]!;
      this.data[id + HEAD + 2 * index + 1] = atoms.value[index]!;
    }
    this.enrol(id);
    return (id << 2) | BY_NOGOOD;
  }

  private enrol(id: number): void {
    if (this.size === this.all.length) this.all = grown(this.all);
    this.all[this.size] = id;
    this.size += 1;
    const at = id + HEAD;
    const { data } = this;
    this.watch(data[at]!, data[at + 1]!, id, data[at + 2]!, data[at + 3]!);
    this.watch(data[at + 2]!, data[at + 3]!, id, data[at]!, data[at + 1]!);
  }

  private watch(b: number, value: number, id: number, otherB: number, otherV: number): void {
    const size = this.listSize[b]!;
    let list = this.lists[b]!;
    if (size + 4 > list.length) {
      list = grown(list);
      this.lists[b] = list;
    }
    list[size] = value;
    list[size + 1] = id;
    list[size + 2] = otherB;
    list[size + 3] = otherV;
    this.listSize[b] = size + 4;
  }

  /** Bound `b` rose from `old` to `now`: looks at the nogoods whose atom became true. False on a conflict. */
  visit(b: number, old: number, now: number): boolean {
    const list = this.lists[b]!;
    let size = this.listSize[b]!;
    if (size === 0) return true;
    const { bound } = this.trail;
    for (let at = 0; at < size;) {
      const value = list[at]!;
      if (value > now || value <= old) {
        at += 4;
        continue;
      }
      const otherB = list[at + 2]!;
      if (bound[otherB ^ 1]! >= 1 - list[at + 3]!) {
        at += 4;
        continue;
      }
      const id = list[at + 1]!;
      const moved = this.settle(id, b, value, list, at);
      if (moved === MOVED) {
        size -= 4;
        list[at] = list[size]!;
        list[at + 1] = list[size + 1]!;
        list[at + 2] = list[size + 2]!;
        list[at + 3] = list[size + 3]!;
        this.listSize[b] = size;
        continue;
      }
      if (moved === CLASH) return false;
      at += 4;
    }
    return true;
  }

  private settle(id: number, b: number, value: number, list: Int32Array, at: number): number {
    const { data, trail } = this;
    const { bound } = trail;
    const first = id + HEAD;
    if (data[first] === b) {
      data[first] = data[first + 2]!;
      data[first + 1] = data[first + 3]!;
      data[first + 2] = b;
      data[first + 3] = value;
    }
    const firstB = data[first]!;
    const firstV = data[first + 1]!;
    if (bound[firstB ^ 1]! >= 1 - firstV) {
      list[at + 2] = firstB;
      list[at + 3] = firstV;
      return STAYS;
    }
    const end = first + 2 * data[id]!;
    for (let next = first + 4; next < end; next += 2) {
      const nextB = data[next]!;
      const nextV = data[next + 1]!;
      if (bound[nextB]! >= nextV) continue;
      data[next] = b;
      data[next + 1] = value;
      data[first + 2] = nextB;
      data[first + 3] = nextV;
      this.watch(nextB, nextV, id, firstB, firstV);
      return MOVED;
    }
    return trail.raise(firstB ^ 1, 1 - firstV, (id << 2) | BY_NOGOOD) ? STAYS : CLASH;
  }

  /** The atoms that made the first atom of nogood `id` false; notes that it was of use. */
  explain(id: number, into: AtomList): void {
    const { data } = this;
    const end = id + HEAD + 2 * data[id]!;
    for (let at = id + HEAD + 2; at < end; at += 2) into.push(data[at]!, data[at + 1]!);
  }

  /** Counts a use in a conflict. */
  bump(id: number): void {
    this.activity[id + 2]! += this.bumpBy;
  }

  /** Uses from now on count more than those before. */
  fade(): void {
    this.bumpBy /= FADE;
    if (this.bumpBy < 1e20) return;
    for (let index = 0; index < this.size; index += 1)
      this.activity[this.all[index]! + 2]! *= 1e-20;
    this.bumpBy *= 1e-20;
  }

  /**
   * Forgets, at the root, half of the nogoods of many levels (the least active), and those that hold for
   * good; the rest lose the atoms that are always true. False if one of them has none left.
   */
  reduce(): boolean {
    const { trail, data, activity } = this;
    const kept: number[] = [];
    const open: number[] = [];
    for (let index = 0; index < this.size; index += 1) {
      const id = this.all[index]!;
      (data[id + 1]! <= KEPT_LEVELS ? kept : open).push(id);
    }
    open.sort((a, b) => activity[b + 2]! - activity[a + 2]! || a - b);
    kept.push(...open.slice(0, open.length >> 1));
    kept.sort((a, b) => a - b);
    this.listSize.fill(0);
    this.size = 0;
    this.used = 0;
    this.units.length = 0;
    for (const id of kept) this.keep(id);
    for (let at = 0; at < this.units.length; at += 2) {
      if (!trail.raise(this.units[at]! ^ 1, 1 - this.units[at + 1]!, -1)) return false;
    }
    return true;
  }

  /** Moves nogood `id` down to the end of what is used; ids come in ascending order. */
  private keep(id: number): void {
    const { data, trail } = this;
    const { bound } = trail;
    const end = id + HEAD + 2 * data[id]!;
    for (let at = id + HEAD; at < end; at += 2) {
      if (bound[data[at]! ^ 1]! >= 1 - data[at + 1]!) return;
    }
    const to = this.used;
    let next = to + HEAD;
    const levels = data[id + 1]!;
    const activity = this.activity[id + 2]!;
    for (let at = id + HEAD; at < end; at += 2) {
      const b = data[at]!;
      const v = data[at + 1]!;
      if (bound[b]! >= v) continue;
      data[next] = b;
      data[next + 1] = v;
      next += 2;
    }
    const size = (next - to - HEAD) >> 1;
    if (size < 2) {
      if (size === 0) throw new Error('a nogood that holds at the root was not found');
      else this.units.push(data[to + HEAD]!, data[to + HEAD + 1]!);
      return;
    }
    data[to] = size;
    data[to + 1] = levels;
    this.activity[to + 2] = activity;
    this.used = next;
    this.enrol(to);
  }
}

const STAYS = 0;
const MOVED = 1;
const CLASH = 2;
