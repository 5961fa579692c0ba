import type { Event, ExactPlan, ExactProblem, Goal } from '#lib/planner/exact/problem';

/**
 * A second opinion on a plan: every rule looked at by itself, units of a resource added up at every time
 * where something begins. Shares no code with the engine.
 */
export function brokenRules(problem: ExactProblem, plan: ExactPlan): string[] {
  const broken: string[] = [];
  const startOf = (task: number): number => plan.starts[task] ?? NaN;
  const endOf = (task: number): number => plan.ends[task] ?? NaN;
  if (plan.starts.length !== problem.tasks.length || plan.ends.length !== problem.tasks.length)
    return ['the plan has another number of tasks'];
  problem.tasks.forEach((task, index) => {
    const start = startOf(index);
    const end = endOf(index);
    if (!Number.isInteger(start) || !Number.isInteger(end)) broken.push(`${task.name}: no time`);
    if (end - start < task.minLength) broken.push(`${task.name}: too short`);
    if (end - start > task.maxLength) broken.push(`${task.name}: too long`);
    if (start < 0) broken.push(`${task.name}: before 0`);
    if (end > problem.horizon) broken.push(`${task.name}: after the horizon`);
    if (task.notBefore !== null && start < task.notBefore) broken.push(`${task.name}: too early`);
    if (task.endBy !== null && end > task.endBy) broken.push(`${task.name}: too late`);
  });
  for (const lag of problem.lags) {
    if (timeOf(plan, lag.to) - timeOf(plan, lag.from) < lag.min) broken.push(lag.name);
  }
  for (const setup of problem.setups) {
    const forth = startOf(setup.second) >= endOf(setup.first) + setup.between;
    const back = startOf(setup.first) >= endOf(setup.second) + setup.back;
    if (!forth && !back) broken.push(setup.name);
  }
  for (const resource of problem.resources) {
    const times = [...plan.starts, ...resource.capacity.map((step) => step.from)];
    for (const time of times.filter((one) => one >= 0)) {
      const steps = resource.capacity.filter((step) => step.from <= time);
      const units = steps[steps.length - 1]?.units ?? 0;
      let taken = 0;
      resource.demands.forEach((demand, task) => {
        if (startOf(task) <= time && time < endOf(task)) taken += demand;
      });
      if (taken > units) broken.push(`${resource.name}: ${taken} of ${units} at ${time}`);
    }
  }
  for (const { task, start, end } of problem.frozen) {
    if (startOf(task) !== start) broken.push(`task ${task} was frozen at ${start}`);
    if (end !== null && endOf(task) !== end) broken.push(`task ${task} was frozen to ${end}`);
  }
  return broken;
}

function timeOf(plan: ExactPlan, event: Event): number {
  return (event.anchor === 'start' ? plan.starts[event.task] : plan.ends[event.task]) ?? NaN;
}

/** What a plan costs by a goal. */
export function costOf(goal: Goal, plan: ExactPlan): number {
  if (goal.kind === 'latest')
    return Math.max(0, ...goal.events.map((event) => timeOf(plan, event)));
  if (goal.kind === 'sum') throw new Error('sums are looked at in the language of the face');
  let sum = 0;
  for (const { event, due, early, late } of goal.of) {
    const time = timeOf(plan, event);
    if (time < due) sum += early * (due - time);
    else sum += late * (time - due);
  }
  return sum;
}
