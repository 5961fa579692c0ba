/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import { lower, upper } from './atoms';
import { always, type Difference } from './differences';
import { Draft } from './draft';
import { Engine } from './engine';
import { GoalParts } from './goal-parts';
import { longestPaths, NO_PATH } from './longest-paths';
import type { Occupation } from './occupation';
import { cliquesOf, gapsAfter } from './cliques';
import { EdgeFinding } from './edge-finding';
import { Presence, setApart } from './optional';
import { after, ordersOf, pairsOf, settlePairs, type Pair, type Places } from './pairs';
import { Predecessors } from './predecessors';
import type { Event, ExactPlan, ExactProblem } from './problem';
import { Rows } from './rows';
import { addStates, plainSetups } from './states';
import { Timetable } from './timetable';

/** More variables than this are not closed over for the least lengths of spans. */
const CLOSED_UP_TO = 420;

/** A problem made into variables and propagators, with the way back from variables to a plan. */
export interface Model extends Places {
  readonly engine: Engine;
  /** The variable that each goal makes small. */
  readonly goals: readonly number[];
  /** Open pairs: the variable `firstOrder + k` is 1 where the first of pair `k` comes before the second. */
  readonly pairs: readonly Pair[];
  readonly firstOrder: number;
  /** What the search may decide on: starts, ends that are chosen, orders. */
  readonly chosen: readonly number[];
  /** By optional task: the variable that is 1 where it is in the plan. */
  readonly presence: ReadonlyMap<number, number>;
  /** The differences that always hold, forced orders included. */
  readonly differences: readonly Difference[];
  /** The problem as it is without what optional tasks ask where they are in the plan. */
  readonly plain: ExactProblem;
}

/** The plan that the variables now say, once all are fixed. */
export function planOf({ engine: { trail }, start, end, endOffset, presence }: Model): ExactPlan {
  const plan = {
    starts: start.map((variable) => trail.low(variable)),
    ends: end.map((variable, task) => trail.low(variable) + endOffset[task]!),
  };
  if (presence.size === 0) return plan;
  const absent = [...presence].flatMap(([task, flag]) => (trail.low(flag) === 0 ? [task] : []));
  return { ...plan, absent };
}

/**
 * Makes the engine for a problem, or null where that alone shows that there is no plan.
 * The problem must be without faults (`faultsOf`).
 */
export function modelOf(given: ExactProblem): Model | null {
  const apart = setApart({ ...given, setups: [...given.setups, ...plainSetups(given)] });
  const problem = apart.plain;
  const { tasks } = problem;
  const draft = new Draft();
  const places = placesIn(problem, draft);
  if (places === null) return null;
  const differences = differencesOf(problem, places);
  if (differences === null) return null;
  draft.differences.push(...differences);
  const pairs = pairsOf(problem);
  const settled = settlePairs(pairs, places, draft.lows.length, draft.differences);
  if (settled === null) return null;
  draft.differences.push(...settled.forced);

  draft.chosen.push(...new Set([...places.start, ...places.end]));
  const firstOrder = draft.lows.length;
  const plain = [...draft.differences];
  for (const { first, second, between, back } of settled.open) {
    const order = draft.make(0, 1);
    draft.chosen.push(order);
    const forth = after(places, first, second, between);
    draft.differences.push({ ...forth, ifBound: lower(order), ifValue: 1 });
    draft.differences.push({
      ...after(places, second, first, back),
      ifBound: upper(order),
      ifValue: 0,
    });
  }
  const orders = ordersOf(tasks.length, settled, firstOrder);
  const presence = new Presence(draft, places, given, apart.optional);
  presence.addApart(apart);
  const rows = new Rows(draft, given, presence, orders, pairs);
  addStates(given, draft, presence, rows);
  const parts = new GoalParts(draft, presence, rows, problem, leastOf(given, firstOrder, plain));
  const goals = problem.goals.map((goal) => parts.goal(goal));
  for (const limit of problem.spanSums ?? []) parts.limit(limit);
  for (const choice of problem.choices ?? []) parts.choice(choice);
  if (!addResources(problem, places, draft)) return null;

  const lengths = tasks.map(({ minLength }) => minLength);
  const single = problem.resources.filter(({ capacity }) =>
    capacity.every(({ units }) => units < 2),
  );
  for (const members of cliquesOf(lengths, pairs, single.length + 2)) {
    const gaps = gapsAfter(members, pairs);
    const occupations = members.map((task, index) => {
      const { length, endOffset, ...rest } = occupationOf(problem, places, task, 1);
      return { ...rest, length: length + gaps[index]!, endOffset: endOffset + gaps[index]! };
    });
    const name = `${members.length} tasks one at a time`;
    const atoms = (after: number, before: number): number =>
      orders[members[before]! * tasks.length + members[after]!]!;
    draft.propagators.push(new EdgeFinding(name, occupations));
    draft.propagators.push(new Predecessors(name, occupations, atoms));
  }
  const engine = new Engine({
    lows: draft.lows,
    highs: draft.highs,
    differences: draft.differences,
    propagators: () => draft.finished(),
  });
  return {
    ...places,
    engine,
    goals,
    pairs: settled.open,
    firstOrder,
    chosen: draft.chosen,
    presence: presence.all,
    differences: plain,
    plain: problem,
  };
}

/** The variables of all starts and ends; null where a window is empty. */
function placesIn({ tasks, horizon, frozen }: ExactProblem, draft: Draft): Places | null {
  const fixedBy = new Map(frozen.map((one) => [one.task, one]));
  const start = tasks.map((task, index) => {
    const fixed = fixedBy.get(index)?.start;
    const low = Math.max(0, task.notBefore ?? 0);
    const high = Math.min(horizon, task.endBy ?? horizon) - task.minLength;
    return draft.make(Math.max(low, fixed ?? low), Math.min(high, fixed ?? high));
  });
  const end = tasks.map((task, index) => {
    if (task.minLength === task.maxLength) return start[index]!;
    const high = Math.min(horizon, task.endBy ?? horizon);
    const fixed = fixedBy.get(index)?.end ?? null;
    return draft.make(fixed ?? 0, Math.min(high, fixed ?? high));
  });
  const endOffset = tasks.map((task, index) => (end[index] === start[index] ? task.minLength : 0));
  if (draft.lows.some((low, variable) => low > draft.highs[variable]!)) return null;
  for (const [index, { end: fixed, start: begun }] of fixedBy) {
    const { minLength, maxLength } = tasks[index]!;
    if (fixed === null) continue;
    if (fixed - begun < minLength || fixed - begun > maxLength) return null;
  }
  return { start, end, endOffset };
}

/** How much later one variable is than another at least, where the problem has spans that ask for it. */
function leastOf(
  problem: ExactProblem,
  variables: number,
  differences: readonly Difference[],
): (from: number, to: number) => number {
  const spans =
    (problem.spanSums ?? []).length > 0 ||
    problem.goals.some((goal) => goal.kind === 'sum' && goal.spans.length > 0);
  const path = spans && variables <= CLOSED_UP_TO ? longestPaths(variables, differences) : null;
  return (from, to) => (path === null ? NO_PATH : path[from * variables + to]!);
}

/** The variable and the offset that give an event's time. */
export function placeOf(places: Places, { task, anchor }: Event): [number, number] {
  if (anchor === 'start') return [places.start[task]!, 0];
  return [places.end[task]!, places.endOffset[task]!];
}

function differencesOf(problem: ExactProblem, places: Places): Difference[] | null {
  const differences: Difference[] = [];
  problem.tasks.forEach(({ minLength, maxLength }, task) => {
    const from = places.start[task]!;
    const to = places.end[task]!;
    if (from === to) return;
    differences.push(always(from, to, minLength), always(to, from, -maxLength));
  });
  for (const { from, to, min } of problem.lags) {
    const [fromVariable, fromOffset] = placeOf(places, from);
    const [toVariable, toOffset] = placeOf(places, to);
    const weight = min + fromOffset - toOffset;
    if (fromVariable !== toVariable) differences.push(always(fromVariable, toVariable, weight));
    else if (weight > 0) return null;
  }
  return differences;
}

function occupationOf(
  problem: ExactProblem,
  { start, end, endOffset }: Places,
  task: number,
  units: number,
): Occupation {
  const length = problem.tasks[task]!.minLength;
  return { start: start[task]!, end: end[task]!, endOffset: endOffset[task]!, length, units };
}

function addResources(problem: ExactProblem, places: Places, draft: Draft): boolean {
  for (const { name, capacity, demands } of problem.resources) {
    const most = Math.max(0, ...capacity.map(({ units }) => units));
    const occupations: Occupation[] = [];
    for (const [task, units] of demands.entries()) {
      const { minLength, maxLength } = problem.tasks[task]!;
      if (units === 0 || maxLength === 0) continue;
      if (units > most) {
        // Only a length of nothing takes no units.
        if (minLength > 0) return false;
        draft.differences.push(always(places.end[task]!, places.start[task]!, 0));
        continue;
      }
      occupations.push(occupationOf(problem, places, task, units));
    }
    if (occupations.length === 0) continue;
    // What is missing at a time is taken by blocks that stand there and cannot move.
    for (const [index, { from, units }] of capacity.entries()) {
      const until = Math.min(capacity[index + 1]?.from ?? problem.horizon, problem.horizon);
      const begin = Math.max(0, from);
      if (units === most || until <= begin) continue;
      const at = draft.make(begin, begin);
      const length = until - begin;
      occupations.push({ start: at, end: at, endOffset: length, length, units: most - units });
    }
    if (occupations.length > 1) draft.propagators.push(new Timetable(name, occupations, most));
  }
  return true;
}
