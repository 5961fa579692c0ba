import type { Clash } from '#lib/planner/answer';
import { HORIZON } from '#lib/planner/broken-rules';
import { solve } from '#lib/planner/exact/solve';
import type { WholeProblem } from '#lib/planner/face/defaults';
import { toExact } from '#lib/planner/face/to-exact';

/** The most units and the longest time that a problem may have. */
const PLENTY = 2 ** 28;

/**
 * A smallest set of rules that cannot be kept together, for a problem that has no plan: the set alone is
 * infeasible, and without any one of it the others can be kept. By QuickXplain (Junker, AAAI 2004): halves of
 * the rules are put aside and taken back, each time asking the engine for any plan.
 *
 * Rules are named as in `brokenRules`: lags, limits, choices and resources by their ids, windows by the task's,
 * the horizon as "horizon"; rules of one id are one. Lengths and what has begun are facts and always hold.
 *
 * @param shouldStop asked now and then; where it ends a question, the rules in question are kept and the set
 *   may not be the smallest
 */
export function clashOf(problem: WholeProblem, seed: number, shouldStop: () => boolean): Clash {
  let smallest = true;
  const isInfeasible = (kept: readonly string[]): boolean => {
    const { exact } = toExact(keepingOnly(problem, new Set(kept)));
    const { status } = solve({ ...exact, goals: [] }, { seed, shouldStop });
    if (status === 'stopped') smallest = false;
    return status === 'infeasible';
  };
  /** The rules of `open` that are needed with `held`; together they are infeasible. */
  const needed = (held: readonly string[], grown: boolean, open: readonly string[]): string[] => {
    if (grown && isInfeasible(held)) return [];
    if (open.length === 1) return [...open];
    const middle = open.length >> 1;
    const first = open.slice(0, middle);
    const second = open.slice(middle);
    const ofSecond = needed([...held, ...first], first.length > 0, second);
    const ofFirst = needed([...held, ...ofSecond], ofSecond.length > 0, first);
    return [...ofFirst, ...ofSecond];
  };
  const all = rulesOf(problem);
  const ids = all.length === 0 ? [] : needed([], false, all);
  return { ids: [...ids].sort(), smallest };
}

/** The ids of all rules that could be put aside. */
export function rulesOf(problem: WholeProblem): string[] {
  const windows = problem.tasks.filter(
    ({ notBefore, endBy }) => notBefore !== null || endBy !== null,
  );
  const all = [HORIZON, windows, problem.lags, problem.spanLimits, problem.choices].flatMap(
    (some) => (typeof some === 'string' ? [some] : some.map(({ id }) => id)),
  );
  const resources = [...problem.stateful, ...problem.resources].map(({ id }) => id);
  return [...new Set([...all, ...resources])];
}

/** The problem with these rules alone. */
export function keepingOnly(problem: WholeProblem, kept: ReadonlySet<string>): WholeProblem {
  const isKept = ({ id }: { readonly id: string }): boolean => kept.has(id);
  const stateful = problem.stateful.filter(isKept);
  return {
    ...problem,
    horizon: kept.has(HORIZON) ? problem.horizon : farHorizon(problem),
    tasks: problem.tasks.map((task) => ({
      ...task,
      ...(isKept(task) ? {} : { notBefore: null, endBy: null }),
      needs:
        task.needs !== null && stateful.some(({ id }) => id === task.needs?.resource)
          ? task.needs
          : null,
    })),
    resources: problem.resources.map((resource) =>
      isKept(resource) ? resource : { ...resource, capacity: [{ from: 0, units: PLENTY }] },
    ),
    stateful,
    lags: problem.lags.filter(isKept),
    spanLimits: problem.spanLimits.filter(isKept),
    choices: problem.choices.filter(isKept),
  };
}

/**
 * A time by which any set of rules that can be kept at all can be kept: after everything that is fixed, all
 * tasks, lags and changeovers one after another.
 */
function farHorizon(problem: WholeProblem): number {
  const { tasks, lags, resources, stateful, past, spanLimits } = problem;
  const fixed = [
    problem.horizon,
    past?.now ?? 0,
    ...tasks.flatMap(({ notBefore, endBy }) => [notBefore ?? 0, endBy ?? 0]),
    ...resources.flatMap(({ capacity }) => capacity.map(({ from }) => from)),
  ];
  const changes = stateful.map(({ changeover }) =>
    Math.max(0, ...Object.values(changeover).flatMap((row) => Object.values(row))),
  );
  const longest = changes.reduce((sum, time) => sum + time, 0);
  const lengths = tasks.reduce((sum, { maxLength }) => sum + maxLength + longest, 0);
  const apart = lags.reduce(
    (sum, { min, max }) => sum + Math.max(Math.abs(min ?? 0), Math.abs(max ?? 0)),
    0,
  );
  const spans = spanLimits.reduce((sum, { limit }) => sum + Math.max(0, limit), 0);
  const far = fixed.reduce((most, time) => Math.max(most, time), 0) + lengths + apart + spans;
  return Math.min(PLENTY, far);
}
