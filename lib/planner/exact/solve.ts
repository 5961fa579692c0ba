/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import { seededRandom } from '../seeded-random';
import { faultsOf } from './faults';
import { firstPlans } from './first-plans';
import { modelOf, type Model } from './model';
import type { Event, ExactAnswer, ExactOptions, ExactProblem, Goal, GoalAnswer } from './problem';
import { Search, type GoalResult } from './search';
import type { StartsProblem } from './schedule-generation';
import { NO_REASON } from './trail';
import { workloadBound } from './workload';

/**
 * The best plan, with proof where the time suffices: goals one after another, each no worse for those that
 * follow. Pure: the clock is `shouldStop`. Equal problem, options and moment of stopping give an equal answer.
 *
 * Laws: the plan keeps every rule; `bound` of a goal is a value that no plan (equal in the goals before) is
 * below; `infeasible` and `proven` are proofs.
 *
 * @throws if the problem has faults (`faultsOf`)
 */
export function solve(problem: ExactProblem, options: ExactOptions): ExactAnswer {
  const faults = faultsOf(problem);
  if (faults.length > 0) throw new Error(`The problem has faults: ${faults.join('; ')}`);
  if (problem.goals.length === 0) {
    const any = { name: 'any plan', kind: 'latest', events: [] } as const;
    return { ...solve({ ...problem, goals: [any] }, options), goals: [] };
  }
  const model = modelOf(problem);
  if (model === null || !model.engine.propagateAll()) return infeasible(problem, 0, 0);
  if (!raiseToWorkload(problem, model)) return infeasible(problem, 0, 0);
  model.engine.forgetRoot();
  // Whose time it is: a goal that has no plan yet takes that of the goals after it, too.
  let turn = 0;
  const search = new Search(model, { ...options, shouldStop: () => options.shouldStop(turn) });
  if (!search.probe(0)) return infeasible(problem, search.conflicts, search.decisions);
  begin(problem, model, search, options);
  const results: GoalResult[] = [];
  for (const [index, goal] of model.goals.entries()) {
    const name = problem.goals[index]!.name;
    const report = (bound: number): void => {
      const best = search.plan === null ? null : search.valueOf(index);
      options.onProgress?.({ goal: index, best, bound, plan: search.plan });
    };
    turn = Math.max(turn, index);
    if (search.plan !== null) report(model.engine.trail.low(goal));
    let result = search.minimise(index, report);
    while (result.state === 'stopped' && search.plan === null && turn + 1 < model.goals.length) {
      turn += 1;
      result = search.minimise(index, report);
    }
    results.push(result);
    if (result.state === 'infeasible' || search.plan === null) break;
    // Another search has a better plan: what is left to do is done there.
    if (index === 0 && (options.exchange?.best() ?? Infinity) < result.best!) break;
    // What follows may cost nothing of this goal, proven or not.
    const kept = model.engine.trail.raise(2 * goal + 1, -result.best!, -1);
    if (!kept || !model.engine.propagate()) throw new Error(`${name}: the best plan is refused`);
    if (result.state === 'proven') report(result.best!);
  }
  const { conflicts, decisions } = search;
  if (results.at(-1)?.state === 'infeasible') return infeasible(problem, conflicts, decisions);
  const answers = problem.goals.map(({ name }, index): GoalAnswer => {
    const best = search.plan === null ? null : search.valueOf(index);
    const bound = results[index]?.bound ?? null;
    // A later goal may have found what an earlier one did not.
    return { name, best, bound, proven: best !== null && best === bound };
  });
  const proven = answers.every((answer) => answer.proven);
  const status = search.plan === null ? 'stopped' : proven ? 'proven' : 'gap';
  return { status, plan: search.plan, goals: answers, statistics: { conflicts, decisions } };
}

/** Holds a first goal that is a wrap to what the work alone takes. False if that is more than there is. */
function raiseToWorkload({ goals: [goal] }: ExactProblem, model: Model): boolean {
  if (goal?.kind !== 'latest') return true;
  const bound = workloadBound(model, goal.events);
  const { engine } = model;
  return engine.trail.raise(2 * model.goals[0]!, bound, NO_REASON) && engine.propagateAll();
}

function infeasible(problem: ExactProblem, conflicts: number, decisions: number): ExactAnswer {
  const goals = problem.goals.map(({ name }) => ({ name, best: null, bound: null, proven: false }));
  return { status: 'infeasible', plan: null, goals, statistics: { conflicts, decisions } };
}

/** The plan given and the plans of the schedule generator, the best of which the search starts from. */
function begin(problem: ExactProblem, model: Model, search: Search, options: ExactOptions): void {
  if (options.warmStart !== undefined) search.follow(options.warmStart);
  const [goal] = problem.goals;
  // What neighbours cost is not known to the generator; it would only be a guess against a plan.
  if (search.plan !== null && goal?.kind === 'sum' && goal.rows.length + goal.absent.length > 0)
    return;
  const warm = search.plan === null ? Infinity : search.valueOf(0);
  const starts = startsProblemOf(model.plain, model);
  const value = (at: ArrayLike<number>): number =>
    goal === undefined ? 0 : valueOf(goal, at, starts.lengths);
  const bound = model.engine.trail.low(model.goals[0]!);
  if (warm <= bound) return;
  const found = firstPlans(starts, value, bound, seededRandom(options.seed), () =>
    options.shouldStop(0),
  );
  if (found === null || value(found) >= warm) return;
  search.follow({
    starts: [...found],
    ends: Array.from(found, (start, task) => start + starts.lengths[task]!),
    absent: [...model.presence.keys()],
  });
}

/** What a plan of shortest lengths costs by a goal, but for what neighbours cost in a row. */
function valueOf(goal: Goal, at: ArrayLike<number>, lengths: readonly number[]): number {
  const time = ({ task, anchor }: Event): number =>
    at[task]! + (anchor === 'end' ? lengths[task]! : 0);
  if (goal.kind === 'latest') {
    const { step, origin } = goal.grid ?? { step: 1, origin: 0 };
    const latest = goal.events.reduce((most, event) => Math.max(most, time(event)), 0);
    return origin + step * Math.ceil((latest - origin) / step);
  }
  let sum = 0;
  for (const { event, due, early, late } of goal.kind === 'sum' ? goal.deviations : goal.of) {
    const over = time(event) - due;
    sum += over > 0 ? late * over : early * -over;
  }
  if (goal.kind === 'sum') {
    for (const { from, to, weight } of goal.spans)
      sum += weight * Math.max(0, time(to) - time(from));
  }
  return sum;
}

/** The problem for the schedule generator, each length the shortest. */
function startsProblemOf(problem: ExactProblem, model: Model): StartsProblem {
  const { trail } = model.engine;
  const lengths = problem.tasks.map(({ minLength }) => minLength);
  const taskOf = new Map<number, number>();
  model.end.forEach((variable, task) => taskOf.set(variable, task));
  const shift = new Map<number, number>();
  model.end.forEach((variable, task) => shift.set(variable, lengths[task]!));
  model.start.forEach((variable, task) => {
    taskOf.set(variable, task);
    shift.set(variable, 0);
  });
  const lags = model.differences.flatMap(({ from, to, weight }) => {
    const i = taskOf.get(from);
    const j = taskOf.get(to);
    if (i === undefined || j === undefined || i === j) return [];
    // start of j ≥ start of i + w, where a variable is an end by its shift.
    return [[i, j, weight + shift.get(from)! - shift.get(to)!] as const];
  });
  return {
    lengths,
    low: model.start.map((variable) => trail.low(variable)),
    high: model.start.map((variable) => trail.high(variable)),
    lags,
    resources: problem.resources.map(({ capacity, demands }) => {
      const most = Math.max(0, ...capacity.map(({ units }) => units));
      return {
        capacity: most,
        demands,
        taken: capacity.flatMap(({ from, units }, index) => {
          const until = Math.min(capacity[index + 1]?.from ?? problem.horizon, problem.horizon);
          const begin = Math.max(0, from);
          return units === most || until <= begin
            ? []
            : [[begin, until - begin, most - units] as const];
        }),
      };
    }),
    setups: problem.setups.map(
      ({ first, second, between, back }) => [first, second, between, back] as const,
    ),
  };
}
