import { orderGraph } from '#lib/planner/simulate/order-graph';
import type { OrderGraph } from '#lib/planner/simulate/pass';
import { promisesOf, type KeptOrNot } from '#lib/planner/simulate/promises';
import type { Spread } from '#lib/planner/simulate/triangular';
import type { DayFacts } from '#lib/shoot/day-facts';
import { inDaylight, type Daylight } from '#lib/shoot/daylight';
import type { SolvedDay } from '#lib/shoot/solve-day';
import { taskIdOf } from '#lib/shoot/problem-parts';
import { toProblem, type DayProblem } from '#lib/shoot/to-problem';

/** What the day promises: what the planner's problem promises, and steps that need the sun. */
export interface DayPromise extends Omit<KeptOrNot, 'kind'> {
  readonly kind: KeptOrNot['kind'] | 'daylight';
}

/** A day's order as a graph, with what it promises. */
export interface DayGraph {
  readonly day: DayProblem;
  readonly graph: OrderGraph;
  readonly promises: readonly DayPromise[];
}

/** The order of the solved day and what it promises. */
export function dayGraph(
  facts: DayFacts,
  solved: Pick<SolvedDay, 'choice' | 'placed'>,
  daylight: Daylight | null,
): DayGraph {
  const day = toProblem(facts, solved.choice);
  const graph = orderGraph(day.problem, solved.placed);
  const place = new Map(graph.ids.map((id, index) => [id, index]));
  const lit = facts.steps.flatMap(({ step }): DayPromise[] => {
    const task = place.get(taskIdOf(step.id));
    if (!step.daylight || daylight === null || task === undefined) return [];
    const kept: DayPromise['kept'] = ({ start, end }) =>
      inDaylight(daylight, (start[task] ?? 0) + day.originMin, (end[task] ?? 0) + day.originMin) ===
      true;
    return [{ kind: 'daylight', id: taskIdOf(step.id), at: null, kept }];
  });
  const pinned = new Set(
    facts.day.pins.flatMap((pin) => (pin.notAfterMin === null ? [] : [taskIdOf(pin.stepId)])),
  );
  const asked = promisesOf(day.problem, graph).filter(({ kind, id }) => {
    if (kind === 'horizon') return facts.day.wrapByMin !== null;
    // The latest end of a step that needs the sun is told as daylight.
    return kind !== 'end' || pinned.has(id) || !id.startsWith('step:');
  });
  return { day, graph, promises: [...asked, ...lit] };
}

/** How long each step may take, in minutes, by its task's id; of a length that the plan chose nothing. */
export function spreadsOf(facts: DayFacts): ReadonlyMap<string, Spread> {
  return new Map(
    facts.steps
      .filter(({ step }) => step.choose === null)
      .map(({ step }) => [
        taskIdOf(step.id),
        { low: step.lowS / 60, mode: step.usualS / 60, high: step.highS / 60 },
      ]),
  );
}
