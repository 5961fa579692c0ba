/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */

const NEVER = -(2 ** 29);

/**
 * The Θ-Λ-tree of Vilím ("Edge finding filtering algorithm for discrete cumulative resources", 2009, for the
 * unary case: Vilím, CP 2004). Places are leaves in ascending order of earliest start. Θ holds tasks that all
 * must run, Λ tasks of which one may be added.
 *
 * Invariant of every node, for the tasks below it: `sum` and `end` are the length of Θ and the earliest time by
 * which it can be over; `sumWith` and `endWith` are the greatest of these with at most one task of Λ, which
 * is `bySum` and `byEnd` (-1 for none).
 */
export class ThetaLambdaTree {
  private readonly leaves: number;
  private readonly sum: Int32Array;
  private readonly end: Int32Array;
  private readonly sumWith: Int32Array;
  private readonly endWith: Int32Array;
  private readonly bySum: Int32Array;
  private readonly byEnd: Int32Array;

  /** @param places how many places there are */
  constructor(places: number) {
    let leaves = 1;
    while (leaves < places) leaves *= 2;
    this.leaves = leaves;
    const make = (): Int32Array => new Int32Array(2 * leaves);
    this.sum = make();
    this.end = make();
    this.sumWith = make();
    this.endWith = make();
    this.bySum = make();
    this.byEnd = make();
  }

  /** Θ and Λ are empty. */
  clear(): void {
    this.sum.fill(0);
    this.end.fill(NEVER);
  }

  /** When Θ can be over at the earliest. */
  get thetaEnd(): number {
    return this.end[1]!;
  }

  /** When Θ with the worst task of Λ can be over at the earliest, and the place of that task. */
  get lambdaEnd(): number {
    return this.endWith[1]!;
  }

  get lambdaPlace(): number {
    return this.byEnd[1]!;
  }

  /** Puts a task into Θ. What the tree says with Λ is not kept up until `beginLambda`. */
  add(place: number, early: number, length: number): void {
    const { sum, end } = this;
    let node = this.leaves + place;
    sum[node] = length;
    end[node] = early + length;
    for (node >>= 1; node > 0; node >>= 1) {
      const left = 2 * node;
      const right = left + 1;
      sum[node] = sum[left]! + sum[right]!;
      const after = end[left]! + sum[right]!;
      end[node] = after > end[right]! ? after : end[right]!;
    }
  }

  /** From now on Λ is kept up; it is empty. */
  beginLambda(): void {
    this.sumWith.set(this.sum);
    this.endWith.set(this.end);
    this.bySum.fill(-1);
    this.byEnd.fill(-1);
  }

  /** Moves the task at a place from Θ to Λ. */
  toLambda(place: number): void {
    const node = this.leaves + place;
    this.sum[node] = 0;
    this.end[node] = NEVER;
    this.bySum[node] = place;
    this.byEnd[node] = place;
    this.renew(node >> 1);
  }

  /** Takes the task at a place out of Λ. */
  drop(place: number): void {
    const node = this.leaves + place;
    this.sumWith[node] = 0;
    this.endWith[node] = NEVER;
    this.bySum[node] = -1;
    this.byEnd[node] = -1;
    this.renew(node >> 1);
  }

  private renew(from: number): void {
    const { sum, end, sumWith, endWith, bySum, byEnd } = this;
    for (let node = from; node > 0; node >>= 1) {
      const left = 2 * node;
      const right = left + 1;
      const rightSum = sum[right]!;
      sum[node] = sum[left]! + rightSum;
      const after = end[left]! + rightSum;
      end[node] = after > end[right]! ? after : end[right]!;
      const sumLeft = sumWith[left]! + rightSum;
      const sumRight = sum[left]! + sumWith[right]!;
      if (sumLeft >= sumRight) {
        sumWith[node] = sumLeft;
        bySum[node] = bySum[left]!;
      } else {
        sumWith[node] = sumRight;
        bySum[node] = bySum[right]!;
      }
      let most = endWith[right]!;
      let by = byEnd[right]!;
      const addedLeft = endWith[left]! + rightSum;
      if (addedLeft > most) {
        most = addedLeft;
        by = byEnd[left]!;
      }
      const addedRight = end[left]! + sumWith[right]!;
      if (addedRight > most) {
        most = addedRight;
        by = bySum[right]!;
      }
      endWith[node] = most;
      byEnd[node] = by;
    }
  }
}
