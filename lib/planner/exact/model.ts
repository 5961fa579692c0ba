/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import { lower, upper } from './atoms';
import { Deviations, type CostTerm } from './deviations';
import { always, type Difference } from './differences';
import { Engine, type Propagator } from './engine';
import type { Occupation } from './occupation';
import { cliquesOf } from './cliques';
import { EdgeFinding } from './edge-finding';
import { after, ordersOf, pairsOf, settlePairs, type Pair, type Places } from './pairs';
import { Predecessors } from './predecessors';
import type { Event, ExactPlan, ExactProblem } from './problem';
import { Timetable } from './timetable';

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
  /** The differences that always hold, forced orders included. */
  readonly differences: readonly Difference[];
}

/** The plan that the variables now say, once all are fixed. */
export function planOf({ engine: { trail }, start, end, endOffset }: Model): ExactPlan {
  return {
    starts: start.map((variable) => trail.low(variable)),
    ends: end.map((variable, task) => trail.low(variable) + endOffset[task]!),
  };
}

/** Variables with their first bounds, as they are made one by one. */
class Variables {
  readonly lows: number[] = [];
  readonly highs: number[] = [];

  make(low: number, high: number): number {
    this.lows.push(low);
    this.highs.push(high);
    return this.lows.length - 1;
  }
}

/** Costs are kept below this, so that sums of two fit 32 bits. */
const MOST_COST = 2 ** 30 - 1;

/**
 * Makes the engine for a problem, or null where that alone shows that there is no plan.
 * The problem must be without faults (`faultsOf`).
 */
export function modelOf(problem: ExactProblem): Model | null {
  const { tasks, horizon } = problem;
  const variables = new Variables();
  const frozen = new Map(problem.frozen.map((one) => [one.task, one]));
  const start = tasks.map((task, index) => {
    const fixed = frozen.get(index)?.start;
    const low = Math.max(0, task.notBefore ?? 0);
    const high = Math.min(horizon, task.endBy ?? horizon) - task.minLength;
    return variables.make(Math.max(low, fixed ?? low), Math.min(high, fixed ?? high));
  });
  const end = tasks.map((task, index) => {
    if (task.minLength === task.maxLength) return start[index]!;
    const high = Math.min(horizon, task.endBy ?? horizon);
    const fixed = frozen.get(index)?.end ?? null;
    return variables.make(fixed ?? 0, Math.min(high, fixed ?? high));
  });
  const endOffset = tasks.map((task, index) => (end[index] === start[index] ? task.minLength : 0));
  for (let x = 0; x < variables.lows.length; x += 1) {
    if (variables.lows[x]! > variables.highs[x]!) return null;
  }
  for (const [index, { end: fixed, start: begun }] of frozen) {
    const { minLength, maxLength } = tasks[index]!;
    if (fixed === null) continue;
    if (fixed - begun < minLength || fixed - begun > maxLength) return null;
  }
  const places: Places = { start, end, endOffset };
  const differences = differencesOf(problem, places);
  if (differences === null) return null;
  const pairs = pairsOf(problem);
  const settled = settlePairs(pairs, places, variables.lows.length, differences);
  if (settled === null) return null;
  differences.push(...settled.forced);

  const chosen = [...new Set([...start, ...end])];
  const firstOrder = variables.lows.length;
  for (const { first, second, between, back } of settled.open) {
    const order = variables.make(0, 1);
    chosen.push(order);
    const forth = after(places, first, second, between);
    differences.push({ ...forth, ifBound: lower(order), ifValue: 1 });
    differences.push({
      ...after(places, second, first, back),
      ifBound: upper(order),
      ifValue: 0,
    });
  }
  const propagators: Propagator[] = [];
  const goals = problem.goals.map((goal) => {
    if (goal.kind === 'latest') {
      const total = variables.make(0, horizon);
      for (const event of goal.events) {
        const [variable, offset] = placeOf(places, event);
        differences.push(always(variable, total, offset));
      }
      return total;
    }
    const total = variables.make(0, MOST_COST);
    const terms = goal.of.flatMap(({ event, due, early, late }): CostTerm[] => {
      const [variable, offset] = placeOf(places, event);
      return [
        { bound: upper(variable), offset: due - offset, weight: early },
        { bound: lower(variable), offset: offset - due, weight: late },
      ].filter(({ weight }) => weight > 0);
    });
    propagators.push(new Deviations(goal.name, total, terms));
    return total;
  });
  if (!addResources(problem, places, variables, propagators, differences)) return null;
  const orders = ordersOf(tasks.length, settled, firstOrder);
  const lengths = tasks.map(({ minLength }) => minLength);
  const single = problem.resources.filter(({ capacity }) =>
    capacity.every(({ units }) => units < 2),
  );
  for (const members of cliquesOf(lengths, pairs, single.length + 2)) {
    const occupations = members.map((task) => occupationOf(problem, places, task, 1));
    const name = `${members.length} tasks one at a time`;
    const atoms = (after: number, before: number): number =>
      orders[members[before]! * tasks.length + members[after]!]!;
    propagators.push(new EdgeFinding(name, occupations));
    propagators.push(new Predecessors(name, occupations, atoms));
  }
  const engine = new Engine({
    lows: variables.lows,
    highs: variables.highs,
    differences,
    propagators: () => propagators,
  });
  const plain = differences.filter(({ ifBound }) => ifBound < 0);
  return { ...places, engine, goals, pairs: settled.open, firstOrder, chosen, differences: plain };
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

function addResources(
  problem: ExactProblem,
  places: Places,
  variables: Variables,
  propagators: Propagator[],
  differences: Difference[],
): boolean {
  for (const { name, capacity, demands } of problem.resources) {
    const most = Math.max(0, ...capacity.map(({ units }) => units));
    const occupations: Occupation[] = [];
    for (const [task, units] of demands.entries()) {
      const { minLength, maxLength } = problem.tasks[task]!;
      if (units === 0 || maxLength === 0) continue;
      if (units > most) {
        // Only a length of nothing takes no units.
        if (minLength > 0) return false;
        differences.push(always(places.end[task]!, places.start[task]!, 0));
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
      const at = variables.make(begin, begin);
      const length = until - begin;
      occupations.push({ start: at, end: at, endOffset: length, length, units: most - units });
    }
    if (occupations.length > 1) propagators.push(new Timetable(name, occupations, most));
  }
  return true;
}
