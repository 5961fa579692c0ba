/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import { seededRandom } from '../seeded-random';
import { faultsOf } from './faults';
import { firstPlans } from './first-plans';
import { modelOf, type Model } from './model';
import type {
  Event,
  ExactAnswer,
  ExactOptions,
  ExactPlan,
  ExactProblem,
  GoalAnswer,
} from './problem';
import { Search } from './search';
import type { StartsProblem } from './schedule-generation';

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
  model.engine.forgetRoot();
  const search = new Search(model, options);
  begin(problem, model, search, options);
  const answers: GoalAnswer[] = [];
  let ended: 'proven' | 'infeasible' | 'stopped' = 'proven';
  for (const [index, goal] of model.goals.entries()) {
    const name = problem.goals[index]!.name;
    const report = (bound: number): void => {
      const best = search.plan === null ? null : search.valueOf(index);
      options.onProgress?.({ goal: index, best, bound, plan: search.plan });
    };
    if (search.plan !== null) report(model.engine.trail.low(goal));
    const { best, bound, state } = search.minimise(index, report);
    answers.push({ name, best, bound, proven: state === 'proven' });
    ended = state;
    if (state !== 'proven') break;
    // What follows may cost nothing of this goal.
    const kept = model.engine.trail.raise(2 * goal + 1, -best!, -1) && model.engine.propagate();
    if (!kept) throw new Error(`${name}: the best plan is refused`);
    report(best!);
  }
  for (let index = answers.length; index < problem.goals.length; index += 1) {
    const best = search.plan === null ? null : search.valueOf(index);
    answers.push({ name: problem.goals[index]!.name, best, bound: null, proven: false });
  }
  const { conflicts, decisions } = search;
  if (ended === 'infeasible') return infeasible(problem, conflicts, decisions);
  const status = ended === 'proven' ? 'proven' : search.plan === null ? 'stopped' : 'gap';
  return { status, plan: search.plan, goals: answers, statistics: { conflicts, decisions } };
}

function infeasible(problem: ExactProblem, conflicts: number, decisions: number): ExactAnswer {
  const goals = problem.goals.map(({ name }) => ({ name, best: null, bound: null, proven: false }));
  return { status: 'infeasible', plan: null, goals, statistics: { conflicts, decisions } };
}

/** The plan given and the plans of the schedule generator, the best of which the search starts from. */
function begin(problem: ExactProblem, model: Model, search: Search, options: ExactOptions): void {
  if (options.warmStart !== undefined) search.follow(options.warmStart);
  const warm = search.plan === null ? Infinity : search.valueOf(0);
  const starts = startsProblemOf(problem, model);
  const [goal] = problem.goals;
  const value = (at: ArrayLike<number>): number => {
    if (goal === undefined) return 0;
    const time = (event: Event): number =>
      at[event.task]! + (event.anchor === 'end' ? starts.lengths[event.task]! : 0);
    let sum = 0;
    if (goal.kind === 'latest') for (const one of goal.events) sum = Math.max(sum, time(one));
    else {
      for (const { event, due, early, late } of goal.of) {
        const over = time(event) - due;
        sum += over > 0 ? late * over : early * -over;
      }
    }
    return sum;
  };
  const bound = model.engine.trail.low(model.goals[0]!);
  if (warm <= bound) return;
  const found = firstPlans(starts, value, bound, seededRandom(options.seed));
  if (found === null || value(found) >= warm) return;
  const plan: ExactPlan = {
    starts: [...found],
    ends: Array.from(found, (start, task) => start + starts.lengths[task]!),
  };
  search.follow(plan);
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
