import { closure, gapBetween, NEVER } from '#lib/planner/changeovers';
import { compileResources } from '#lib/planner/compile-resources';
import {
  lowerBound,
  ORIGIN,
  type Compiled,
  type Item,
  type Moment,
  type Pair,
  type SpanUse,
} from '#lib/planner/compiled';
import type { Anchor, PlannerProblem, Task } from '#lib/planner/problem';
import { TimeNet } from '#lib/planner/time-net';

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

function leftOut(set: ReadonlySet<string> | 'all', id: string): boolean {
  return set === 'all' || set.has(id);
}

function groupIndex(problem: PlannerProblem, task: Task): number {
  return task.group === null ? -1 : problem.tasks.findIndex((other) => other.group === task.group);
}
