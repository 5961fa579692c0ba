import type { DayFile } from '#lib/episode/also-filmed';
import { criticalCounter } from '#lib/planner/simulate/critical';
import { drawLengths, percentile, simulate, type Simulated } from '#lib/planner/simulate/simulate';
import { wilson } from '#lib/planner/simulate/wilson';
import { dayFacts } from '#lib/shoot/day-facts';
import { daylightAt } from '#lib/shoot/daylight';
import { changesTried, type ChangeTried } from '#lib/shoot/likely-changes';
import { dayGraph, spreadsOf, type DayPromise } from '#lib/shoot/likely-graph';
import type { SolvedDay } from '#lib/shoot/solve-day';

/** How often a promise is kept, with the 95 % interval of its probability. */
export interface PromiseKept {
  readonly kind: DayPromise['kind'];
  readonly id: string;
  /** Minute of the day that it is about, where it is about one. */
  readonly atMin: number | null;
  readonly kept: number;
  readonly low: number;
  readonly high: number;
}

/** How the day may turn out: what came of going through its order many times. */
export interface Likely {
  readonly runs: number;
  /** Whole minutes of the day by which so many of 100 days have wrapped. */
  readonly wrapMin: { readonly p10: number; readonly p50: number; readonly p90: number };
  /** Those kept least often first. */
  readonly promises: readonly PromiseKept[];
  /** Tasks of the plan (ids of its entries), and in how many runs the wrap hung on them; most often first. */
  readonly critical: readonly { readonly id: string; readonly runs: number }[];
  /** The chain that the wrap hung on most often, in order. */
  readonly chain: readonly string[];
  readonly chainRuns: number;
  /** Changes that were tried, on the same days; the one that helps most first, those that do not help left out. */
  readonly changes: readonly ChangeTried[];
}

export interface LikelyOptions {
  readonly seed: number;
  readonly runs?: number;
}

/** So many days are gone through: the 95 % interval of a promise is then 4 points wide at most. */
export const USUAL_RUNS = 2000;

/**
 * How likely the day's wrap and promises are, if the person keeps the order on hands, camera, burners and ovens
 * and begins everything as early as it is allowed (`orderGraph`). Each step takes a length of its own from the
 * triangle of its shortest, usual and longest time. A length that the plan chose is set by a clock, so it is
 * kept exactly; washing-up, heating and appointments take what the plan gives them.
 *
 * Null where the plan breaks a rule: then there is no order to keep.
 * Law: equal file, plan, seed and runs give equal answers.
 */
export function likelyDay(
  file: DayFile,
  solved: SolvedDay,
  { seed, runs = USUAL_RUNS }: LikelyOptions,
): Likely | null {
  if (solved.broken.length > 0 || solved.placed.length === 0) return null;
  const facts = dayFacts(file);
  const daylight = daylightAt(file.kitchen, facts.day.date);
  const { day, graph, promises } = dayGraph(facts, solved, daylight);
  const drawn = drawLengths(graph, { runs, seed, spreads: spreadsOf(facts) });
  const counter = criticalCounter(graph);
  const base = simulate(graph, drawn, promises, counter.seen);
  const { counts, chain, chainRuns } = counter.tally();
  const critical = [...counts]
    .map(([id, own]) => ({ id, runs: own }))
    .sort((a, b) => b.runs - a.runs || (a.id < b.id ? -1 : 1));
  const lastCall = Math.max(day.originMin, ...facts.day.appointments.map(({ endMin }) => endMin));
  const wrapAt = (share: number): number =>
    Math.max(lastCall, Math.ceil(percentile(base.wraps, share)) + day.originMin);
  return {
    runs,
    wrapMin: { p10: wrapAt(0.1), p50: wrapAt(0.5), p90: wrapAt(0.9) },
    promises: keptOf(promises, base, day.originMin),
    critical,
    chain,
    chainRuns,
    changes: changesTried({ facts, solved, daylight, drawn, critical, lastCall }),
  };
}

function keptOf(
  promises: readonly DayPromise[],
  { kept, runs }: Simulated,
  originMin: number,
): PromiseKept[] {
  return promises
    .map(({ kind, id, at }, index): PromiseKept => {
      const own = kept[index] ?? 0;
      const atMin = at === null ? null : at + originMin;
      const { low, high } = wilson(own, runs);
      return { kind, id, atMin, kept: own, low: fourPlaces(low), high: fourPlaces(high) };
    })
    .sort((a, b) => a.kept - b.kept);
}

function fourPlaces(share: number): number {
  return Math.round(share * 10_000) / 10_000;
}
