import type { Event, ExactProblem, Goal, States } from './problem';

/** Times beyond this could overflow when they are added in 32 bits. */
const LARGEST = 2 ** 28;

/**
 * What is wrong with a problem before anything is searched, in words; nothing if it can be searched.
 * A window that is too short or a demand above capacity is no fault here but an infeasible problem.
 *
 * @example faultsOf({ ...problem, horizon: -1 }) // ['horizon: a whole number from 0 to 268435456, not -1']
 */
export function faultsOf(problem: ExactProblem): string[] {
  const faults: string[] = [];
  const whole = (what: string, value: number, least: number): void => {
    if (Number.isInteger(value) && value >= least && value <= LARGEST) return;
    faults.push(`${what}: a whole number from ${least} to ${LARGEST}, not ${value}`);
  };
  const event = (what: string, { task }: Event): void => {
    if (problem.tasks[task] === undefined) faults.push(`${what}: there is no task ${task}`);
  };
  whole('horizon', problem.horizon, 0);
  for (const task of problem.tasks) {
    whole(`${task.name}, shortest length`, task.minLength, 0);
    whole(`${task.name}, longest length`, task.maxLength, 0);
    if (task.maxLength < task.minLength)
      faults.push(`${task.name}: longest length below the shortest`);
    if (task.notBefore !== null) whole(`${task.name}, not before`, task.notBefore, -LARGEST);
    if (task.endBy !== null) whole(`${task.name}, end by`, task.endBy, -LARGEST);
  }
  for (const { name, capacity, demands } of problem.resources) {
    if (demands.length !== problem.tasks.length)
      faults.push(`${name}: ${demands.length} demands for ${problem.tasks.length} tasks`);
    for (const demand of demands) whole(`${name}, demand`, demand, 0);
    capacity.forEach(({ from, units }, index) => {
      whole(`${name}, units`, units, 0);
      whole(`${name}, from`, from, -LARGEST);
      const before = capacity[index - 1];
      if (before !== undefined && from <= before.from)
        faults.push(`${name}: steps must come in ascending order of time`);
    });
    if ((capacity[0]?.from ?? 1) > 0) faults.push(`${name}: the first step must begin by 0`);
  }
  for (const { name, from, to, min } of problem.lags) {
    event(name, from);
    event(name, to);
    whole(name, min, -LARGEST);
  }
  for (const { name, first, second, between, back } of problem.setups) {
    event(name, { task: first, anchor: 'start' });
    event(name, { task: second, anchor: 'start' });
    if (first === second) faults.push(`${name}: a task cannot come after itself`);
    whole(name, between, -LARGEST);
    whole(name, back, -LARGEST);
  }
  for (const goal of problem.goals) {
    if (goal.kind === 'latest') {
      for (const one of goal.events) event(goal.name, one);
      if (goal.grid !== undefined) {
        whole(`${goal.name}, step`, goal.grid.step, 1);
        whole(`${goal.name}, origin`, goal.grid.origin, -LARGEST);
      }
    } else faults.push(...faultsOfSum(problem, goal));
  }
  for (const { name, spans, most } of problem.spanSums ?? []) {
    whole(name, most, -LARGEST);
    for (const span of spans) {
      event(name, span.from);
      event(name, span.to);
      whole(`${name}, weight`, span.weight, 0);
    }
  }
  for (const { name, tasks, least, most } of problem.choices ?? []) {
    for (const task of tasks) {
      event(name, { task, anchor: 'start' });
      if (problem.tasks[task]?.optional === false) faults.push(`${name}: ${task} is not optional`);
    }
    whole(`${name}, least`, least, -LARGEST);
    whole(`${name}, most`, most, -LARGEST);
  }
  for (const states of problem.states ?? []) faults.push(...faultsOfStates(problem, states));
  for (const { task, start, end } of problem.frozen) {
    event('frozen', { task, anchor: 'start' });
    whole('frozen start', start, -LARGEST);
    if (end !== null) whole('frozen end', end, -LARGEST);
  }
  return faults;
}

type Sum = Exclude<Goal, { readonly kind: 'latest' }>;

/** What is wrong with a goal that is a sum; all it may cost must be below 2^30. */
function faultsOfSum(problem: ExactProblem, goal: Sum): string[] {
  const faults: string[] = [];
  let most = 0;
  const part = (what: string, tasks: readonly number[], weight: number, reach: number): void => {
    for (const task of tasks) {
      if (problem.tasks[task] === undefined) faults.push(`${goal.name}: there is no task ${task}`);
    }
    if (!Number.isInteger(weight) || weight < 0)
      faults.push(`${goal.name}, ${what}: a whole number from 0, not ${weight}`);
    most += weight * reach;
  };
  const { horizon } = problem;
  for (const { event, due, early, late } of goal.kind === 'sum' ? goal.deviations : goal.of) {
    if (!Number.isInteger(due)) faults.push(`${goal.name}, due: a whole number, not ${due}`);
    part('weight before', [event.task], early, 0);
    part('weight after', [event.task], late, 0);
    most += Math.max(early, late) * (horizon + Math.abs(due));
  }
  if (goal.kind === 'sum') {
    for (const { from, to, weight } of goal.spans)
      part('weight', [from.task, to.task], weight, horizon);
    for (const { task, weight } of goal.absent) part('weight', [task], weight, 1);
    for (const { users, change, first, on } of goal.rows) {
      const table = Math.max(0, ...first, ...change.flat());
      for (const { task, begin } of users)
        part('weight', [task, begin.task], on, horizon + table / Math.max(1, on));
    }
  }
  if (!(most < 2 ** 30)) faults.push(`${goal.name}: could cost 2^30 or more; divide its weights`);
  return faults;
}

function faultsOfStates(problem: ExactProblem, { name, users, initial, change }: States): string[] {
  const faults: string[] = [];
  for (const { task, begin, kind } of users) {
    if (problem.tasks[task] === undefined || problem.tasks[begin.task] === undefined)
      faults.push(`${name}: there is no task ${task}`);
    if (change[kind] === undefined) faults.push(`${name}: there is no state ${kind}`);
  }
  if (change[initial] === undefined) faults.push(`${name}: there is no state ${initial}`);
  for (const time of change.flat()) {
    if (time !== null && !(Number.isInteger(time) && time >= 0 && time <= LARGEST))
      faults.push(`${name}: a change takes a whole number from 0 to ${LARGEST}, not ${time}`);
  }
  return faults;
}
