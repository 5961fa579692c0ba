import type { StatefulResource } from '#lib/planner/problem';
import { NONE, type TimeNet } from '#lib/planner/time-net';

/** The point of the net that is time 0. */
export const ORIGIN = 0;

/** A moment as a point of the net plus a fixed offset (the end of a task of fixed length). */
export interface Moment {
  readonly node: number;
  readonly offset: number;
}

/** Something that occupies resources: a task, or (task −1) a stretch in which units are withdrawn. */
export interface Item {
  readonly task: number;
  readonly start: Moment;
  readonly end: Moment;
  readonly group: number;
}

/** Two items that may not overlap: b at least `gapAB` after a's end, or a at least `gapBA` after b's. */
export interface Pair {
  readonly a: number;
  readonly b: number;
  readonly gapAB: number;
  readonly gapBA: number;
}

/** Numbers that `Compiled.pairTable` has for each pair. */
export const PAIR_COLUMNS = 6;

/** A resource of several units and who takes how many. */
export interface SharedUse {
  readonly id: string;
  readonly units: number;
  readonly uses: readonly { readonly item: number; readonly demand: number }[];
}

/** A stateful resource, the items that need it and the state that each needs. */
export interface StateUse {
  readonly resource: StatefulResource;
  readonly uses: readonly { readonly item: number; readonly state: string }[];
}

export interface SpanUse {
  readonly id: string;
  readonly limit: number;
  readonly spans: readonly { readonly from: Moment; readonly to: Moment }[];
}

/** The problem as points, bounds and sets of items that exclude each other. */
export interface Compiled {
  readonly root: TimeNet;
  readonly sink: number;
  readonly items: readonly Item[];
  readonly pairs: readonly Pair[];
  /**
   * Where each pair stands in a net, in one flat table, since this is read far more than all else:
   * at a–b, back a–b, need a–b, then the same for b–a. The order a–b holds if `low[at] ≥ need` and is
   * still possible if `low[back] ≤ −need`.
   */
  readonly pairTable: Int32Array;
  /** The indices of all pairs. */
  readonly allPairs: readonly number[];
  readonly shared: readonly SharedUse[];
  readonly stateful: readonly StateUse[];
  readonly spans: readonly SpanUse[];
  /** Ids of rules that contradict those before them on times alone, or that no capacity can meet. */
  readonly clashes: readonly string[];
}

/** Lower bound on `to − from`; `NONE` or less where there is none. */
export function lowerBound(net: TimeNet, from: Moment, to: Moment): number {
  const low = net.low[from.node * net.size + to.node] as number;
  return low === NONE ? NONE : low + to.offset - from.offset;
}
