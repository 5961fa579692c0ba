import type { StatefulResource } from '#lib/planner/problem';
import type { DayFacts } from '#lib/shoot/day-facts';
import { ceilMin } from '#lib/shoot/minutes';
import {
  addBeside,
  cleanIdOf,
  CONTACT,
  HANDS,
  lag,
  mark,
  taskIdOf,
  type Draft,
} from '#lib/shoot/problem-parts';
import type { Segment } from '#lib/episode/schema';
import type { Step } from '#lib/episode/step-schema';

/** What was on hands and board last. From raw to ready to eat there is no way but over a clean-down. */
const STATES: StatefulResource = {
  id: CONTACT,
  initial: 'clean',
  changeover: {
    clean: { clean: 0, rawAnimal: 0, readyToEat: 0 },
    rawAnimal: { clean: 0, rawAnimal: 0 },
    readyToEat: { clean: 0, rawAnimal: 0, readyToEat: 0 },
  },
};

/** The steps of a segment in which hands touch raw meat, poultry, fish or egg. */
export function rawSteps(segment: Segment): readonly Step[] {
  return segment.steps.filter(({ contact }) => contact === 'rawAnimal');
}

/** Segments after whose raw work hands, board and counter are cleaned, in viewing order. */
export function cleanedSegments(facts: DayFacts): readonly Segment[] {
  return facts.segments.filter((segment) => rawSteps(segment).length > 0);
}

/**
 * Raw animal food never comes between, or before, work on what is eaten as it is without a clean-down: each segment
 * with raw work gets one after the last of it, a task that takes the hands. FDA Food Code 2022, 3-302.11 (separation)
 * and 2-301.14 (when to wash).
 */
export function addContact(facts: DayFacts, draft: Draft): void {
  const touching = facts.steps.filter(({ step }) => step.contact !== null);
  if (touching.length === 0) return;
  for (const { step } of touching) {
    const index = draft.tasks.findIndex(({ id }) => id === taskIdOf(step.id));
    const task = draft.tasks[index];
    if (task === undefined || step.contact === null) continue;
    const needs = { resource: CONTACT, state: step.contact };
    if (task.needs === null) draft.tasks[index] = { ...task, needs };
    else addBeside(draft, `touch:${step.id}`, task, needs);
  }
  for (const segment of cleanedSegments(facts)) {
    const id = cleanIdOf(segment.id);
    const length = ceilMin(facts.cleanDownS);
    draft.tasks.push({
      ...mark(id),
      minLength: length,
      maxLength: length,
      notBefore: 0,
      demands: { [HANDS]: 1 },
      needs: { resource: CONTACT, state: 'clean' },
      group: segment.id,
    });
    for (const step of rawSteps(segment)) {
      draft.lags.push(lag(`${id}:${step.id}`, taskIdOf(step.id), 'end', id, 0));
    }
  }
  draft.stateful.push(STATES);
}
