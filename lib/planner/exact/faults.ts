import type { Event, ExactProblem } from './problem';

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
    if (goal.kind === 'latest') for (const one of goal.events) event(goal.name, one);
    else {
      let most = 0;
      for (const one of goal.of) {
        event(goal.name, one.event);
        whole(`${goal.name}, due`, one.due, -LARGEST);
        whole(`${goal.name}, weight before`, one.early, 0);
        whole(`${goal.name}, weight after`, one.late, 0);
        most += Math.max(one.early, one.late) * (problem.horizon + Math.abs(one.due));
      }
      if (most >= 2 ** 30) faults.push(`${goal.name}: could cost 2^30 or more; divide its weights`);
    }
  }
  for (const { task, start, end } of problem.frozen) {
    event('frozen', { task, anchor: 'start' });
    whole('frozen start', start, -LARGEST);
    if (end !== null) whole('frozen end', end, -LARGEST);
  }
  return faults;
}
