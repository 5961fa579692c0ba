import { bindingsOf, type Binding, type PlanToExplain } from '#lib/planner/bindings';
import type { PlannerProblem, TaskId } from '#lib/planner/problem';

/** One link of a chain: the task starts then because of this. */
export interface ChainLink {
  readonly task: TaskId;
  readonly start: number;
  /** What keeps it from starting earlier; null where nothing does. */
  readonly because: Binding | null;
}

/**
 * For each start, why then: the chain of what binds it, back to the day's start (or a window, or what has
 * begun). Each link's `because.from` is the task of the next. A chain ends early, with `because` null, where
 * a task could start earlier by itself and stands later for the sake of another goal.
 *
 * @example chainsOf(problem, plan).get('c') // c after b (lag "rest"), b after a (hands), a at the day's start
 */
export function chainsOf(
  problem: PlannerProblem,
  plan: PlanToExplain,
): ReadonlyMap<TaskId, readonly ChainLink[]> {
  const bindings = bindingsOf(problem, plan);
  const startOf = new Map(plan.placed.map(({ id, start }) => [id, start]));
  const chain = (task: TaskId, seen: ReadonlySet<TaskId>): readonly ChainLink[] => {
    const start = startOf.get(task) ?? 0;
    const all = bindings.get(task) ?? [];
    const [root] = all.filter(({ from }) => from === null);
    if (root !== undefined) return [{ task, start, because: root }];
    let best: readonly ChainLink[] | null = null;
    for (const because of [...all].sort(byTime(startOf))) {
      const next = because.from?.task;
      if (next === undefined || seen.has(next)) continue;
      const rest = chain(next, new Set([...seen, next]));
      const whole = [{ task, start, because }, ...rest];
      // The first that leads back all the way.
      if (isWhole(rest)) return whole;
      best ??= whole;
    }
    return best ?? [{ task, start, because: all[0] ?? null }];
  };
  return new Map(plan.placed.map(({ id }) => [id, chain(id, new Set([id]))]));
}

/** The chain to the task that ends last: what would have to give for the day to end earlier. */
export function criticalChain(problem: PlannerProblem, plan: PlanToExplain): readonly ChainLink[] {
  const last = plan.placed.reduce<PlanToExplain['placed'][number] | null>(
    (latest, one) => (latest === null || one.end > latest.end ? one : latest),
    null,
  );
  return last === null ? [] : (chainsOf(problem, plan).get(last.id) ?? []);
}

function isWhole(chain: readonly ChainLink[]): boolean {
  const because = chain.at(-1)?.because ?? null;
  return because !== null && because.from === null;
}

/** What began earlier first: most chains lead back in time. */
function byTime(startOf: ReadonlyMap<TaskId, number>) {
  const start = ({ from }: Binding): number => startOf.get(from?.task ?? '') ?? 0;
  return (a: Binding, b: Binding): number => start(a) - start(b);
}
