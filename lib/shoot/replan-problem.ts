import { HORIZON } from '#lib/planner/broken-rules';
import type { Begun, Goal, GoalTerm, Placed, PlannerProblem, Task } from '#lib/planner/problem';
import type { DayFacts } from '#lib/shoot/day-facts';
import { ovenSteps, type OvenChoice } from '#lib/shoot/oven-choice';
import type { PlanEntry } from '#lib/shoot/plan';
import { ovensReady, type OvenFacts } from '#lib/shoot/replan-ovens';
import type { RowNow } from '#lib/shoot/replan-rows';
import { knownTimes, whatCannotBeKept, type KnownTimes } from '#lib/shoot/replan-rules';
import { taskIdOf } from '#lib/shoot/problem-parts';
import { toProblem } from '#lib/shoot/to-problem';

/** What is planned from: the day without what was skipped, what was promised of it, and how it stands. */
export interface DayNow {
  readonly facts: DayFacts;
  readonly promised: readonly PlanEntry[];
  readonly rows: ReadonlyMap<string, RowNow>;
  readonly nowMin: number;
}

/** The rest of a day as a planner's problem; times count from `originMin`. */
export interface RestOfDay {
  readonly problem: PlannerProblem;
  readonly known: KnownTimes;
  readonly choice: OvenChoice;
  readonly ovens: OvenFacts;
  readonly originMin: number;
  /** Where everything would stand if nothing but the past differed from what was promised. */
  readonly asPromised: readonly Placed[];
  /** Rules that the past has broken already, by their ids. */
  readonly lost: ReadonlySet<string>;
}

/** Far beyond any wrap: a day whose latest end cannot be kept is planned to wherever it ends. */
const NO_WRAP_LIMIT = 14_400;

/**
 * The rest of the day from now on. What is over is a fact, what is under way ends when it is expected to, all else
 * begins now or later, in the oven and for as long as was promised.
 */
export function restOfDay({ facts, promised, rows, nowMin }: DayNow): RestOfDay {
  const starts = [...rows.values()].flatMap((row) => ('startMin' in row ? [row.startMin] : []));
  const originMin = Math.min(facts.day.startMin, nowMin, ...starts);
  const byId = new Map(promised.map((entry) => [entry.id, entry]));
  const choice = choiceOf(facts, byId);
  const from = { ...facts, day: { ...facts.day, startMin: originMin } };
  const { problem } = toProblem(from, choice);
  const now = nowMin - originMin;
  const begun = begunOf(problem, rows, originMin, now);
  const ovens: OvenFacts = { facts, promised, rows, nowMin, choice };
  const heated = ovensReady(ovens);
  const earliest = facts.day.startMin - originMin;
  const tasks = problem.tasks.map((task): Task => {
    const row = rows.get(task.id);
    if (row?.kind === 'underWay') {
      const length = row.untilMin - row.startMin;
      return { ...task, minLength: length, maxLength: length, notBefore: null };
    }
    if (begun.has(task.id)) return { ...task, notBefore: null };
    const ready = (heated.get(task.id) ?? originMin) - originMin;
    const { minLength, maxLength } = lengthOf(task, byId.get(task.id));
    const notBefore = Math.max(task.notBefore ?? 0, earliest, ready, now);
    return { ...task, minLength, maxLength, notBefore };
  });
  const known = knownTimes(begun, rows, originMin, now);
  const { lags, lost } = whatCannotBeKept({ ...problem, tasks }, known);
  const rest: PlannerProblem = {
    ...problem,
    tasks: atOneHeat(tasks, known),
    resources: enoughForNow({ ...problem, tasks }, known),
    lags,
    past: { now, begun: [...begun.values()] },
  };
  return {
    problem: rest,
    known,
    choice,
    ovens,
    originMin,
    asPromised: promisedTimes(rest, byId, known, originMin),
    lost,
  };
}

/**
 * The problem with some rules set free: the less they are broken the better, then as little as possible moves of
 * what was promised, then food stands out as short as possible, then the day is over early.
 */
export function withRules(rest: RestOfDay, free: ReadonlySet<string>): PlannerProblem {
  const { problem, known, asPromised } = rest;
  const breakage: GoalTerm[] = [];
  const lags = problem.lags.map((lag) => {
    if (lag.max === null || !free.has(lag.id)) return lag;
    const from = { task: lag.from, anchor: lag.fromAnchor };
    const to = { task: lag.to, anchor: lag.toAnchor };
    const at = known.at(from);
    breakage.push(
      at === null
        ? { kind: 'span', from, to, weight: 1 }
        : { kind: 'lateness', event: to, due: at + lag.max, early: 0, late: 1 },
    );
    return { ...lag, max: null };
  });
  const spansOf = ({ spans }: PlannerProblem['spanLimits'][number]): GoalTerm[] =>
    spans.map((span) => ({
      kind: 'span',
      from: { task: span.from, anchor: span.fromAnchor },
      to: { task: span.to, anchor: span.toAnchor },
      weight: 1,
    }));
  breakage.push(...problem.spanLimits.filter(({ id }) => free.has(id)).flatMap(spansOf));
  const late = free.has(HORIZON);
  const wrap = (id: string, share: number): Goal => {
    return { id, share, kind: 'latest', events: 'all ends' };
  };
  const goals: Goal[] = [
    ...(breakage.length > 0
      ? [{ id: 'breakage', share: 40, kind: 'sum', terms: breakage } as const]
      : []),
    ...(late ? [wrap('late', 20)] : []),
    {
      id: 'moved',
      share: 80,
      kind: 'sum',
      terms: [{ kind: 'moved', from: asPromised, weight: 1 }],
    },
    { id: 'danger', share: 10, kind: 'sum', terms: problem.spanLimits.flatMap(spansOf) },
    ...(late ? [] : [wrap('wrap', 10)]),
  ];
  return {
    ...problem,
    lags,
    spanLimits: problem.spanLimits.filter(({ id }) => !free.has(id)),
    horizon: late ? problem.horizon + NO_WRAP_LIMIT : problem.horizon,
    goals,
  };
}

function choiceOf(facts: DayFacts, promised: ReadonlyMap<string, PlanEntry>): OvenChoice {
  const { fixed, open } = ovenSteps(facts);
  const choice = new Map(fixed);
  for (const { entry, fits } of open) {
    const was = promised.get(taskIdOf(entry.step.id))?.ovenId ?? '';
    choice.set(entry.step.id, fits.includes(was) ? was : (fits[0] ?? ''));
  }
  return choice;
}

function begunOf(
  { tasks }: PlannerProblem,
  rows: ReadonlyMap<string, RowNow>,
  originMin: number,
  now: number,
): Map<string, Begun> {
  const begun = new Map<string, Begun>();
  for (const { id } of tasks) {
    // A meal that is kept apart from others began with its step, and has no length.
    const row = rows.get(stepOfMeal(id));
    if (row?.kind !== 'over' && row?.kind !== 'underWay') continue;
    const start = row.startMin - originMin;
    if (id !== stepOfMeal(id)) begun.set(id, { id, start, end: start });
    else {
      const end = row.kind === 'over' ? Math.min(now, row.endMin - originMin) : null;
      begun.set(id, { id, start, end });
    }
  }
  return begun;
}

const stepOfMeal = (id: string): string => id.replace(/^meal:/, 'step:');

/** As long as was promised, where the step may take that long. */
function lengthOf(
  { minLength, maxLength }: Task,
  promised: PlanEntry | undefined,
): Pick<Task, 'minLength' | 'maxLength'> {
  const length = promised === undefined ? -1 : promised.endMin - promised.startMin;
  if (length < minLength || length > maxLength) return { minLength, maxLength };
  return { minLength: length, maxLength: length };
}

/**
 * What is under way is a fact, also where two things ask for the one pair of hands, or an appointment does: while
 * they do, there is as much of it as they take, and nothing for anything else.
 */
function enoughForNow(
  { resources, tasks }: PlannerProblem,
  known: KnownTimes,
): PlannerProblem['resources'] {
  return resources.map((resource) => {
    const uses = tasks.flatMap(({ id, demands }) => {
      const until = known.running.get(id)?.end ?? 0;
      const units = demands[resource.id] ?? 0;
      return units > 0 && until > known.now ? [{ until, units }] : [];
    });
    const taken = (time: number): number =>
      time < known.now
        ? 0
        : uses.reduce((sum, { until, units }) => sum + (time < until ? units : 0), 0);
    const usual = (time: number): number =>
      resource.capacity.reduce((units, step) => (step.from <= time ? step.units : units), 0);
    const times = [
      ...resource.capacity.map(({ from }) => from),
      ...(uses.length > 0 ? [known.now, ...uses.map(({ until }) => until)] : []),
    ];
    const capacity = [...new Set(times)]
      .sort((x, y) => x - y)
      .map((from) => ({ from, units: Math.max(usual(from), taken(from)) }));
    return { ...resource, capacity };
  });
}

/** Tasks that are under way in one oven at two temperatures: the oven is as the latest of them has it. */
function atOneHeat(tasks: readonly Task[], { running }: KnownTimes): Task[] {
  const latest = new Map<string, { readonly state: string; readonly start: number }>();
  for (const { id, needs } of tasks) {
    const start = running.get(id)?.start;
    if (needs === null || start === undefined) continue;
    if ((latest.get(needs.resource)?.start ?? -Infinity) > start) continue;
    latest.set(needs.resource, { state: needs.state, start });
  }
  return tasks.map((task) => {
    const { id, needs } = task;
    const other = needs !== null && latest.get(needs.resource)?.state !== needs.state;
    return running.has(id) && other ? { ...task, needs: null } : task;
  });
}

function promisedTimes(
  { tasks }: PlannerProblem,
  promised: ReadonlyMap<string, PlanEntry>,
  known: KnownTimes,
  originMin: number,
): Placed[] {
  return tasks.flatMap(({ id, minLength }) => {
    const fact = known.placed(id);
    if (fact !== null) return [fact];
    const entry = promised.get(stepOfMeal(id));
    if (entry === undefined) return [];
    const start = entry.startMin - originMin;
    return [{ id, start, end: start + minLength }];
  });
}
