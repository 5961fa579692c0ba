/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import { lower, upper } from './atoms';
import { always, type Difference } from './differences';
import { addToPaths, longestPaths, NO_PATH } from './longest-paths';
import type { ExactProblem } from './problem';

/** Two tasks that cannot overlap, with the time needed between them either way. */
export interface Pair {
  readonly first: number;
  readonly second: number;
  readonly between: number;
  readonly back: number;
  /** A setup asks for it; else a resource keeps them apart even if the pair is left out. */
  readonly asked: boolean;
}

/** Where a task's start and end stand among the variables. */
export interface Places {
  readonly start: readonly number[];
  readonly end: readonly number[];
  readonly endOffset: readonly number[];
}

/** More variables than this are not closed over (the closure takes their number cubed). */
const CLOSED_UP_TO = 420;
/** More pairs than this get no order of their own; timetable and disjunctive still keep them apart. */
const MOST_PAIRS = 20_000;

/** All pairs that some resource or a setup keeps apart. */
export function pairsOf(problem: ExactProblem): Pair[] {
  const found = new Map<number, Pair>();
  const count = problem.tasks.length;
  for (const { first, second, between, back } of problem.setups) {
    const turned = first > second;
    const key = turned ? second * count + first : first * count + second;
    const old = found.get(key);
    found.set(key, {
      first: Math.min(first, second),
      second: Math.max(first, second),
      between: Math.max(old?.between ?? -Infinity, turned ? back : between),
      back: Math.max(old?.back ?? -Infinity, turned ? between : back),
      asked: true,
    });
  }
  for (const { capacity, demands } of problem.resources) {
    const most = Math.max(0, ...capacity.map(({ units }) => units));
    const users = demands.flatMap((demand, task) =>
      demand > 0 && problem.tasks[task]!.minLength > 0 ? [task] : [],
    );
    for (const first of users) {
      for (const second of users) {
        if (second <= first || demands[first]! + demands[second]! <= most) continue;
        const key = first * count + second;
        const old = found.get(key);
        found.set(key, {
          first,
          second,
          between: Math.max(0, old?.between ?? 0),
          back: Math.max(0, old?.back ?? 0),
          asked: old?.asked ?? false,
        });
      }
    }
  }
  return [...found.values()].sort((a, b) => a.first - b.first || a.second - b.second);
}

/** What is known of the pairs before any search. */
export interface SettledPairs {
  /** Pairs whose order is open. */
  readonly open: readonly Pair[];
  /** Orders that the lags leave no choice about. */
  readonly forced: readonly Difference[];
  /** All pairs whose order is settled: [before, after]. */
  readonly ordered: readonly (readonly [number, number])[];
}

/** The difference by which `task` is over before `next` begins. */
export function after(places: Places, task: number, next: number, gap: number): Difference {
  const weight = places.endOffset[task]! + gap;
  return always(places.end[task]!, places.start[next]!, weight);
}

/**
 * Settles every pair of which lags allow one order only, again and again, since each order closes more paths
 * (as in Brucker, Knust, Schoo, Thiele, EJOR 107, 1998). Null if that leaves some pair no order at all.
 */
export function settlePairs(
  pairs: readonly Pair[],
  places: Places,
  variables: number,
  differences: readonly Difference[],
): SettledPairs | null {
  if (variables > CLOSED_UP_TO) {
    const some = pairs.length > MOST_PAIRS ? pairs.filter(({ asked }) => asked) : pairs;
    return { open: some, forced: [], ordered: [] };
  }
  const path = longestPaths(variables, differences);
  if (path === null) return null;
  const impossible = ({ from, to, weight }: Difference): boolean => {
    const back = path[to * variables + from]!;
    return back !== NO_PATH && back + weight > 0;
  };
  const known = ({ from, to, weight }: Difference): boolean =>
    path[from * variables + to]! >= weight;
  const forced: Difference[] = [];
  const ordered: [number, number][] = [];
  let open = [...pairs];
  for (;;) {
    const left: Pair[] = [];
    for (const pair of open) {
      const forth = after(places, pair.first, pair.second, pair.between);
      const back = after(places, pair.second, pair.first, pair.back);
      const { first, second } = pair;
      if (known(forth) || known(back)) {
        ordered.push(known(forth) ? [first, second] : [second, first]);
        continue;
      }
      const noForth = impossible(forth);
      const noBack = impossible(back);
      if (noForth && noBack) return null;
      if (!noForth && !noBack) {
        left.push(pair);
        continue;
      }
      const only = noForth ? back : forth;
      forced.push(only);
      ordered.push(noForth ? [second, first] : [first, second]);
      if (!addToPaths(path, variables, only.from, only.to, only.weight)) return null;
    }
    if (left.length === open.length) break;
    open = left;
  }
  return {
    open: open.length > MOST_PAIRS ? open.filter(({ asked }) => asked) : open,
    forced,
    ordered,
  };
}

/** In `ordersOf`: this order always holds, or nothing is known of it. */
export const ALWAYS = -1;
export const UNKNOWN = -2;

/**
 * For each two tasks the bound that is 1 or more (lower bound of an order) or 0 (upper bound) where the first
 * is over before the second begins: `[before * count + after]`, or `ALWAYS`, or `UNKNOWN`.
 */
export function ordersOf(
  count: number,
  { open, ordered }: SettledPairs,
  firstOrder: number,
): Int32Array {
  const orders = new Int32Array(count * count).fill(UNKNOWN);
  for (const [before, next] of ordered) orders[before * count + next] = ALWAYS;
  open.forEach(({ first, second }, index) => {
    orders[first * count + second] = lower(firstOrder + index);
    orders[second * count + first] = upper(firstOrder + index);
  });
  return orders;
}
