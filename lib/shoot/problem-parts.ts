import type { Lag, PlannerProblem, StatefulResource, Task } from '#lib/planner/problem';

/** Ids in the day's problem: the kind before the first colon, the file's own id after it. */
export const taskIdOf = (stepId: string): string => `step:${stepId}`;
export const washIdOf = (segmentId: string): string => `wash:${segmentId}`;
export const cleanIdOf = (segmentId: string): string => `clean:${segmentId}`;
export const mealIdOf = (stepId: string): string => `meal:${stepId}`;
export const ovenStateId = (ovenId: string): string => `oven:${ovenId}`;
export const useId = (stepId: string, ovenId: string): string => `use:${stepId}:${ovenId}`;
export const HANDS = 'hands';
export const CAMERA = 'camera';
export const BURNERS = 'burners';
export const MEALS = 'meals';
export const COUNTER = 'counter';
export const CONTACT = 'contact';
export const SET_UP = 'setUp';

/** What rules add to while the day's problem is made. */
export interface Draft {
  readonly tasks: Task[];
  readonly lags: Lag[];
  readonly stateful: StatefulResource[];
  readonly resources: PlannerProblem['resources'][number][];
}

/** A task without length that takes nothing. */
export function mark(id: string): Task {
  return {
    id,
    minLength: 0,
    maxLength: 0,
    notBefore: null,
    endBy: null,
    demands: {},
    needs: null,
    group: null,
  };
}

/** `to` starts at least so many minutes after an anchor of `from`. */
export function lag(
  id: string,
  from: string,
  fromAnchor: 'start' | 'end',
  to: string,
  min: number,
): Lag {
  return { id, from, fromAnchor, to, toAnchor: 'start', min, max: null };
}

/**
 * A task beside another, from its start to its end, that needs a state of its own: a task itself has room for one
 * such need, and a step in the oven has that already.
 */
export function addBeside(draft: Draft, id: string, of: Task, needs: Task['needs']): void {
  draft.tasks.push({
    ...mark(id),
    minLength: of.minLength,
    maxLength: of.maxLength,
    needs,
  });
  for (const anchor of ['start', 'end'] as const) {
    draft.lags.push({ ...lag(id, of.id, anchor, id, 0), toAnchor: anchor, max: 0 });
  }
}
