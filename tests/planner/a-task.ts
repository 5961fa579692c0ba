import type { Task } from '#lib/planner/problem';

/** A task of one length that asks for nothing but what is said. */
export const aTask = (id: string, length: number, more: Partial<Task> = {}): Task => ({
  id,
  minLength: length,
  maxLength: length,
  notBefore: null,
  endBy: null,
  demands: {},
  needs: null,
  group: null,
  ...more,
});
