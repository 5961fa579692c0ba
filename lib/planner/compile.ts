import type { Anchor, PlannerProblem, StatefulResource, Task } from '#lib/planner/problem';
import { NONE, TimeNet } from '#lib/planner/time-net';

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

/** Rules that the caller leaves out, to learn what a plan without them looks like. */
export interface Relaxed {
  readonly latest: ReadonlySet<string> | 'all';
  readonly maxLags: ReadonlySet<string> | 'all';
  readonly spanLimits: ReadonlySet<string> | 'all';
}

export const NOTHING_RELAXED: Relaxed = {
  latest: new Set(),
  maxLags: new Set(),
  spanLimits: new Set(),
};

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

/** A gap that no day is long enough for: the order is forbidden. */
export const NEVER = 2 ** 28;
const ORIGIN = 0;

/**
 * Turns a problem into points and bounds. Point 0 is time 0, `sink` is the end of the last task.
 * Rules are added in the order minimum lags, earliest starts, latest ends, maximum lags; one that
 * contradicts those before it is left out and named in `clashes`.
 */
export function compile(problem: PlannerProblem, relaxed: Relaxed): Compiled {
  const clashes: string[] = [];
  const starts: Moment[] = [];
  const ends: Moment[] = [];
  let size = 1;
  for (const task of problem.tasks) {
    const start = { node: size, offset: 0 };
    size += 1;
    starts.push(start);
    if (task.minLength === task.maxLength) {
      ends.push({ node: start.node, offset: task.minLength });
    } else {
      ends.push({ node: size, offset: 0 });
      size += 1;
    }
  }
  const sink = size;
  const root = new TimeNet(size + 1);
  const indexOf = new Map(problem.tasks.map((task, index) => [task.id, index]));
  const moment = (id: string, anchor: Anchor): Moment => {
    const found = (anchor === 'start' ? starts : ends)[indexOf.get(id) ?? -1];
    if (found === undefined) throw new Error(`No task "${id}" in the problem`);
    return found;
  };
  const after = (from: Moment, to: Moment, gap: number, id: string): void => {
    if (!root.add(from.node, to.node, from.offset + gap - to.offset)) clashes.push(id);
  };
  const zero: Moment = { node: ORIGIN, offset: 0 };
  const last: Moment = { node: sink, offset: 0 };

  problem.tasks.forEach((task, index) => {
    const start = starts[index] ?? zero;
    const end = ends[index] ?? zero;
    after(zero, start, 0, task.id);
    after(start, end, task.minLength, task.id);
    after(end, start, -task.maxLength, task.id);
    after(end, last, 0, task.id);
  });
  for (const lag of problem.lags) {
    if (lag.min === null) continue;
    after(moment(lag.from, lag.fromAnchor), moment(lag.to, lag.toAnchor), lag.min, lag.id);
  }
  const items: Item[] = problem.tasks.map((task, index) => ({
    task: index,
    start: starts[index] ?? zero,
    end: ends[index] ?? zero,
    group: groupIndex(problem, task),
  }));
  const resources = compileResources(problem, items, clashes);
  for (const { resource, uses } of resources.stateful) {
    const times = closure(resource);
    for (const use of uses) {
      const item = items[use.item];
      const warm = gapBetween(times, resource.initial, use.state);
      if (item !== undefined && warm > 0 && warm < NEVER) {
        after(zero, item.start, warm, resource.id);
      }
    }
  }
  problem.tasks.forEach((task, index) => {
    if (task.notBefore !== null) after(zero, starts[index] ?? zero, task.notBefore, task.id);
  });
  problem.tasks.forEach((task, index) => {
    if (task.endBy !== null && !leftOut(relaxed.latest, task.id)) {
      after(ends[index] ?? zero, zero, -task.endBy, task.id);
    }
  });
  for (const lag of problem.lags) {
    if (lag.max === null || leftOut(relaxed.maxLags, lag.id)) continue;
    after(moment(lag.to, lag.toAnchor), moment(lag.from, lag.fromAnchor), -lag.max, lag.id);
  }
  const spans: SpanUse[] = [];
  for (const limit of problem.spanLimits) {
    const list = limit.spans.map((span) => ({
      from: moment(span.from, span.fromAnchor),
      to: moment(span.to, span.toAnchor),
    }));
    const least = list.reduce(
      (sum, span) => sum + Math.max(0, lowerBound(root, span.from, span.to)),
      0,
    );
    const possible = least <= limit.limit;
    if (!possible) clashes.push(limit.id);
    // A limit that is left out, or that cannot be kept, still says what should be short.
    const kept = possible && !leftOut(relaxed.spanLimits, limit.id);
    spans.push({ id: limit.id, limit: kept ? limit.limit : NEVER, spans: list });
  }
  return {
    root,
    sink,
    items,
    pairTable: Int32Array.from(resources.pairs.flatMap((pair) => placesOf(pair, items, root.size))),
    allPairs: [...resources.pairs.keys()],
    ...resources,
    spans,
    clashes: [...new Set(clashes)],
  };
}

function placesOf(pair: Pair, items: readonly Item[], size: number): number[] {
  const a = items[pair.a];
  const b = items[pair.b];
  if (a === undefined || b === undefined) throw new Error('A pair names an item that is not there');
  return [
    a.end.node * size + b.start.node,
    b.start.node * size + a.end.node,
    a.end.offset + pair.gapAB - b.start.offset,
    b.end.node * size + a.start.node,
    a.start.node * size + b.end.node,
    b.end.offset + pair.gapBA - a.start.offset,
  ];
}

/** Lower bound on `to − from`; `NONE` or less where there is none. */
export function lowerBound(net: TimeNet, from: Moment, to: Moment): number {
  const low = net.low[from.node * net.size + to.node] as number;
  return low === NONE ? NONE : low + to.offset - from.offset;
}

/** Whole changeover times through any states on the way; missing pairs are `NEVER`. */
export function closure(resource: StatefulResource): Map<string, Map<string, number>> {
  const states = [
    ...new Set([
      resource.initial,
      ...Object.keys(resource.changeover),
      ...Object.values(resource.changeover).flatMap((row) => Object.keys(row)),
    ]),
  ];
  const times = new Map(
    states.map((from) => [
      from,
      new Map(states.map((to) => [to, direct(resource, from, to)] as const)),
    ]),
  );
  for (const via of states) {
    for (const from of states) {
      for (const to of states) {
        const through = gapBetween(times, from, via) + gapBetween(times, via, to);
        if (through < gapBetween(times, from, to)) times.get(from)?.set(to, through);
      }
    }
  }
  return times;
}

/** The stated changeover time; 0 to the same state, `NEVER` where the pair is absent. */
export function direct(resource: StatefulResource, from: string, to: string): number {
  return from === to ? 0 : (resource.changeover[from]?.[to] ?? NEVER);
}

function gapBetween(times: Map<string, Map<string, number>>, from: string, to: string): number {
  return from === to ? 0 : (times.get(from)?.get(to) ?? NEVER);
}

function leftOut(set: ReadonlySet<string> | 'all', id: string): boolean {
  return set === 'all' || set.has(id);
}

function groupIndex(problem: PlannerProblem, task: Task): number {
  return task.group === null ? -1 : problem.tasks.findIndex((other) => other.group === task.group);
}

function compileResources(
  problem: PlannerProblem,
  items: Item[],
  clashes: string[],
): { pairs: Pair[]; shared: SharedUse[]; stateful: StateUse[] } {
  const gaps = new Map<string, Pair>();
  const exclude = (a: number, b: number, gapAB: number, gapBA: number): void => {
    const known = gaps.get(`${a}-${b}`);
    gaps.set(`${a}-${b}`, {
      a,
      b,
      gapAB: Math.max(gapAB, known?.gapAB ?? 0),
      gapBA: Math.max(gapBA, known?.gapBA ?? 0),
    });
  };
  const shared: SharedUse[] = [];
  for (const resource of problem.resources) {
    const units = Math.max(0, ...resource.capacity.map((step) => step.units));
    const uses: { item: number; demand: number }[] = [];
    problem.tasks.forEach((task, index) => {
      const demand = task.demands[resource.id] ?? 0;
      if (demand > units) clashes.push(resource.id);
      else if (demand > 0 && task.maxLength > 0) uses.push({ item: index, demand });
    });
    if (uses.length === 0) continue;
    resource.capacity.forEach((step, index) => {
      const missing = units - step.units;
      if (missing <= 0) return;
      const until = resource.capacity[index + 1]?.from ?? NEVER;
      uses.push({ item: items.length, demand: missing });
      items.push({
        task: -1,
        start: { node: ORIGIN, offset: step.from },
        end: { node: ORIGIN, offset: until },
        group: -1,
      });
    });
    let several = false;
    uses.forEach((one, position) => {
      for (const other of uses.slice(position + 1)) {
        const fixed = (items[one.item]?.task ?? -1) < 0 && (items[other.item]?.task ?? -1) < 0;
        if (fixed) continue;
        if (one.demand + other.demand > units) exclude(one.item, other.item, 0, 0);
        else several = true;
      }
    });
    if (several) shared.push({ id: resource.id, units, uses });
  }
  const stateful: StateUse[] = [];
  for (const resource of problem.stateful) {
    const uses: { item: number; state: string }[] = [];
    problem.tasks.forEach((task, index) => {
      if (task.needs?.resource === resource.id) uses.push({ item: index, state: task.needs.state });
    });
    if (uses.length === 0) continue;
    const times = closure(resource);
    for (const use of uses) {
      if (gapBetween(times, resource.initial, use.state) >= NEVER) clashes.push(resource.id);
    }
    uses.forEach((one, position) => {
      for (const other of uses.slice(position + 1)) {
        if (one.state === other.state) continue;
        exclude(
          one.item,
          other.item,
          gapBetween(times, one.state, other.state),
          gapBetween(times, other.state, one.state),
        );
      }
    });
    stateful.push({ resource, uses });
  }
  return { pairs: [...gaps.values()], shared, stateful };
}
