/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import type { Occupation } from './occupation';
import type { Trail } from './trail';

/**
 * The tasks of a unary resource as seen with time running forwards or backwards, so that every rule is written
 * once, for earliest starts. Backwards the earliest start is the latest end negated, and so on.
 *
 * `early[k]` and `late[k]` are the earliest start and latest end at the last `read`; `byEarly` the tasks in
 * ascending order of earliest start. They may lag behind the trail: what they say is still true.
 */
export class UnaryView {
  readonly count: number;
  readonly length: Int32Array;
  readonly early: Int32Array;
  readonly late: Int32Array;
  readonly byEarly: Int32Array;
  private readonly earlyBound: Int32Array;
  private readonly earlyOffset: Int32Array;
  private readonly lateBound: Int32Array;
  private readonly lateOffset: Int32Array;

  constructor(occupations: readonly Occupation[], forwards: boolean) {
    this.count = occupations.length;
    this.length = Int32Array.from(occupations, ({ length }) => length);
    this.early = new Int32Array(this.count);
    this.late = new Int32Array(this.count);
    this.byEarly = Int32Array.from(occupations, (_, index) => index);
    const starts = Int32Array.from(occupations, ({ start }) => 2 * start);
    const ends = Int32Array.from(occupations, ({ end }) => 2 * end + 1);
    const none = new Int32Array(this.count);
    const offsets = Int32Array.from(occupations, ({ endOffset }) => -endOffset);
    this.earlyBound = forwards ? starts : ends;
    this.earlyOffset = forwards ? none : offsets;
    this.lateBound = forwards ? ends : starts;
    this.lateOffset = forwards ? offsets : none;
  }

  read({ bound }: Trail): void {
    const { count, early, late, byEarly } = this;
    for (let k = 0; k < count; k += 1) {
      early[k] = bound[this.earlyBound[k]!]! + this.earlyOffset[k]!;
      late[k] = -(bound[this.lateBound[k]!]! + this.lateOffset[k]!);
    }
    for (let index = 1; index < count; index += 1) {
      const task = byEarly[index]!;
      const value = early[task]!;
      let at = index - 1;
      while (at >= 0 && early[byEarly[at]!]! > value) {
        byEarly[at + 1] = byEarly[at]!;
        at -= 1;
      }
      byEarly[at + 1] = task;
    }
  }

  /** Adds "task starts at `time` or later" to the reason. */
  sayEarly(trail: Trail, task: number, time: number): void {
    trail.say(this.earlyBound[task]!, time - this.earlyOffset[task]!);
  }

  /** Adds "task is over by `time`" to the reason. */
  sayLate(trail: Trail, task: number, time: number): void {
    trail.say(this.lateBound[task]!, -time - this.lateOffset[task]!);
  }

  /** Whether the task's start is by now known to be at least `time`. */
  isEarly({ bound }: Trail, task: number, time: number): boolean {
    return bound[this.earlyBound[task]!]! + this.earlyOffset[task]! >= time;
  }

  /** Makes the task start at `time` or later, for the reason said. */
  push(trail: Trail, task: number, time: number): boolean {
    return trail.raise(this.earlyBound[task]!, time - this.earlyOffset[task]!, trail.said());
  }
}
