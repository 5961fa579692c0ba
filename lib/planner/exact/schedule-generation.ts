/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import { UnitsInUse } from './units-in-use';

/** The problem as a schedule generator sees it: fixed lengths, starts only. */
export interface StartsProblem {
  readonly lengths: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
  /** `[i, j, w]`: start of j ≥ start of i + w. */
  readonly lags: readonly (readonly [number, number, number])[];
  readonly resources: readonly {
    readonly capacity: number;
    readonly demands: readonly number[];
    /** Parts in use from the beginning: start, length, units. */
    readonly taken: readonly (readonly [number, number, number])[];
  }[];
  /** `[i, j, between, back]`: j starts `between` after i ends, or i starts `back` after j ends. */
  readonly setups: readonly (readonly [number, number, number, number])[];
}

/** Repairs of maximum lags in one run, at most; fewer where each run takes long. */
const REPAIRS = 60;
const REPAIRED_TASKS = 12_000;

/**
 * Serial schedule generation: in the order of priorities each task gets the earliest start that lags,
 * resources and setups leave (Kelley 1963; Kolisch, EJOR 90, 1996). Where a maximum lag has left no start,
 * the tasks that hold it there are moved later by what is missing and the run begins again (unscheduling as
 * in Franck, Neumann, Schwindt, OR Spektrum 23, 2001), up to a number of repairs. Where these do not suffice,
 * a second try places first what a placed task holds, and takes back only what was placed since the holder.
 *
 * Invariant: `early` and `late` of every task follow from the starts placed so far over all lags.
 */
export class ScheduleGenerator {
  readonly count: number;
  /** Tasks placed so far, in all runs and repairs. */
  placings = 0;
  private readonly early: Int32Array;
  private readonly late: Int32Array;
  private readonly base: Int32Array;
  private readonly start: Int32Array;
  private readonly placed: Uint8Array;
  private readonly waits: Int32Array;
  private readonly after: [number, number][][];
  private readonly before: [number, number][][];
  private readonly setups: [number, number, number][][];
  private readonly uses: [number, number][][];
  private readonly inUse: UnitsInUse[];
  private readonly work: number[] = [];
  /** What is placed, in the order of placing. */
  private readonly order: Int32Array;
  private placedSize = 0;

  constructor(private readonly problem: StartsProblem) {
    const { lengths, lags, resources, setups } = problem;
    const count = lengths.length;
    this.count = count;
    this.early = new Int32Array(count);
    this.late = new Int32Array(count);
    this.base = new Int32Array(count);
    this.start = new Int32Array(count);
    this.placed = new Uint8Array(count);
    this.order = new Int32Array(count);
    this.waits = new Int32Array(count);
    this.after = Array.from(lengths, () => []);
    this.before = Array.from(lengths, () => []);
    this.setups = Array.from(lengths, () => []);
    this.uses = lengths.map((length, task) =>
      resources.flatMap(({ demands }, resource): [number, number][] =>
        length > 0 && demands[task]! > 0 ? [[resource, demands[task]!]] : [],
      ),
    );
    for (const [i, j, w] of lags) {
      this.after[i]!.push([j, w]);
      this.before[j]!.push([i, w]);
    }
    for (const [i, j, between, back] of setups) {
      this.setups[i]!.push([j, back, between]);
      this.setups[j]!.push([i, between, back]);
    }
    this.inUse = resources.map(
      ({ capacity, taken }) => new UnitsInUse(capacity, count + taken.length),
    );
  }

  /** Starts in the order of `priority` (the least first), or null if the repairs did not suffice. */
  run(priority: ArrayLike<number>): Int32Array | null {
    const repairs = Math.min(REPAIRS, Math.ceil(REPAIRED_TASKS / (this.count + 1)));
    this.base.set(this.problem.low);
    for (let repair = 0; repair <= repairs; repair += 1) {
      if (!this.begin()) return null;
      const stuck = this.place(priority, false);
      if (stuck === -1) return this.start.slice();
      if (stuck === -2) return null;
    }
    this.base.set(this.problem.low);
    if (!this.begin()) return null;
    for (let repair = 0; repair <= REPAIRS + this.count / 4; repair += 1) {
      const stuck = this.place(priority, true);
      if (stuck === -1) return this.start.slice();
      if (stuck === -2 || !this.takeBack()) return null;
    }
    return null;
  }

  /** Nothing is placed. False if the lags alone leave some task no start. */
  private begin(): boolean {
    this.placed.fill(0);
    this.placedSize = 0;
    return this.renew();
  }

  /** Takes back all from the first placed task on that has to move. False if that leaves no start. */
  private takeBack(): boolean {
    const { early, start, placed, order, placedSize } = this;
    // What has to move moves what it depends on by maximum lags.
    if (!this.begin()) return false;
    let keep = 0;
    while (keep < placedSize && early[order[keep]!]! <= start[order[keep]!]!) keep += 1;
    for (let at = 0; at < keep; at += 1) placed[order[at]!] = 1;
    this.placedSize = keep;
    return this.renew();
  }

  /** `early`, `late`, `waits` and units in use from `base` and what is placed. */
  private renew(): boolean {
    const { count, early, late, placed, waits, start, work, order, problem } = this;
    this.inUse.forEach((inUse, resource) => {
      inUse.clear();
      for (const part of problem.resources[resource]!.taken) inUse.add(...part);
    });
    for (let at = 0; at < this.placedSize; at += 1) {
      const task = order[at]!;
      for (const [resource, units] of this.uses[task]!)
        this.inUse[resource]!.add(start[task]!, problem.lengths[task]!, units);
    }
    early.set(this.base);
    late.set(problem.high);
    work.length = 0;
    for (let task = 0; task < count; task += 1) {
      if (placed[task] === 1) {
        early[task] = start[task]!;
        late[task] = start[task]!;
      }
      waits[task] = 0;
      for (const [other, w] of this.before[task]!)
        if (w > 0 && placed[other] === 0) waits[task]! += 1;
      work.push(task);
    }
    return this.spread();
  }

  /** -1 if all are placed, -2 if no repair can help, else the task that was stuck; `base` is repaired. */
  private place(priority: ArrayLike<number>, heldFirst: boolean): number {
    const { count, early, late, waits, start, problem } = this;
    while (this.placedSize < count) {
      const task = this.nextOf(priority, heldFirst);
      if (task < 0) return -2;
      const time = this.earliest(task);
      if (time > late[task]!) return this.repair(task, time - late[task]!) ? task : -2;
      start[task] = time;
      this.placings += 1;
      this.placed[task] = 1;
      this.order[this.placedSize] = task;
      this.placedSize += 1;
      early[task] = time;
      late[task] = time;
      for (const [resource, units] of this.uses[task]!)
        this.inUse[resource]!.add(time, problem.lengths[task]!, units);
      for (const [other, w] of this.after[task]!) if (w > 0) waits[other]! -= 1;
      this.work.push(task);
      if (!this.spread()) return this.repair(task, 1) ? task : -2;
    }
    return -1;
  }

  /** The task to place next: by priority, or before that the most urgent whose latest start is held. */
  private nextOf(priority: ArrayLike<number>, heldFirst: boolean): number {
    const { count, late, placed, waits, problem } = this;
    let found = -1;
    let urgent = Infinity;
    for (let task = 0; task < count; task += 1) {
      if (placed[task] === 1 || waits[task]! > 0) continue;
      const limit = heldFirst && late[task]! < problem.high[task]! ? late[task]! : Infinity;
      if (found >= 0 && limit >= urgent) {
        if (limit > urgent || priority[task]! >= priority[found]!) continue;
      }
      found = task;
      urgent = limit;
    }
    return found;
  }

  /** Carries changes of `early` and `late` over all lags; false where a window is empty. */
  private spread(): boolean {
    const { early, late, work } = this;
    let rounds = 0;
    while (work.length > 0) {
      const task = work.pop()!;
      rounds += 1;
      if (early[task]! > late[task]! || rounds > 50 * this.count + 1000) {
        work.length = 0;
        return false;
      }
      for (const [other, w] of this.after[task]!) {
        if (early[task]! + w <= early[other]!) continue;
        early[other] = early[task]! + w;
        work.push(other);
      }
      for (const [other, w] of this.before[task]!) {
        if (late[task]! - w >= late[other]!) continue;
        late[other] = late[task]! - w;
        work.push(other);
      }
    }
    return true;
  }

  private earliest(task: number): number {
    const { placed, start, problem } = this;
    const length = problem.lengths[task]!;
    let time = this.early[task]!;
    for (;;) {
      const before = time;
      for (const [resource, units] of this.uses[task]!) {
        const problemResource = problem.resources[resource]!;
        if (units > problemResource.capacity) return 2 ** 30;
        for (;;) {
          const next = this.inUse[resource]!.firstTry(time, length, units);
          if (next === time) break;
          time = next;
        }
      }
      for (const [other, after, ahead] of this.setups[task]!) {
        if (placed[other] === 0) continue;
        const clear = start[other]! + problem.lengths[other]! + after;
        if (time < clear && time + length + ahead > start[other]!) time = clear;
      }
      if (time === before) return time;
    }
  }

  /** Moves the placed tasks that hold `task` back later by what is missing. False if there are none. */
  private repair(task: number, missing: number): boolean {
    let moved = false;
    const { base, placed, start, problem } = this;
    const limit = this.late[task]!;
    // The holders: over chains of lags the latest start of `task` comes from placed tasks.
    const seen = new Set([task]);
    const queue: [number, number][] = [[task, limit]];
    for (let at = 0; at < queue.length; at += 1) {
      const [node, late] = queue[at]!;
      for (const [other, w] of this.after[node]!) {
        if (seen.has(other) || this.late[other]! - w > late) continue;
        seen.add(other);
        if (placed[other] === 0) queue.push([other, this.late[other]!]);
        else if (start[other]! + missing <= problem.high[other]!) {
          base[other] = Math.max(base[other]!, start[other]! + missing);
          moved = true;
        }
      }
    }
    return moved;
  }
}

/** The same problem with time running backwards from `horizon`. */
export function mirrored(problem: StartsProblem, horizon: number): StartsProblem {
  const { lengths } = problem;
  const turn = (task: number, start: number): number => horizon - start - lengths[task]!;
  return {
    lengths,
    low: problem.high.map((high, task) => turn(task, high)),
    high: problem.low.map((low, task) => turn(task, low)),
    lags: problem.lags.map(([i, j, w]) => [j, i, w + lengths[j]! - lengths[i]!] as const),
    resources: problem.resources.map(({ capacity, demands, taken }) => ({
      capacity,
      demands,
      taken: taken.map(
        ([time, length, units]) => [horizon - time - length, length, units] as const,
      ),
    })),
    setups: problem.setups.map(([i, j, between, back]) => [j, i, between, back] as const),
  };
}
