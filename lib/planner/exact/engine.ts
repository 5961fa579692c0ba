/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import { packByBound, type AtomList, type ListsByBound } from './atoms';
import { Differences, type Difference } from './differences';
import { Nogoods } from './nogoods';
import { BY_ARC, BY_LIST, NO_REASON, Trail } from './trail';

/**
 * A rule over many variables. `propagate` raises bounds on the trail, each with its reason, and returns
 * false on a conflict that it left there. It is called again when one of its bounds rose, by itself too.
 */
export interface Propagator {
  /** The constraint's name, for a person. */
  readonly name: string;
  /** The bounds whose rise concerns it. */
  readonly wakes: ArrayLike<number>;
  /** 0 is called before 1, and so on: the cheap before the costly. */
  readonly turn: number;
  propagate(trail: Trail): boolean;
  /** Told which of `wakes` rose, by its place there, before `propagate`; perhaps more often than it rose. */
  woken?(place: number): void;
}

const TURNS = 3;

/** What the engine is made of, before it runs. */
export interface EngineParts {
  readonly lows: readonly number[];
  readonly highs: readonly number[];
  readonly differences: readonly Difference[];
  readonly propagators: (trail: Trail) => readonly Propagator[];
}

/**
 * The kernel: variables with their trail, and everything that propagates, brought to one fixpoint.
 * Differences and nogoods follow every rise at once; propagators wait in queues by turn.
 *
 * Invariant: when `propagate` returned true, nothing that propagates can raise a bound any more.
 */
export class Engine {
  readonly trail: Trail;
  readonly differences: Differences;
  readonly nogoods: Nogoods;
  readonly propagators: readonly Propagator[];
  readonly variables: number;
  /** By bound: the propagators to wake, and beside them the place of the bound in their `wakes`. */
  private readonly wake: ListsByBound;
  private readonly wakePlace: Int32Array;
  private readonly listens: Uint8Array;
  private readonly queued: Uint8Array;
  private readonly queue: Int32Array[];
  private readonly queueHead = new Int32Array(TURNS);
  private readonly queueTail = new Int32Array(TURNS);
  private next = 0;

  constructor(parts: EngineParts) {
    this.trail = new Trail(parts.lows, parts.highs);
    this.variables = parts.lows.length;
    this.differences = new Differences(this.trail, parts.differences);
    this.nogoods = new Nogoods(this.trail);
    this.propagators = parts.propagators(this.trail);
    const wakes = this.propagators.reduce((sum, propagator) => sum + propagator.wakes.length, 0);
    const woken = new Int32Array(wakes);
    const places = new Int32Array(wakes);
    const bounds = new Int32Array(wakes);
    let at = 0;
    this.propagators.forEach((propagator, index) => {
      for (let place = 0; place < propagator.wakes.length; place += 1) {
        bounds[at] = propagator.wakes[place]!;
        woken[at] = index;
        places[at] = place;
        at += 1;
      }
    });
    this.wake = packByBound(this.trail.bound.length, bounds, woken);
    this.wakePlace = packByBound(this.trail.bound.length, bounds, places).items;
    this.listens = Uint8Array.from(this.propagators, ({ woken }) => (woken === undefined ? 0 : 1));
    this.queued = new Uint8Array(this.propagators.length);
    // One slot more than could ever wait, so that head = tail means empty.
    this.queue = Array.from({ length: TURNS }, () => new Int32Array(this.propagators.length + 1));
  }

  /** Follows every bound and calls every propagator, whether or not anything rose. False: no solution. */
  propagateAll(): boolean {
    const { trail } = this;
    for (let round = 0; ; round += 1) {
      const before = trail.size;
      for (let b = 0; b < trail.bound.length; b += 1) {
        if (!this.differences.follow(b)) return this.clear();
      }
      if (trail.size === before) break;
      // Longer chains than there are variables mean a cycle that pushes itself on without end.
      if (round > 2 * this.variables + 2) return this.clear();
    }
    for (let index = 0; index < this.propagators.length; index += 1) this.enqueue(index);
    return this.propagate();
  }

  /** Brings everything to the fixpoint. False on a conflict, left on the trail. */
  propagate(): boolean {
    const { trail, wake, queue, queueHead, queueTail, queued } = this;
    for (;;) {
      while (this.next < trail.size) {
        const entry = this.next;
        this.next = entry + 1;
        const b = trail.entryBound[entry]!;
        if (!this.nogoods.visit(b, trail.entryOld[entry]!, trail.entryNew[entry]!))
          return this.clear();
        // A later rise of the same bound will do what is left to do.
        if (trail.last[b] !== entry) continue;
        if (!this.differences.follow(b)) return this.clear();
        for (let at = wake.start[b]!, end = wake.start[b + 1]!; at < end; at += 1) {
          const index = wake.items[at]!;
          if (this.listens[index] === 1) this.propagators[index]!.woken!(this.wakePlace[at]!);
          if (queued[index] === 0) this.enqueue(index);
        }
      }
      let turn = 0;
      while (turn < TURNS && queueHead[turn] === queueTail[turn]) turn += 1;
      if (turn === TURNS) return true;
      const slots = queue[turn]!;
      const index = slots[queueHead[turn]!]!;
      queueHead[turn] = (queueHead[turn]! + 1) % slots.length;
      queued[index] = 0;
      if (!this.propagators[index]!.propagate(trail)) return this.clear();
    }
  }

  private enqueue(index: number): void {
    if (this.queued[index] === 1) return;
    const { turn } = this.propagators[index]!;
    const slots = this.queue[turn]!;
    slots[this.queueTail[turn]!] = index;
    this.queueTail[turn] = (this.queueTail[turn]! + 1) % slots.length;
    this.queued[index] = 1;
  }

  private clear(): false {
    this.queueHead.fill(0);
    this.queueTail.fill(0);
    this.queued.fill(0);
    return false;
  }

  /** A decision: a new level that begins with the atom `(b, v)`, which must be open. */
  decide(b: number, v: number): void {
    this.trail.push();
    this.trail.raise(b, v, NO_REASON);
  }

  /** Takes back every level above `level`; what was at its fixpoint then still is. */
  backTo(level: number): void {
    this.trail.backTo(level);
    this.next = Math.min(this.next, this.trail.size);
  }

  /** At the root, after a fixpoint: forgets the history of the root. */
  forgetRoot(): void {
    this.trail.forgetRoot();
    this.next = 0;
  }

  /** Adds to `into` the atoms that implied `(b, v)` by `reason`. */
  explain(reason: number, v: number, into: AtomList): void {
    if (reason === NO_REASON) return;
    const kind = reason & 3;
    const payload = reason >> 2;
    if (kind === BY_LIST) this.trail.readList(payload, into);
    else if (kind === BY_ARC) this.differences.explain(payload, v, into);
    else this.nogoods.explain(payload, into);
  }
}
