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
 * Watches hang on atoms, not on bounds: `lists[id]` belongs to one atom, and the atoms watched on a bound stand
 * in ascending order of value, so that a rise meets those only that it made true. Each watch carries another
 * atom of its nogood; where that one is false, the nogood need not be touched.
 */
export class Nogoods {
  private data: Int32Array<ArrayBuffer> = new Int32Array(1 << 14);
  private activity = new Float32Array(this.data.buffer);
  private used = 0;
  private all = new Int32Array(1024);
  /** How many are kept now. */
  size = 0;
  /** By bound: the values of its watched atoms, ascending, and the number of each atom's list. */
  private readonly values: Int32Array[];
  private readonly atoms: Int32Array[];
  private readonly atomCount: Int32Array;
  private readonly lists: Int32Array[] = [];
  private listSize = new Int32Array(1024);
  private atomsUsed = 0;
  private bumpBy = 1;
  private readonly units: number[] = [];

  constructor(private readonly trail: Trail) {
    this.values = Array.from(trail.bound, () => NOTHING);
    this.atoms = Array.from(trail.bound, () => NOTHING);
    this.atomCount = new Int32Array(trail.bound.length);
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
    const atom = this.atomOf(b, value);
    const size = this.listSize[atom]!;
    let list = this.lists[atom]!;
    if (size + 3 > list.length) {
      list = grown(list);
      this.lists[atom] = list;
    }
    list[size] = id;
    list[size + 1] = otherB;
    list[size + 2] = otherV;
    this.listSize[atom] = size + 3;
  }

  /** The first place on bound `b` of a watched atom with a value above `value`. */
  private above(b: number, value: number): number {
    const values = this.values[b]!;
    let low = 0;
    let high = this.atomCount[b]!;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (values[middle]! <= value) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  /** The list of the atom `(b, value)`, made where it is the first to be watched. */
  private atomOf(b: number, value: number): number {
    const place = this.above(b, value - 1);
    const count = this.atomCount[b]!;
    if (place < count && this.values[b]![place] === value) return this.atoms[b]![place]!;
    if (count === this.values[b]!.length) {
      this.values[b] = grown(this.values[b]!);
      this.atoms[b] = grown(this.atoms[b]!);
    }
    const values = this.values[b]!;
    const atoms = this.atoms[b]!;
    values.copyWithin(place + 1, place, count);
    atoms.copyWithin(place + 1, place, count);
    const atom = this.atomsUsed;
    this.atomsUsed += 1;
    if (atom === this.lists.length) this.lists.push(new Int32Array(12));
    if (atom === this.listSize.length) this.listSize = grown(this.listSize);
    this.listSize[atom] = 0;
    values[place] = value;
    atoms[place] = atom;
    this.atomCount[b] = count + 1;
    return atom;
  }

  /** Bound `b` rose from `old` to `now`: looks at the nogoods whose atom became true. False on a conflict. */
  visit(b: number, old: number, now: number): boolean {
    const count = this.atomCount[b]!;
    if (count === 0) return true;
    const values = this.values[b]!;
    const atoms = this.atoms[b]!;
    for (let place = this.above(b, old); place < count && values[place]! <= now; place += 1) {
      if (!this.visitAtom(b, values[place]!, atoms[place]!)) return false;
    }
    return true;
  }

  private visitAtom(b: number, value: number, atom: number): boolean {
    const { bound } = this.trail;
    const list = this.lists[atom]!;
    let size = this.listSize[atom]!;
    for (let at = 0; at < size;) {
      if (bound[list[at + 1]! ^ 1]! >= 1 - list[at + 2]!) {
        at += 3;
        continue;
      }
      const moved = this.settle(list[at]!, b, value, list, at);
      if (moved === CLASH) return false;
      if (moved === STAYS) {
        at += 3;
        continue;
      }
      size -= 3;
      list[at] = list[size]!;
      list[at + 1] = list[size + 1]!;
      list[at + 2] = list[size + 2]!;
      this.listSize[atom] = size;
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
      list[at + 1] = firstB;
      list[at + 2] = firstV;
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
    this.atomCount.fill(0);
    this.atomsUsed = 0;
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

/** The lists of all bounds of which nothing is watched yet; replaced, never written to. */
const NOTHING = new Int32Array(0);

const STAYS = 0;
const MOVED = 1;
const CLASH = 2;
