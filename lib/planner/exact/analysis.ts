/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import { AtomList, grown } from './atoms';
import type { Engine } from './engine';
import { BY_NOGOOD, NO_REASON } from './trail';

/** What the search is told of each conflict. */
export interface Listener {
  /** The variable had a part in the conflict. */
  involved(variable: number): void;
}

/** How deep minimisation asks for reasons of reasons. */
const DEPTH = 24;

/**
 * Conflict analysis to the first unique implication point (Marques-Silva & Sakallah, GRASP, 1999; Zhang et
 * al., ICCAD 2001), on atoms of bounds.
 *
 * Walks the trail back from the conflict. At each moment the marked atoms together cannot be true, one atom
 * for each bound at most (of two on the same bound the stronger implies the weaker). The latest is replaced
 * by its reason until only one of the conflict's level is left; the marked atoms are then a nogood whose
 * negated last atom follows at an earlier level.
 *
 * Minimisation (Sörensson & Biere, SAT 2009) leaves out an atom that follows from others. An atom may only
 * lean on marked atoms that stand earlier on the trail: with bounds, a mark can be stronger and later than
 * what is asked for, and two atoms could otherwise excuse each other.
 */
export class Analysis {
  conflicts = 0;
  /** Levels in the nogood learned last. */
  levels = 0;
  private readonly conflict = new AtomList();
  private readonly reason = new AtomList();
  private readonly learned = new AtomList();
  private readonly marked: Uint8Array;
  private readonly listed: Int32Array;
  private listedSize = 0;
  private readonly needed: Int32Array;
  private readonly entryOf: Int32Array;
  private stampOfLevel = new Int32Array(256);
  private stamp = 0;
  /** By trail entry: 2 × stamp where it follows from the marks, 2 × stamp + 1 where not. */
  private verdict = new Int32Array(4096);
  private readonly depths = Array.from({ length: DEPTH + 1 }, () => new AtomList());

  constructor(
    private readonly engine: Engine,
    private readonly listener: Listener,
  ) {
    const bounds = 2 * engine.variables;
    this.marked = new Uint8Array(bounds);
    this.listed = new Int32Array(bounds);
    this.needed = new Int32Array(bounds);
    this.entryOf = new Int32Array(bounds);
  }

  /**
   * Learns from the failure on the trail, goes back, and makes the learned atom false. Returns false if
   * there is no solution at all. What follows must be propagated by the caller.
   */
  resolve(): boolean {
    const { engine } = this;
    const { trail } = engine;
    for (;;) {
      this.conflicts += 1;
      this.loadConflict();
      if (!this.findUip()) return false;
      this.minimise();
      const { learned } = this;
      const back = this.arrange();
      engine.backTo(back);
      const reason = learned.size < 2 ? NO_REASON : engine.nogoods.add(learned, this.levels);
      engine.nogoods.fade();
      if (trail.raise(learned.bound[0]! ^ 1, 1 - learned.value[0]!, reason)) return true;
      if (learned.size < 2) return false;
    }
  }

  private loadConflict(): void {
    const { conflict, engine } = this;
    const { trail } = engine;
    conflict.size = 0;
    if (trail.failReason !== NO_REASON && (trail.failReason & 3) === BY_NOGOOD)
      engine.nogoods.bump(trail.failReason >> 2);
    engine.explain(trail.failReason, trail.failValue, conflict);
    if (trail.failBound >= 0) conflict.push(trail.failBound ^ 1, 1 - trail.failValue);
  }

  /** Marks the atoms of the nogood; `learned` begins with the unique implication point. */
  private findUip(): boolean {
    const { engine, conflict, marked, needed, entryOf, learned, reason } = this;
    const { trail } = engine;
    let latest = -1;
    for (let index = 0; index < conflict.size; index += 1) {
      const entry = trail.entryOf(conflict.bound[index]!, conflict.value[index]!);
      if (entry > latest) latest = entry;
    }
    const root = trail.level > 0 ? trail.levelStart[1]! : trail.size;
    if (latest < root) return false;
    const start = trail.levelStart[trail.levelOf(latest)]!;
    this.listedSize = 0;
    let open = this.mark(conflict, root, start);
    for (let entry = latest; ; entry -= 1) {
      const b = trail.entryBound[entry]!;
      if (marked[b] !== 2 || entryOf[b] !== entry) continue;
      if (open === 1) {
        learned.size = 0;
        learned.push(b, needed[b]!);
        return true;
      }
      marked[b] = 1;
      open -= 1;
      const why = trail.entryReason[entry]!;
      if ((why & 3) === BY_NOGOOD) engine.nogoods.bump(why >> 2);
      reason.size = 0;
      engine.explain(why, needed[b]!, reason);
      open += this.mark(reason, root, start);
    }
  }

  /** Marks atoms; returns by how many more of the conflict's level are marked. */
  private mark(atoms: AtomList, root: number, start: number): number {
    const { marked, needed, entryOf, listed } = this;
    const { trail } = this.engine;
    let more = 0;
    for (let index = 0; index < atoms.size; index += 1) {
      const b = atoms.bound[index]!;
      const v = atoms.value[index]!;
      if (v <= trail.rootBound[b]!) continue;
      if (marked[b] === 2 && needed[b]! >= v) continue;
      const entry = trail.entryOf(b, v);
      if (entry < root) continue;
      if (marked[b] === 2) {
        if (entryOf[b]! < start && entry >= start) more += 1;
      } else {
        if (marked[b] === 0) {
          listed[this.listedSize] = b;
          this.listedSize += 1;
          this.listener.involved(b >> 1);
        }
        marked[b] = 2;
        if (entry >= start) more += 1;
      }
      needed[b] = v;
      entryOf[b] = entry;
    }
    return more;
  }

  /** Puts into `learned` the marked atoms that do not follow from the others, and clears the marks. */
  private minimise(): void {
    const { learned, listed, marked, needed, entryOf, engine } = this;
    const { trail } = engine;
    while (this.verdict.length < trail.size) this.verdict = grown(this.verdict);
    this.stamp += 1;
    const uip = learned.bound[0]!;
    for (let index = 0; index < this.listedSize; index += 1) {
      const b = listed[index]!;
      if (marked[b] !== 2 || b === uip) continue;
      const entry = entryOf[b]!;
      if (trail.entryReason[entry] === NO_REASON || !this.follows(entry, needed[b]!, 0))
        learned.push(b, needed[b]!);
    }
    for (let index = 0; index < this.listedSize; index += 1) marked[listed[index]!] = 0;
  }

  /** Whether the atom made true by `entry` follows from marked atoms that stand before it. */
  private follows(entry: number, value: number, depth: number): boolean {
    const { engine, marked, needed, entryOf, verdict } = this;
    const { trail } = engine;
    const why = trail.entryReason[entry]!;
    if (why === NO_REASON) return false;
    const atoms = this.depths[depth]!;
    atoms.size = 0;
    engine.explain(why, value, atoms);
    for (let index = 0; index < atoms.size; index += 1) {
      const b = atoms.bound[index]!;
      const v = atoms.value[index]!;
      if (v <= trail.rootBound[b]!) continue;
      if (marked[b] === 2 && needed[b]! >= v && entryOf[b]! < entry) continue;
      const before = trail.entryOf(b, v);
      if (verdict[before] === 2 * this.stamp) continue;
      if (verdict[before] === 2 * this.stamp + 1 || depth === DEPTH) return false;
      // The whole entry, not only `v` of it, so that the verdict can be used again.
      const whole = this.follows(before, trail.entryNew[before]!, depth + 1);
      verdict[before] = 2 * this.stamp + (whole ? 0 : 1);
      if (!whole) return false;
    }
    return true;
  }

  /** Puts the atom of the highest level second, counts levels, and returns the level to go back to. */
  private arrange(): number {
    const { learned, stampOfLevel } = this;
    const { trail } = this.engine;
    if (stampOfLevel.length <= trail.level + 1)
      this.stampOfLevel = new Int32Array(2 * trail.level + 16);
    let back = 0;
    let second = 1;
    this.levels = 1;
    for (let index = 1; index < learned.size; index += 1) {
      const level = trail.levelOf(trail.entryOf(learned.bound[index]!, learned.value[index]!));
      if (this.stampOfLevel[level] !== this.stamp) {
        this.stampOfLevel[level] = this.stamp;
        this.levels += 1;
      }
      if (level > back) {
        back = level;
        second = index;
      }
    }
    if (second > 1) {
      const { bound, value } = learned;
      const b = bound[1]!;
      const v = value[1]!;
      bound[1] = bound[second]!;
      value[1] = value[second]!;
      bound[second] = b;
      value[second] = v;
    }
    return back;
  }
}
