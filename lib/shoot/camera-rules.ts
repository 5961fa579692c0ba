import type { StatefulResource } from '#lib/planner/problem';
import type { DayFacts, DayStep } from '#lib/shoot/day-facts';
import { ceilMin } from '#lib/shoot/minutes';
import { addBeside, HANDS, SET_UP, taskIdOf, type Draft } from '#lib/shoot/problem-parts';

/** Steps that say where the camera stands, where the kitchen counts the minutes of moving it. */
export function stepsWithSetUp(facts: DayFacts): readonly DayStep[] {
  if (facts.cameraChangeS === null) return [];
  return facts.steps.filter(({ step }) => step.onCamera && step.cameraSetUp !== '');
}

/** Whole minutes to move the camera; 0 where that is not counted. */
export function cameraMoveMin({ cameraChangeS }: DayFacts): number {
  return ceilMin(cameraChangeS ?? 0);
}

/** From one set-up of the camera to another it is moved, which takes its minutes and the hands. */
export function addCameraSetUps(facts: DayFacts, draft: Draft): void {
  const steps = stepsWithSetUp(facts);
  const states = [...new Set(steps.map(({ step }) => step.cameraSetUp))];
  const minutes = cameraMoveMin(facts);
  if (minutes === 0 || states.length < 2) return;
  const rows = <T>(of: (from: string | null, to: string) => T): Record<string, Record<string, T>> =>
    Object.fromEntries([
      ['', Object.fromEntries(states.map((to) => [to, of(null, to)]))],
      ...states.map((from) => [from, Object.fromEntries(states.map((to) => [to, of(from, to)]))]),
    ]) as Record<string, Record<string, T>>;
  const moved = (from: string | null, to: string): boolean => from !== null && from !== to;
  for (const { step } of steps) {
    const task = draft.tasks.find(({ id }) => id === taskIdOf(step.id));
    if (task === undefined) continue;
    addBeside(draft, `camera:${step.id}`, task, { resource: SET_UP, state: step.cameraSetUp });
  }
  const setUps: StatefulResource = {
    id: SET_UP,
    initial: '',
    changeover: rows((from, to) => (moved(from, to) ? minutes : 0)),
    changeoverDemands: rows((from, to): Record<string, number> =>
      moved(from, to) ? { [HANDS]: 1 } : {},
    ),
  };
  draft.stateful.push(setUps);
}
