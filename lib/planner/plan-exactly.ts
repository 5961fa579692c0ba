import type { Clash, ExactPlannerOptions, LevelAnswer, ProvenAnswer } from '#lib/planner/answer';
import { clashOf } from '#lib/planner/clash';
import type { ExactAnswer, ExactPlan } from '#lib/planner/exact/problem';
import { solve } from '#lib/planner/exact/solve';
import { completed, type WholeProblem } from '#lib/planner/face/defaults';
import { faultsOfProblem } from '#lib/planner/face/faults';
import { changeoversOf, placedOf, planFrom } from '#lib/planner/face/from-exact';
import { planToBeginWith } from '#lib/planner/face/first-plan';
import { toExact, type Mapped } from '#lib/planner/face/to-exact';
import { levelClock } from '#lib/planner/face/level-clock';
import type { PlannerProblem } from '#lib/planner/problem';

/**
 * The best plan of a problem, level by level, and what is proven of it. Pure: time comes in by
 * `options.now` or `options.shouldStop`; without either it works until everything is proven.
 *
 * Laws: the plan keeps every rule; a level's bound is below no plan that is as good in the levels before;
 * equal problem and options (and answers of the clock) give an equal answer.
 *
 * @throws if the problem has faults (`faultsOfProblem`), with all of them
 * @example planExactly(problem, { seed: 1 }).levels[0] // { id: 'end', value: 12, bound: 12, status: 'proven' }
 */
export function planExactly(given: PlannerProblem, options: ExactPlannerOptions): ProvenAnswer {
  const problem = completed(given);
  const faults = faultsOfProblem(problem);
  if (faults.length > 0) throw new Error(`The problem has faults: ${faults.join('; ')}`);
  const clock = levelClock(problem, options);
  const mapped = toExact(problem);
  const warm = options.warmStart ?? planToBeginWith(problem, options.seed);
  const { onProgress } = options;
  const answer = solve(mapped.exact, {
    seed: options.seed,
    shouldStop: (level = 0) => clock.isOver(level),
    ...(warm === null ? {} : { warmStart: planFrom(problem, mapped, warm) }),
    ...(onProgress === undefined
      ? {}
      : {
          onProgress: ({ goal, best, bound, plan }) =>
            onProgress({
              level: goal,
              best,
              bound,
              seconds: clock.seconds(),
              placed: plan === null ? [] : placedOf(problem, mapped, plan),
            }),
        }),
  });
  const last = problem.goals.length - 1;
  const clash =
    answer.status === 'infeasible' && options.explain !== false
      ? clashOf(problem, options.seed, () => clock.isOver(last))
      : null;
  return inWords(problem, mapped, answer, { seconds: clock.seconds(), clash });
}

function inWords(
  problem: WholeProblem,
  mapped: Mapped,
  { status, plan, goals, statistics }: ExactAnswer,
  { seconds, clash }: { readonly seconds: number | null; readonly clash: Clash | null },
): ProvenAnswer {
  return {
    status,
    ...(plan === null ? NO_PLAN : planInWords(problem, mapped, plan)),
    levels: goals.map(({ name, best, bound, proven }): LevelAnswer => {
      const open = status === 'infeasible' || status === 'stopped' ? status : 'gap';
      return { id: name, value: best, bound, status: proven ? 'proven' : open };
    }),
    statistics: { ...statistics, seconds },
    clash,
  };
}

const NO_PLAN = { placed: [], leftOut: [], changeovers: [] } as const;

function planInWords(problem: WholeProblem, mapped: Mapped, plan: ExactPlan) {
  const placed = placedOf(problem, mapped, plan);
  const there = new Set(placed.map(({ id }) => id));
  return {
    placed,
    leftOut: problem.tasks.flatMap(({ id }) => (there.has(id) ? [] : [id])),
    changeovers: changeoversOf(problem, mapped, plan),
  };
}
