/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import { always, type Difference } from './differences';
import { addToPaths, longestPaths, NO_PATH } from './longest-paths';
import type { ExactProblem } from './problem';

/** Two tasks that cannot overlap, with the time needed between them either way. */
export interface Pair {
  readonly first: number;
  readonly second: number;
  readonly between: number;
  readonly back: number;
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
    return { open: pairs.length > MOST_PAIRS ? pairs.filter(hasGap) : pairs, forced: [] };
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
  let open = [...pairs];
  for (;;) {
    const left: Pair[] = [];
    for (const pair of open) {
      const forth = after(places, pair.first, pair.second, pair.between);
      const back = after(places, pair.second, pair.first, pair.back);
      if (known(forth) || known(back)) continue;
      const noForth = impossible(forth);
      const noBack = impossible(back);
      if (noForth && noBack) return null;
      if (!noForth && !noBack) {
        left.push(pair);
        continue;
      }
      const only = noForth ? back : forth;
      forced.push(only);
      if (!addToPaths(path, variables, only.from, only.to, only.weight)) return null;
    }
    if (left.length === open.length) break;
    open = left;
  }
  return { open: open.length > MOST_PAIRS ? open.filter(hasGap) : open, forced };
}

function hasGap({ between, back }: Pair): boolean {
  return between !== 0 || back !== 0;
}
