import type { ProvenAnswer } from '#lib/planner/answer';
import { compareGoals, goalsOf, type Goals } from '#lib/planner/goals';
import { planByRules } from '#lib/planner/plan-by-rules';
import { planExactly } from '#lib/planner/plan-exactly';
import type { Placed } from '#lib/planner/problem';
import { seededRandom } from '#lib/planner/seeded-random';
import type { DayFacts } from '#lib/shoot/day-facts';
import { DAY_LEVELS, withDayGoals } from '#lib/shoot/day-goals';
import { ovenChoices, ovenSteps, type OpenOvenStep, type OvenChoice } from '#lib/shoot/oven-choice';
import type { PlanProof } from '#lib/shoot/plan';
import { taskIdOf, useId } from '#lib/shoot/problem-parts';
import { toProblem } from '#lib/shoot/to-problem';

/** Times of everything on a day, and what is known of them; plain data that can go from thread to thread. */
export interface SolvedDay {
  readonly choice: OvenChoice;
  readonly placed: readonly Placed[];
  /** Rules that are broken, by their ids in the problem; none where the plan keeps them all. */
  readonly broken: readonly string[];
  readonly originMin: number;
  readonly proof: PlanProof;
}

/** What a search has so far: its day, the level it works on, and what no day can be below in it. */
export interface DayProgress {
  readonly solved: SolvedDay;
  readonly level: number;
  readonly best: number | null;
  readonly bound: number | null;
}

export interface SolveOptions {
  readonly seed: number;
  /** How much is searched, see `USUAL_EFFORT`; 0 is the plan by rules. */
  readonly effort?: number;
  /** Ends the search with what is known. */
  readonly shouldStop?: () => boolean;
  readonly onProgress?: (progress: DayProgress) => void;
}

/**
 * How often the search may ask whether to stop, in all levels. Counted and not timed, so that every machine
 * comes to the same plan: at most some seconds for a day of 40 entries, a fraction of one for most.
 */
export const USUAL_EFFORT = 400;

/**
 * The best day of its kind, level by level, as far as it is found and proven within a fixed effort; begins
 * with the plan by rules. Where no plan keeps every rule, the plan by rules with the rules that clash.
 */
export function solveDay(facts: DayFacts, options: SolveOptions): SolvedDay {
  const { seed, effort = USUAL_EFFORT, shouldStop, onProgress } = options;
  const first = solveByRules(facts, seed);
  const { fixed, open } = ovenSteps(facts);
  const day = toProblem(facts, fixed, open);
  if (effort === 0 || day.problem.tasks.length === 0) return first;
  const problem = withDayGoals(day);
  let asked = 0;
  const read = (placed: readonly Placed[], proof: PlanProof): SolvedDay =>
    placed.length === 0
      ? { ...first, proof }
      : { ...first, placed, choice: chosenOvens(fixed, open, placed), broken: [], proof };
  const answer = planExactly(problem, {
    seed,
    now: () => (asked += 1),
    limitSeconds: effort,
    ...(shouldStop === undefined ? {} : { shouldStop }),
    ...(first.broken.length > 0 ? {} : { warmStart: withUses(first, open) }),
    ...(onProgress === undefined
      ? {}
      : {
          onProgress: ({ level, best, bound, placed }) => {
            const proof: PlanProof = { status: 'gap', levels: [], clash: [] };
            onProgress({ solved: read(placed, proof), level, best, bound });
          },
        }),
  });
  return read(answer.placed, proofOf(answer, day.originMin));
}

/**
 * A day by rules of thumb, within milliseconds: the best over some ways to share the ovens. First each in
 * brief, later ones only if they wrap no later than the best so far; at length where there is one way, or none
 * works in brief.
 */
export function solveByRules(facts: DayFacts, seed: number): SolvedDay {
  const choices = ovenChoices(facts, seededRandom(seed));
  let best: (SolvedDay & { readonly goals: Goals }) | null = null;
  for (const search of choices.length === 1 ? FULL : BRIEF_THEN_FULL) {
    for (const choice of choices) {
      const { problem, originMin } = toProblem(facts, choice);
      const horizon = best?.broken.length === 0 ? best.goals.wrap : problem.horizon;
      const { placed, broken } = planByRules({ ...problem, horizon }, { seed, search });
      const goals = goalsOf(problem, placed);
      const fewer = broken.length - (best?.broken.length ?? Infinity);
      if (best === null || fewer < 0 || (fewer === 0 && compareGoals(goals, best.goals) < 0)) {
        best = { choice, placed, broken, originMin, goals, proof: BY_RULES };
      }
      if (search === 'full' && best.broken.length === 0) return best;
    }
    if (best?.broken.length === 0) return best;
    if (search === 'brief') best = null;
  }
  if (best === null) throw new Error('There is always at least one way to use the ovens');
  return best;
}

const FULL = ['full'] as const;
const BRIEF_THEN_FULL = ['brief', 'full'] as const;

/**
 * The first order by rules that keeps every rule, to show while better ones are looked for: in tens of
 * milliseconds for a day of 70 entries. Where none is found at once, an order with the rules that it breaks.
 */
export function firstDay(facts: DayFacts, seed: number): SolvedDay {
  let shown: SolvedDay | null = null;
  for (const choice of ovenChoices(facts, seededRandom(seed))) {
    const { problem, originMin } = toProblem(facts, choice);
    const { placed, broken } = planByRules(problem, { seed, search: 'first' });
    shown ??= { choice, placed, broken, originMin, proof: BY_RULES };
    if (broken.length === 0) return { choice, placed, broken, originMin, proof: BY_RULES };
  }
  if (shown === null) throw new Error('There is always at least one way to use the ovens');
  return shown;
}

const BY_RULES: PlanProof = { status: 'rules', levels: [], clash: [] };

/** The ovens that the plan has chosen for the open steps, beside those that were given. */
function chosenOvens(
  fixed: OvenChoice,
  open: readonly OpenOvenStep[],
  placed: readonly Placed[],
): OvenChoice {
  const there = new Set(placed.map(({ id }) => id));
  const choice = new Map(fixed);
  for (const { entry, fits } of open) {
    const ovenId = fits.find((each) => there.has(useId(entry.step.id, each)));
    if (ovenId !== undefined) choice.set(entry.step.id, ovenId);
  }
  return choice;
}

/** The plan by rules with the task of each open step's oven, as the exact planner knows it. */
function withUses({ placed, choice }: SolvedDay, open: readonly OpenOvenStep[]): Placed[] {
  const byId = new Map(placed.map((one) => [one.id, one]));
  return [
    ...placed,
    ...open.flatMap(({ entry }) => {
      const ovenId = choice.get(entry.step.id);
      const own = byId.get(taskIdOf(entry.step.id));
      if (ovenId === undefined || own === undefined) return [];
      return [{ ...own, id: useId(entry.step.id, ovenId) }];
    }),
  ];
}

function proofOf({ status, levels, clash }: ProvenAnswer, originMin: number): PlanProof {
  if (status === 'infeasible') return { status: 'clash', levels: [], clash: clash?.ids ?? [] };
  if (status === 'stopped') return BY_RULES;
  return {
    status,
    clash: [],
    levels: DAY_LEVELS.flatMap((level): PlanProof['levels'] => {
      const found = levels.find(({ id }) => id === level);
      if (found === undefined || found.value === null) return [];
      const from = level === 'wrap' ? originMin : 0;
      const bound = found.bound === null ? null : found.bound + from;
      return [{ level, value: found.value + from, bound, proven: found.status === 'proven' }];
    }),
  };
}
