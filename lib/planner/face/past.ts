import type { WholeProblem } from '#lib/planner/face/defaults';
import type { Begun, TaskEvent, TaskId } from '#lib/planner/problem';

/** Which events lie in the past, and what is known of the tasks that have begun. */
export interface PastFacts {
  /** No task that has not begun starts before this; null where nothing has. */
  readonly now: number | null;
  readonly begun: ReadonlyMap<TaskId, Begun>;
  isPast(event: TaskEvent): boolean;
}

/** Looks up what has begun. */
export function pastFacts({ past }: WholeProblem): PastFacts {
  const begun = new Map((past?.begun ?? []).map((one) => [one.id, one]));
  return {
    now: past?.now ?? null,
    begun,
    isPast: ({ task, anchor }) => {
      const one = begun.get(task);
      return one !== undefined && (anchor === 'start' || one.end !== null);
    },
  };
}
