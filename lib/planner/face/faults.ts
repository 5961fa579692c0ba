import { faultsOf } from '#lib/planner/exact/faults';
import type { WholeProblem } from '#lib/planner/face/defaults';
import { faultsOfGoals } from '#lib/planner/face/faults-of-goals';
import { toExact } from '#lib/planner/face/to-exact';

/** Times beyond this could overflow when they are added in 32 bits: 8 years of seconds. */
const LARGEST = 2 ** 28;

/** Collects faults, each saying what and where. */
export class FaultList {
  readonly all: string[] = [];
  constructor(readonly problem: WholeProblem) {}

  whole(what: string, value: number, least: number): void {
    if (Number.isInteger(value) && value >= least && value <= LARGEST) return;
    this.all.push(`${what}: a whole number from ${least} to ${LARGEST}, not ${value}`);
  }

  time(what: string, value: number | null): void {
    if (value !== null) this.whole(what, value, -LARGEST);
  }

  unique(what: string, ids: readonly string[]): void {
    const twice = ids.filter((id, index) => ids.indexOf(id) !== index);
    for (const id of new Set(twice)) this.all.push(`${what} "${id}" is there twice`);
  }

  task(where: string, id: string): void {
    if (!this.problem.tasks.some((task) => task.id === id))
      this.all.push(`${where}: there is no task "${id}"`);
  }

  resource(where: string, id: string): void {
    if (!this.problem.resources.some((resource) => resource.id === id))
      this.all.push(`${where}: there is no resource "${id}"`);
  }

  stateful(where: string, id: string): void {
    if (!this.problem.stateful.some((resource) => resource.id === id))
      this.all.push(`${where}: there is no stateful resource "${id}"`);
  }
}

/**
 * What is wrong with a problem before anything is searched, in words; nothing if it can be searched. That no
 * plan can keep the rules (an empty window, more units asked for than there are) is no fault but an answer.
 *
 * @example faultsOfProblem(completed(problem)) // ['lag "boil": there is no task "pasta"']
 */
export function faultsOfProblem(problem: WholeProblem): string[] {
  const faults = new FaultList(problem);
  faults.whole('horizon', problem.horizon, 0);
  faults.unique(
    'task',
    problem.tasks.map(({ id }) => id),
  );
  faults.unique(
    'resource',
    [...problem.resources, ...problem.stateful].map(({ id }) => id),
  );
  for (const task of problem.tasks) {
    const where = `task "${task.id}"`;
    faults.whole(`${where}, shortest length`, task.minLength, 0);
    faults.whole(`${where}, longest length`, task.maxLength, 0);
    if (task.maxLength < task.minLength)
      faults.all.push(`${where}: longest length below the shortest`);
    faults.time(`${where}, not before`, task.notBefore);
    faults.time(`${where}, end by`, task.endBy);
    for (const [id, units] of Object.entries(task.demands)) {
      faults.resource(where, id);
      faults.whole(`${where}, units of "${id}"`, units, 0);
    }
    if (task.needs !== null) faults.stateful(where, task.needs.resource);
  }
  for (const lag of problem.lags) {
    const where = `lag "${lag.id}"`;
    faults.task(where, lag.from);
    faults.task(where, lag.to);
    faults.time(`${where}, least`, lag.min);
    faults.time(`${where}, greatest`, lag.max);
  }
  for (const { id, spans, limit } of problem.spanLimits) {
    faults.whole(`limit "${id}"`, limit, -LARGEST);
    for (const { from, to } of spans) {
      faults.task(`limit "${id}"`, from);
      faults.task(`limit "${id}"`, to);
    }
  }
  for (const { id, tasks, least, most } of problem.choices) {
    faults.whole(`choice "${id}", least`, least, 0);
    faults.whole(`choice "${id}", most`, most, 0);
    faults.unique(`choice "${id}": task`, tasks);
    for (const one of tasks) {
      faults.task(`choice "${id}"`, one);
      if (problem.tasks.some((task) => task.id === one && !task.optional))
        faults.all.push(`choice "${id}": task "${one}" is not optional`);
    }
  }
  addResources(faults);
  addPast(faults);
  faultsOfGoals(faults);
  if (faults.all.length > 0) return faults.all;
  // Sums that would not fit are told by the engine.
  return faultsOf(toExact(problem).exact);
}

function addResources(faults: FaultList): void {
  const { resources, stateful } = faults.problem;
  for (const { id, capacity } of resources) {
    const where = `resource "${id}"`;
    capacity.forEach(({ from, units }, index) => {
      faults.time(`${where}, from`, from);
      faults.whole(`${where}, units`, units, 0);
      const before = capacity[index - 1];
      if (before !== undefined && from <= before.from)
        faults.all.push(`${where}: steps must come in ascending order of time`);
    });
    if ((capacity[0]?.from ?? 1) > 0) faults.all.push(`${where}: the first step must begin by 0`);
  }
  for (const { id, changeover, changeoverDemands = {} } of stateful) {
    const where = `stateful resource "${id}"`;
    for (const row of Object.values(changeover)) {
      for (const [to, time] of Object.entries(row))
        faults.whole(`${where}, changeover to "${to}"`, time, 0);
    }
    for (const demands of Object.values(changeoverDemands).flatMap((row) => Object.values(row))) {
      for (const [resource, units] of Object.entries(demands)) {
        faults.resource(where, resource);
        faults.whole(`${where}, units of "${resource}"`, units, 0);
      }
    }
  }
}

function addPast(faults: FaultList): void {
  const { past } = faults.problem;
  if (past === null) return;
  faults.whole('now', past.now, 0);
  faults.unique(
    'begun task',
    past.begun.map(({ id }) => id),
  );
  for (const { id, start, end } of past.begun) {
    const where = `begun task "${id}"`;
    faults.task(where, id);
    faults.whole(`${where}, start`, start, 0);
    if (start > past.now) faults.all.push(`${where}: starts at ${start}, after now (${past.now})`);
    if (end === null) continue;
    faults.whole(`${where}, end`, end, 0);
    if (end < start) faults.all.push(`${where}: ends at ${end}, before its start (${start})`);
    if (end > past.now) faults.all.push(`${where}: ends at ${end}, after now (${past.now})`);
  }
}
