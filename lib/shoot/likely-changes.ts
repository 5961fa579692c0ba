import {
  lengthsFor,
  percentile,
  simulate,
  type DrawnLengths,
} from '#lib/planner/simulate/simulate';
import type { DayFacts } from '#lib/shoot/day-facts';
import type { Daylight } from '#lib/shoot/daylight';
import { dayGraph, type DayGraph } from '#lib/shoot/likely-graph';
import type { SolvedDay } from '#lib/shoot/solve-day';
import { taskIdOf } from '#lib/shoot/problem-parts';

/** A change to the day that a person could make. */
export type DayChange =
  /** The step, which is the hands' work, is done in its shortest time. */
  | { readonly kind: 'shortest'; readonly stepId: string }
  /** A step that only gets a shot is left out. */
  | { readonly kind: 'drop'; readonly stepId: string }
  | { readonly kind: 'startEarlier'; readonly minutes: number }
  | { readonly kind: 'moreBurners' }
  | { readonly kind: 'moreRacks'; readonly ovenId: string };

/** What a change would bring, on the same days. */
export interface ChangeTried {
  readonly change: DayChange;
  /** Minutes, to a tenth, that the time by which 90 of 100 days have wrapped is earlier. */
  readonly savedMin: number;
  /** Share of the days on which the promise that is kept least often is kept: without and with the change. */
  readonly weakestBefore: number;
  readonly weakestAfter: number;
}

interface Given {
  readonly facts: DayFacts;
  readonly solved: SolvedDay;
  readonly daylight: Daylight | null;
  readonly drawn: DrawnLengths;
  readonly critical: readonly { readonly id: string; readonly runs: number }[];
  /** End of the last appointment, or the day's start: no change wraps before it. */
  readonly lastCall: number;
}

/** So much earlier is what the day is asked to start. */
const EARLIER_MIN = 15;
/** So many steps are tried at their shortest, and so many shots left out; those that the wrap hangs on first. */
const MOST_STEPS = 24;
/** A promise is helped where it is kept on one more of 100 days. */
const ONE_DAY = 0.01;
/** A promise that is kept on a smaller share of days is what a change is looked for; else it is the wrap. */
const WEAK = 0.9;
/** So many days are enough to put the changes in order. */
const ENOUGH_RUNS = 300;

/**
 * Tries one change at a time on the same days, in the same order: each piece of work in its shortest time, each step that only gets a shot left out, a start a quarter of an hour earlier, one
 * more burner, one more rack. Where a promise is kept on fewer than nine of ten days, the change that helps the
 * weakest promise most stands first; where none helps it, or all are kept, the one that saves most of the wrap.
 * What brings neither is left out, and so is an earlier start where no promise is kept more often by it.
 */
export function changesTried(given: Given): ChangeTried[] {
  const { facts, solved, daylight } = given;
  const planned = dayGraph(facts, solved, daylight);
  const before = outcome(given, planned);
  const helps = ({ weakestAfter }: ChangeTried): number =>
    before.weakest < WEAK ? Math.max(0, Math.floor((weakestAfter - before.weakest) / ONE_DAY)) : 0;
  return candidates(given)
    .map((change): ChangeTried => {
      const { graph, fixed } = changed(given, planned, change);
      const after = outcome(given, graph, fixed);
      return {
        change,
        savedMin: Math.round((before.p90Min - after.p90Min) * 10) / 10,
        weakestBefore: before.weakest,
        weakestAfter: after.weakest,
      };
    })
    .filter((tried) => {
      const keepsMore = tried.weakestAfter >= before.weakest + ONE_DAY;
      // The same day begun earlier is over earlier, and no shorter: it only helps what is promised by the clock.
      const shortens = tried.change.kind !== 'startEarlier' && tried.savedMin >= 1;
      const worse = tried.weakestAfter <= before.weakest - ONE_DAY;
      return helps(tried) > 0 || (!worse && (keepsMore || shortens));
    })
    .sort(
      (a, b) => helps(b) - helps(a) || b.savedMin - a.savedMin || b.weakestAfter - a.weakestAfter,
    );
}

function candidates({ facts, solved, critical }: Given): DayChange[] {
  const runsOf = new Map(critical.map(({ id, runs }) => [id, runs]));
  const often = ({ step }: DayFacts['steps'][number]) => runsOf.get(taskIdOf(step.id)) ?? 0;
  const inTurn = [...facts.steps].sort((a, b) => often(b) - often(a));
  // What waits or bakes cannot be hurried, and nobody is told to eat faster.
  const steps = inTurn.filter(
    ({ step }) =>
      step.hands && step.role !== 'eat' && step.choose === null && step.lowS < step.usualS,
  );
  const used = new Set(solved.choice.values());
  return [
    ...steps
      .slice(0, MOST_STEPS)
      .map(({ step }): DayChange => ({ kind: 'shortest', stepId: step.id })),
    ...inTurn
      .filter(({ step }) => step.role === 'shoot' && step.usualS > 0)
      .slice(0, MOST_STEPS)
      .map(({ step }): DayChange => ({ kind: 'drop', stepId: step.id })),
    ...(facts.day.startMin >= EARLIER_MIN
      ? [{ kind: 'startEarlier', minutes: EARLIER_MIN } as const]
      : []),
    ...(facts.steps.some(({ step }) => step.burners > 0) ? [{ kind: 'moreBurners' } as const] : []),
    ...facts.ovens
      .filter(({ id }) => used.has(id))
      .map((oven): DayChange => ({ kind: 'moreRacks', ovenId: oven.id })),
  ];
}

/** The day as a change makes it: its order, and tasks that take a time of their own each day. */
interface Changed {
  readonly graph: DayGraph;
  readonly fixed?: ReadonlyMap<string, number>;
}

function changed(
  { facts, solved, daylight }: Given,
  planned: DayGraph,
  change: DayChange,
): Changed {
  switch (change.kind) {
    case 'shortest': {
      const low = facts.stepById.get(change.stepId)?.step.lowS ?? 0;
      return { graph: planned, fixed: new Map([[taskIdOf(change.stepId), low / 60]]) };
    }
    case 'drop': {
      // What has no place in the order takes no time, and nothing waits for it.
      const id = taskIdOf(change.stepId);
      const placed = solved.placed.filter((one) => one.id !== id);
      return { graph: dayGraph(facts, { ...solved, placed }, daylight) };
    }
    case 'startEarlier': {
      const day = { ...facts.day, startMin: facts.day.startMin - change.minutes };
      // By the clock everything stands where it stood.
      const placed = solved.placed.map(({ id, start, end }) => {
        return { id, start: start + change.minutes, end: end + change.minutes };
      });
      return { graph: dayGraph({ ...facts, day }, { ...solved, placed }, daylight) };
    }
    case 'moreBurners':
      return { graph: dayGraph({ ...facts, burners: facts.burners + 1 }, solved, daylight) };
    case 'moreRacks': {
      const ovens = facts.ovens.map((oven) =>
        oven.id === change.ovenId ? { ...oven, racks: oven.racks + 1 } : oven,
      );
      return { graph: dayGraph({ ...facts, ovens }, solved, daylight) };
    }
  }
}

/** The wrap that nine of ten days keep, and how often the weakest promise is kept. */
function outcome(
  given: Given,
  { day, graph, promises }: DayGraph,
  fixed?: ReadonlyMap<string, number>,
): { readonly p90Min: number; readonly weakest: number } {
  const drawn = lengthsFor(graph, firstRuns(given.drawn, ENOUGH_RUNS), fixed);
  const { wraps, kept, runs } = simulate(graph, drawn, promises);
  return {
    p90Min: Math.max(given.lastCall, percentile(wraps, 0.9) + day.originMin),
    weakest: Math.min(runs, ...kept) / runs,
  };
}

function firstRuns({ runs, ids, lengths }: DrawnLengths, most: number): DrawnLengths {
  const few = Math.min(runs, most);
  return { runs: few, ids, lengths: lengths.subarray(0, few * ids.length) };
}
