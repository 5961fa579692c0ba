import type {
  Deviation,
  Event,
  Goal as ExactGoal,
  RowCost,
  RowUser,
  Span,
} from '#lib/planner/exact/problem';
import type { WholeProblem } from '#lib/planner/face/defaults';
import type { PastFacts } from '#lib/planner/face/past';
import type { MappedStates } from '#lib/planner/face/states-to-exact';
import type { Goal, GoalTerm, ResourceId, TaskEvent } from '#lib/planner/problem';

/** What the goals are made of: the problem and its parts as the engine has them. */
export interface GoalSources {
  readonly problem: WholeProblem;
  readonly past: PastFacts;
  readonly eventOf: (event: TaskEvent) => Event;
  readonly placeOf: ReadonlyMap<string, number>;
  readonly states: readonly MappedStates[];
}

/** A goal in the engine's words. */
export function mapGoal(goal: Goal, sources: GoalSources): ExactGoal {
  const { problem, eventOf } = sources;
  if (goal.kind === 'latest') {
    const events =
      goal.events === 'all ends'
        ? problem.tasks.map(({ id }): TaskEvent => ({ task: id, anchor: 'end' }))
        : goal.events;
    const latest = { name: goal.id, kind: 'latest', events: events.map(eventOf) } as const;
    return goal.grid === undefined ? latest : { ...latest, grid: goal.grid };
  }
  return {
    name: goal.id,
    kind: 'sum',
    deviations: goal.terms.flatMap((term) => deviationsOf(term, sources)),
    spans: goal.terms.flatMap((term): Span[] =>
      term.kind === 'span'
        ? [{ from: eventOf(term.from), to: eventOf(term.to), weight: term.weight }]
        : [],
    ),
    rows: [...stateCosts(goal.terms, sources), ...switchCosts(goal.terms, sources)],
    absent: goal.terms.flatMap((term) =>
      term.kind === 'leftOut'
        ? [{ task: sources.placeOf.get(term.task) ?? -1, weight: term.weight }]
        : [],
    ),
  };
}

function deviationsOf(term: GoalTerm, { eventOf, placeOf }: GoalSources): Deviation[] {
  switch (term.kind) {
    case 'completion':
      return [{ event: eventOf(term.event), due: 0, early: 0, late: term.weight }];
    case 'lateness':
      return [{ event: eventOf(term.event), due: term.due, early: term.early, late: term.late }];
    case 'moved':
      return term.from
        .filter(({ id }) => placeOf.has(id))
        .map(({ id, start }) => ({
          event: eventOf({ task: id, anchor: 'start' }),
          due: start,
          early: term.weight,
          late: term.weight,
        }));
    case 'span':
    case 'changeover':
    case 'stateOn':
    case 'switches':
    case 'leftOut':
      return [];
  }
}

/** Time in use and in changeovers: one row for each resource, so that both are weighed together. */
function stateCosts(terms: readonly GoalTerm[], { states }: GoalSources): RowCost[] {
  const weight = (kind: 'stateOn' | 'changeover', id: ResourceId): number =>
    terms.reduce(
      (sum, term) => sum + (term.kind === kind && term.resource === id ? term.weight : 0),
      0,
    );
  return states.flatMap(({ resource: { id }, row, states: { initial, change } }) => {
    const on = weight('stateOn', id);
    const changing = weight('changeover', id);
    if (on === 0 && changing === 0) return [];
    const fromInitial = change[initial] ?? [];
    return [
      {
        name: id,
        users: row,
        change: change.map((times) => times.map((time) => changing * (time ?? 0))),
        first: fromInitial.map((time) => changing * (time ?? 0)),
        on,
        keep: fromInitial,
        onlyLong: false,
      },
    ];
  });
}

/** Neighbours of different groups on a resource: a row in which each change costs the same. */
function switchCosts(
  terms: readonly GoalTerm[],
  { problem, past, eventOf }: GoalSources,
): RowCost[] {
  return terms.flatMap((term) => {
    if (term.kind !== 'switches' || term.weight === 0) return [];
    const groups = [...new Set(problem.tasks.map(({ group }) => group))];
    const users = problem.tasks.flatMap((task, index): RowUser[] => {
      const begun = past.begun.get(task.id);
      // What is under way is at least as long as it has been.
      const since = begun === undefined ? 0 : (begun.end ?? past.now ?? 0) - begun.start;
      const most = begun?.end == null ? Math.max(task.maxLength, since) : since;
      if ((task.demands[term.resource] ?? 0) === 0 || most === 0) return [];
      return [
        {
          task: index,
          begin: eventOf({ task: task.id, anchor: 'start' }),
          kind: groups.indexOf(task.group),
          past: begun !== undefined,
        },
      ];
    });
    return [
      {
        name: term.resource,
        users,
        change: groups.map((from) => groups.map((to) => (from === to ? 0 : term.weight))),
        first: groups.map(() => 0),
        on: 0,
        keep: groups.map(() => null),
        onlyLong: true,
      },
    ];
  });
}
