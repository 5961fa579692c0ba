import { brokenRules } from '#lib/planner/broken-rules';
import { compile, NOTHING_RELAXED, type Relaxed } from '#lib/planner/compile';
import type { Compiled } from '#lib/planner/compiled';
import { earliest } from '#lib/planner/conflicts';
import { flatten, type Effort, type Style } from '#lib/planner/flatten';
import { compareGoals, goalsOf, type Goals } from '#lib/planner/goals';
import type {
  Placed,
  Planner,
  PlannerAnswer,
  PlannerOptions,
  PlannerProblem,
} from '#lib/planner/problem';
import { seededRandom } from '#lib/planner/seeded-random';
import { tighten } from '#lib/planner/tighten';
import type { TimeNet } from '#lib/planner/time-net';

/** Tries for a first plan, tries for an earlier wrap after that, and variants of the best to polish. */
interface Tries {
  readonly first: number;
  readonly wrap: number;
  readonly variants: number;
}
const TRIES: Readonly<Record<NonNullable<PlannerOptions['search']>, Tries>> = {
  first: { first: 4, wrap: 0, variants: 0 },
  brief: { first: 8, wrap: 8, variants: 2 },
  full: { first: 60, wrap: 14, variants: 4 },
};
const LATE: Tries = { first: 20, wrap: 8, variants: 2 };
const ATTEMPT: Tries = { first: 12, wrap: 4, variants: 1 };
/** Further than any horizon asked for, so that a plan that overruns can still be shown. */
const FAR = 1_000_000;

interface Candidate {
  readonly placed: readonly Placed[];
  readonly goals: Goals;
}

/**
 * A plan by rules: orders are fixed one by one where the earliest plan would break a rule, in several
 * seeded tries; the best is then tightened. Goals, in this order: wrap, summed spans, time in a state,
 * switches between groups. The number of tries is bounded, so it always returns.
 *
 * Law: `feasible` means that every rule of the problem holds; `stuck` names at least one that does not,
 * and still places every task. Equal problem and seed give an equal answer.
 */
export const planByRules: Planner = (problem, { seed, search: much = 'full' }) => {
  const compiled = compile(problem, NOTHING_RELAXED);
  const effort = newEffort(compiled, seed);
  const found = search(problem, compiled, problem.horizon, TRIES[much], effort);
  if (found !== null) return answer(problem, found.placed);
  if (much !== 'full') return answer(problem, placedBy(problem, compiled, compiled.root));
  const late = search(problem, compiled, FAR, LATE, effort);
  return late === null ? bestAttempt(problem, seed) : answer(problem, late.placed);
};

function newEffort(compiled: Compiled, seed: number): Effort {
  return {
    fails: 0,
    weights: new Float64Array(compiled.items.length),
    random: seededRandom(seed),
    spare: [],
  };
}

function answer(problem: PlannerProblem, placed: readonly Placed[]): PlannerAnswer {
  const broken = brokenRules(problem, placed);
  return { status: broken.length === 0 ? 'feasible' : 'stuck', placed, broken };
}

/** The style of the nth try: plain rules first, then mixtures with more and more chance. */
function styleOf(index: number, random: () => number): Style {
  if (index === 0) return { pick: 'time', order: 'wrap', noise: 0 };
  if (index === 1) return { pick: 'slack', order: 'slack', noise: 0 };
  if (index === 2) return { pick: 'weight', order: 'group', noise: 0 };
  if (index === 3) return { pick: 'weight', order: 'wrap', noise: 0 };
  const picks = ['weight', 'time', 'slack'] as const;
  const orders = ['wrap', 'early', 'slack', 'wrap', 'group'] as const;
  return {
    pick: picks[Math.floor(random() * picks.length)] ?? 'weight',
    order: orders[Math.floor(random() * orders.length)] ?? 'wrap',
    noise: 3 * 2 ** Math.floor(random() * 5),
  };
}

/** The best plan within `horizon`, or null if none was found in so many tries. */
function search(
  problem: PlannerProblem,
  compiled: Compiled,
  horizon: number,
  tries: Tries,
  effort: Effort,
): Candidate | null {
  const within = (wrap: number): TimeNet | null => {
    const net = compiled.root.copy();
    return net.add(compiled.sink, 0, -wrap) ? net : null;
  };
  const attempt = (base: TimeNet, index: number, fails: number): TimeNet | null => {
    effort.fails = fails;
    return flatten(compiled, base, styleOf(index, effort.random), effort);
  };
  const open = within(horizon);
  if (open === null) return null;
  let found: TimeNet | null = null;
  for (let index = 0; index < tries.first && found === null; index += 1) {
    found = attempt(open, index, 20 + 6 * index);
  }
  if (found === null) return null;
  if (tries.wrap === 0) return candidate(problem, compiled, found);
  const wrapOf = (net: TimeNet): number => net.low[compiled.sink] as number;
  for (let index = 0; index < tries.wrap; index += 1) {
    const base = within(wrapOf(found) - 1);
    if (base === null) break;
    found = attempt(base, index, 12) ?? found;
  }
  let best = candidate(problem, compiled, tighten(compiled, found, effort));
  const base = within(wrapOf(found));
  for (let index = 0; base !== null && index < tries.variants; index += 1) {
    const variant = attempt(base, index === 0 ? 0 : 3 + index, 12);
    if (variant === null) continue;
    const other = candidate(problem, compiled, tighten(compiled, variant, effort));
    if (compareGoals(other.goals, best.goals) < 0) best = other;
  }
  return best;
}

function candidate(problem: PlannerProblem, compiled: Compiled, net: TimeNet): Candidate {
  const placed = placedBy(problem, compiled, net);
  return { placed, goals: goalsOf(problem, placed) };
}

function placedBy(problem: PlannerProblem, compiled: Compiled, net: TimeNet): Placed[] {
  return problem.tasks.map((task, index) => {
    const item = compiled.items[index];
    if (item === undefined) throw new Error(`Task "${task.id}" was not compiled`);
    return { id: task.id, start: earliest(net, item.start), end: earliest(net, item.end) };
  });
}

/**
 * No plan keeps all rules: the plan that breaks the fewest of those found by leaving out the span
 * limits, the latest ends, the maximum lags, or all of them; then each broken rule is put back if a
 * plan can be found that keeps it.
 */
function bestAttempt(problem: PlannerProblem, seed: number): PlannerAnswer {
  const none: ReadonlySet<string> = new Set();
  const stages: readonly Relaxed[] = [
    { ...NOTHING_RELAXED, spanLimits: 'all' },
    { ...NOTHING_RELAXED, latest: 'all' },
    { ...NOTHING_RELAXED, maxLags: 'all' },
    { latest: 'all', maxLags: 'all', spanLimits: 'all' },
  ];
  const solve = (relaxed: Relaxed): PlannerAnswer | null => {
    const compiled = compile(problem, relaxed);
    const found = search(problem, compiled, FAR, ATTEMPT, newEffort(compiled, seed));
    return found === null ? null : answer(problem, found.placed);
  };
  let best: PlannerAnswer | null = null;
  for (const stage of stages) {
    const found = solve(stage);
    if (found === null) continue;
    if (best === null || found.broken.length < best.broken.length) best = found;
    if (best.broken.length <= 1) break;
  }
  if (best === null) {
    const compiled = compile(problem, { latest: 'all', maxLags: 'all', spanLimits: 'all' });
    return answer(problem, placedBy(problem, compiled, compiled.root));
  }
  for (const id of best.broken.slice(0, 8)) {
    if (best.broken.length <= 1) break;
    const others: ReadonlySet<string> = new Set(best.broken.filter((other) => other !== id));
    const lighter: Relaxed = { latest: none, maxLags: none, spanLimits: none };
    const found = solve({ ...lighter, latest: others, maxLags: others, spanLimits: others });
    if (found !== null && found.broken.length < best.broken.length) best = found;
  }
  return best;
}
