import type { Goal, GoalTerm, PlannerProblem, TaskEvent } from '#lib/planner/problem';
import type { CpModel, CpSat, Expression, Linear, Literal } from './cp-sat';

/** Beyond every value of a small problem. */
const FAR = 10_000;

interface Vars {
  readonly start: Expression;
  readonly end: Expression;
  readonly present: Literal;
}

/** Goals that are said to CP-SAT; of states' sums and switches the small problems are tried out in full. */
const SAID: ReadonlySet<GoalTerm['kind']> = new Set([
  'completion',
  'lateness',
  'span',
  'moved',
  'leftOut',
]);

/** Whether a problem can be said to CP-SAT here: its states keep the triangle inequality and their changes take nothing. */
export function canBeSaid({ goals = [], past = null }: PlannerProblem): boolean {
  return (
    past === null &&
    goals.every((goal) => goal.kind === 'latest' || goal.terms.every(({ kind }) => SAID.has(kind)))
  );
}

/** The values of the goals, level by level; null where CP-SAT finds that there is no plan. */
export async function byCpSat(
  cp: CpSat,
  problem: PlannerProblem,
  seconds: number,
): Promise<readonly number[] | null | 'not proven'> {
  const values: number[] = [];
  for (const [level] of (problem.goals ?? []).entries()) {
    const model = new cp.CpModel();
    const vars = tasksOf(model, problem);
    addRules(model, problem, vars);
    const goals = (problem.goals ?? []).map((goal) => goalOf(model, problem, vars, goal));
    for (const [index, value] of values.entries()) {
      model.addLinearConstraint(goals[index] ?? 0, value, value);
    }
    model.minimize(goals[level] ?? 0);
    const solver = new cp.CpSolver();
    const status = solver.statusName(
      await solver.solve(model, { maxTimeInSeconds: seconds, numSearchWorkers: 1 }),
    );
    if (status === 'INFEASIBLE') return null;
    if (status !== 'OPTIMAL') return 'not proven';
    values.push(Math.round(solver.objectiveValue()));
  }
  return values;
}

function tasksOf(model: CpModel, { tasks, horizon }: PlannerProblem): Map<string, Vars> {
  return new Map(
    tasks.map((task) => {
      const present = model.newBoolVar();
      const start = model.newIntVar(0, horizon);
      const end = model.newIntVar(0, horizon);
      if (task.optional !== true) model.addLinearConstraint(present, 1, 1);
      const here = [present];
      model
        .addLinearConstraint(end.minus(start), task.minLength, task.maxLength)
        .onlyEnforceIf(here);
      model.addLinearConstraint(start, task.notBefore ?? 0, horizon).onlyEnforceIf(here);
      model.addLinearConstraint(end, 0, task.endBy ?? horizon).onlyEnforceIf(here);
      return [task.id, { start, end, present }];
    }),
  );
}

const of = (vars: ReadonlyMap<string, Vars>, id: string): Vars => {
  const found = vars.get(id);
  if (found === undefined) throw new Error(`there is no task "${id}"`);
  return found;
};
const at = (vars: ReadonlyMap<string, Vars>, { task, anchor }: TaskEvent): Expression =>
  of(vars, task)[anchor];

function addRules(model: CpModel, problem: PlannerProblem, vars: ReadonlyMap<string, Vars>): void {
  for (const { from, fromAnchor, to, toAnchor, min, max } of problem.lags) {
    const gap = of(vars, to)[toAnchor].minus(of(vars, from)[fromAnchor]);
    const both = [of(vars, from).present, of(vars, to).present];
    model.addLinearConstraint(gap, min ?? -FAR, max ?? FAR).onlyEnforceIf(both);
  }
  for (const { id, capacity } of problem.resources) {
    const most = Math.max(...capacity.map(({ units }) => units));
    const users = problem.tasks.filter(({ demands }) => (demands[id] ?? 0) > 0);
    const intervals = users.map((task) => {
      const { start, end, present } = of(vars, task.id);
      // Its lengths are ruled above; a variable of 0 or 1 would be taken for a truth value.
      const size = model.newIntVar(task.minLength, task.maxLength + 2);
      return model.newOptionalIntervalVar(start, size, end, present);
    });
    // What a step lacks to the most is taken by an interval of its own.
    const lacks = capacity.flatMap(({ from, units }, index) => {
      const until = capacity[index + 1]?.from ?? FAR;
      const length = until - Math.max(0, from);
      if (units === most || length <= 0) return [];
      const interval = model.newFixedSizeIntervalVar(Math.max(0, from), length);
      return [{ interval, units: most - units }];
    });
    model.addCumulative(
      [...intervals, ...lacks.map(({ interval }) => interval)],
      [...users.map(({ demands }) => demands[id] ?? 0), ...lacks.map(({ units }) => units)],
      most,
    );
  }
  addStates(model, problem, vars);
  for (const { tasks, least, most } of problem.choices ?? []) {
    const sum = tasks.reduce<Linear>((all, id) => add(all, of(vars, id).present), 0);
    model.addLinearConstraint(sum, least, most);
  }
  for (const { spans, limit } of problem.spanLimits) {
    const sum = spans.reduce<Linear>((all, { from, fromAnchor, to, toAnchor }) => {
      const start = { task: from, anchor: fromAnchor };
      return add(all, positive(model, vars, start, { task: to, anchor: toAnchor }));
    }, 0);
    model.addLinearConstraint(sum, -FAR, limit);
  }
}

/** One of two tasks in different states ends so long before the other starts; the first comes after the initial state. */
function addStates(
  model: CpModel,
  { stateful, tasks }: PlannerProblem,
  vars: ReadonlyMap<string, Vars>,
): void {
  for (const { id, initial, changeover } of stateful) {
    const users = tasks.flatMap((task) =>
      task.needs?.resource === id ? [{ vars: of(vars, task.id), state: task.needs.state }] : [],
    );
    for (const [index, a] of users.entries()) {
      const first = a.state === initial ? 0 : (changeover[initial]?.[a.state] ?? FAR);
      model.addLinearConstraint(a.vars.start, first, FAR).onlyEnforceIf([a.vars.present]);
      for (const b of users.slice(index + 1)) {
        if (a.state === b.state) continue;
        const order = model.newBoolVar();
        const both = [a.vars.present, b.vars.present];
        model
          .addLinearConstraint(
            b.vars.start.minus(a.vars.end),
            changeover[a.state]?.[b.state] ?? FAR,
            FAR,
          )
          .onlyEnforceIf([...both, order]);
        model
          .addLinearConstraint(
            a.vars.start.minus(b.vars.end),
            changeover[b.state]?.[a.state] ?? FAR,
            FAR,
          )
          .onlyEnforceIf([...both, order.not()]);
      }
    }
  }
}

const add = (a: Linear, b: Linear): Linear =>
  typeof a === 'number' ? (typeof b === 'number' ? a + b : b.plus(a)) : a.plus(b);

/** `value` where all are in the plan, else 0. */
function whereAll(
  model: CpModel,
  literals: readonly Literal[],
  value: Expression,
  low: number,
): Expression {
  const counted = model.newIntVar(low, FAR);
  model.addLinearConstraint(counted.minus(value), 0, 0).onlyEnforceIf(literals);
  for (const literal of literals) {
    model.addLinearConstraint(counted, 0, 0).onlyEnforceIf([literal.not()]);
  }
  return counted;
}

function positive(
  model: CpModel,
  vars: ReadonlyMap<string, Vars>,
  from: TaskEvent,
  to: TaskEvent,
): Expression {
  const span = model.newIntVar(0, FAR);
  model.addMaxEquality(span, [0, at(vars, to).minus(at(vars, from))]);
  const both = [of(vars, from.task).present, of(vars, to.task).present];
  return whereAll(model, both, span, 0);
}

function goalOf(
  model: CpModel,
  problem: PlannerProblem,
  vars: ReadonlyMap<string, Vars>,
  goal: Goal,
): Linear {
  if (goal.kind === 'sum') {
    return goal.terms.reduce<Linear>((all, term) => add(all, termOf(model, vars, term)), 0);
  }
  const events =
    goal.events === 'all ends'
      ? problem.tasks.map(({ id }): TaskEvent => ({ task: id, anchor: 'end' }))
      : goal.events;
  if (goal.grid === undefined || goal.grid.step === 1) {
    const latest = model.newIntVar(0, FAR);
    const ends = events.map((event) =>
      whereAll(model, [of(vars, event.task).present], at(vars, event), 0),
    );
    model.addMaxEquality(latest, [0, ...ends]);
    return latest;
  }
  throw new Error('a wrap on a grid is not said to CP-SAT');
}

function termOf(model: CpModel, vars: ReadonlyMap<string, Vars>, term: GoalTerm): Linear {
  switch (term.kind) {
    case 'completion': {
      const { present } = of(vars, term.event.task);
      return whereAll(model, [present], at(vars, term.event), 0).times(term.weight);
    }
    case 'lateness': {
      const { present } = of(vars, term.event.task);
      const time = at(vars, term.event);
      const late = model.newIntVar(0, FAR);
      const early = model.newIntVar(0, FAR);
      model.addMaxEquality(late, [0, time.minus(term.due)]);
      model.addMaxEquality(early, [0, time.times(-1).plus(term.due)]);
      return add(
        whereAll(model, [present], late, 0).times(term.late),
        whereAll(model, [present], early, 0).times(term.early),
      );
    }
    case 'span':
      return positive(model, vars, term.from, term.to).times(term.weight);
    case 'moved':
      return term.from.reduce<Linear>((all, { id, start }) => {
        const away = model.newIntVar(0, FAR);
        model.addAbsEquality(away, of(vars, id).start.minus(start));
        const { present } = of(vars, id);
        return add(all, whereAll(model, [present], away, 0).times(term.weight));
      }, 0);
    case 'leftOut':
      return of(vars, term.task).present.times(-term.weight).plus(term.weight);
    case 'changeover':
    case 'stateOn':
    case 'switches':
      throw new Error(`${term.kind} is not said to CP-SAT`);
  }
}
