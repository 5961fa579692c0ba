import { filmedTogether, type DayFile } from '#lib/episode/also-filmed';
import { brokenRules, HORIZON } from '#lib/planner/broken-rules';
import { planExactly } from '#lib/planner/plan-exactly';
import type { Placed, PlannerProblem, Task } from '#lib/planner/problem';
import { dayFacts, type DayFacts } from '#lib/shoot/day-facts';
import type { DayFold } from '#lib/shoot/fold-day';
import type { PlanEntry, ShootPlan } from '#lib/shoot/plan';
import { dayPlan } from '#lib/shoot/plan-day';
import { washIdOf } from '#lib/shoot/problem-parts';
import { isHeat, ovenNow, type OvenFacts } from '#lib/shoot/replan-ovens';
import { restOfDay, withRules, type DayNow, type RestOfDay } from '#lib/shoot/replan-problem';
import { rowsNow, type DayClock, type RowNow } from '#lib/shoot/replan-rows';
import { withoutSkipped } from '#lib/shoot/replan-skipped';

/** A plan from now on, and what it was made of. */
export interface Replan {
  readonly plan: ShootPlan;
  /** The file without what was skipped, which the plan is of. */
  readonly file: DayFile;
  readonly facts: DayFacts;
  readonly rows: ReadonlyMap<string, RowNow>;
}

/**
 * How often one search may ask whether to stop. Counted and not timed, so that every machine comes to the same
 * order; a fraction of a second for a day of 40 entries.
 */
const EFFORT = 40;
/** Times that rules are set free and it is looked again. */
const ROUNDS = 4;
const SEED = 1;

/**
 * The rest of a filming day from `clock.nowMin` on, moving as little as possible of what was promised. What is over
 * or under way stays where it was; nothing else begins before now. Where the must-rules cannot all be kept any more
 * it breaks them as little as it finds, and `plan.broken` names them.
 *
 * Laws: where the promised order still keeps every rule, nothing moves; the past never does. Pure and counted:
 * equal input gives an equal plan. Throws if the file has no filming day.
 *
 * @param promised the entries of the order that the person goes by, its changes of the ovens with it
 */
export function replanDay(
  whole: DayFile,
  promised: readonly PlanEntry[],
  fold: DayFold,
  clock: DayClock,
): Replan {
  const rows = rowsNow(promised, fold, clock);
  const skipped = promised.filter(({ id }) => rows.get(id)?.kind === 'skipped');
  const file = withoutSkipped(filmedTogether(whole), {
    stepIds: new Set(skipped.flatMap(({ stepId }) => stepId ?? [])),
    washUps: new Set(
      // A clean-down is never left out: it only comes later.
      skipped.flatMap(({ id, segmentId }) =>
        segmentId !== null && id === washIdOf(segmentId) ? [segmentId] : [],
      ),
    ),
  });
  const facts = dayFacts(file);
  const now: DayNow = { facts, promised, rows, nowMin: clock.nowMin };
  const rest = restOfDay(now);
  const placed = placedFrom(rest);
  const plan = dayPlan(file, {
    choice: rest.choice,
    placed,
    broken: brokenFromNow(rest, placed),
    originMin: rest.originMin,
    proof: { status: 'rules', levels: [], clash: [] },
  });
  return { plan: withHeatsKept(plan, rest.ovens), file, facts, rows };
}

/** Times of everything: as promised where that keeps all, else the least change that is found. */
function placedFrom(rest: RestOfDay): readonly Placed[] {
  const { problem, asPromised, lost } = rest;
  const complete = asPromised.length === problem.tasks.length;
  if (complete && brokenFromNow(rest, asPromised).length === 0) return asPromised;
  const free = new Set(lost);
  for (let round = 0; round <= ROUNDS; round += 1) {
    if (round === ROUNDS) for (const id of softRules(problem)) free.add(id);
    const { placed, status, clash } = searched(rest, free);
    if (placed.length > 0) return placed;
    const clashing = status === 'infeasible' ? (clash?.ids ?? []) : [];
    const next = leastOf(
      clashing.filter((id) => !free.has(id)),
      problem,
    );
    if (next.length === 0) round = Math.max(round, ROUNDS - 1);
    for (const id of next) free.add(id);
  }
  return later(rest);
}

function searched(rest: RestOfDay, free: ReadonlySet<string>) {
  let asked = 0;
  return planExactly(withRules(rest, free), {
    seed: SEED,
    now: () => (asked += 1),
    limitSeconds: EFFORT,
    warmStart: later(rest),
  });
}

/** Rules that a day may go on without: the latest end first, then what must come soon, last what stands out. */
function softRules({ lags, spanLimits }: PlannerProblem): string[] {
  const soon = lags.filter(({ max }) => max !== null).map(({ id }) => id);
  return [HORIZON, ...soon, ...spanLimits.map(({ id }) => id)];
}

/** Of rules that clash, the kind that matters least. */
function leastOf(clash: readonly string[], problem: PlannerProblem): string[] {
  if (clash.includes(HORIZON)) return [HORIZON];
  const soon = clash.filter((id) => problem.lags.some((lag) => lag.id === id && lag.max !== null));
  if (soon.length > 0) return soon;
  return clash.filter((id) => problem.spanLimits.some((limit) => limit.id === id));
}

/** As promised, but all that has not begun later by as much as the first of it, or what is under way, is late. */
function later({ problem, asPromised, known }: RestOfDay): Placed[] {
  const open = asPromised.filter(({ id }) => known.placed(id) === null);
  const earliest = new Map(problem.tasks.map(({ id, notBefore }) => [id, notBefore ?? 0]));
  const late = Math.max(0, ...open.map(({ id, start }) => (earliest.get(id) ?? 0) - start));
  const byId = new Map(asPromised.map((one) => [one.id, one]));
  const last = Math.max(known.now, ...asPromised.map(({ end }) => end)) + late;
  return problem.tasks.map(({ id, minLength }) => {
    const fact = known.placed(id);
    if (fact !== null) return fact;
    const start = (byId.get(id)?.start ?? last - late) + late;
    return { id, start, end: start + minLength };
  });
}

/** Rules that a placement breaks from now on; what the past alone has broken is not among them. */
function brokenFromNow({ problem, known }: RestOfDay, placed: readonly Placed[]): string[] {
  const ended = (id: string): boolean => known.placed(id) !== null && !known.running.has(id);
  const stateOf = new Map<
    string,
    { readonly id: string; readonly state: string; readonly start: number }
  >();
  for (const { id, needs } of problem.tasks) {
    const fact = known.placed(id);
    if (needs === null || fact === null) continue;
    if ((stateOf.get(needs.resource)?.start ?? -Infinity) > fact.start) continue;
    stateOf.set(needs.resource, { id, state: needs.state, start: fact.start });
  }
  const tasks = problem.tasks.map((task): Task => {
    const fact = known.placed(task.id);
    if (fact === null) return task;
    const length = fact.end - fact.start;
    const facts = { ...task, minLength: length, maxLength: length, notBefore: null };
    if (!ended(task.id)) return facts;
    // Of what is over, only where it has left an oven, and since when, concerns the rest.
    const left = stateOf.get(task.needs?.resource ?? '')?.id === task.id;
    return { ...facts, demands: {}, needs: left ? task.needs : null };
  });
  const past = (task: string, anchor: 'start' | 'end'): boolean => known.isPast({ task, anchor });
  return brokenRules(
    {
      ...problem,
      tasks,
      lags: problem.lags.filter(
        ({ from, fromAnchor, to, toAnchor }) => !past(from, fromAnchor) || !past(to, toAnchor),
      ),
      spanLimits: problem.spanLimits.filter(
        ({ spans }) =>
          !spans.every(
            ({ from, fromAnchor, to, toAnchor }) => past(from, fromAnchor) && past(to, toAnchor),
          ),
      ),
      stateful: problem.stateful.map((one) => ({
        ...one,
        initial: stateOf.get(one.id)?.state ?? one.initial,
      })),
    },
    placed,
  );
}

/**
 * The plan with the ovens' changes that have begun as they were promised, and the others under the ids that they
 * had, so that what was marked of one is not taken for another.
 */
function withHeatsKept(plan: ShootPlan, ovens: OvenFacts): ShootPlan {
  const { promised, nowMin, facts } = ovens;
  const begun = new Map(
    facts.ovens.flatMap((oven) => {
      const { heat } = ovenNow(oven, ovens);
      return heat === null ? [] : [[heat.id, heat] as const];
    }),
  );
  const left = promised.filter(isHeat);
  let made = 0;
  const entries = plan.entries.map((entry): PlanEntry => {
    if (!isHeat(entry)) return entry;
    const at = left.findIndex(
      ({ ovenId, kind, title }) =>
        ovenId === entry.ovenId && kind === entry.kind && title === entry.title,
    );
    const [was] = at < 0 ? [] : left.splice(at, 1);
    made += 1;
    if (was === undefined) return { ...entry, id: `oven:${entry.ovenId}:${nowMin}-${made}` };
    const since = begun.get(was.id);
    if (since === undefined) return { ...entry, id: was.id };
    const endMin = Math.min(entry.endMin, Math.max(was.endMin, since.readyMin));
    return { ...entry, id: was.id, startMin: Math.min(since.startMin, endMin), endMin };
  });
  entries.sort(
    (a, b) =>
      a.startMin - b.startMin || Number(b.hands) - Number(a.hands) || (a.id < b.id ? -1 : 1),
  );
  return { ...plan, entries };
}
