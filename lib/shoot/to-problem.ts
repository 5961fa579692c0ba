import type { Choice, Lag, PlannerProblem, StatefulResource, Task } from '#lib/planner/problem';
import { addCameraSetUps } from '#lib/shoot/camera-rules';
import { addContact } from '#lib/shoot/contact-rules';
import { soilingSteps, type DayFacts, type DayStep } from '#lib/shoot/day-facts';
import { ceilMin, floorMin, lengthRange } from '#lib/shoot/minutes';
import type { OpenOvenStep, OvenChoice } from '#lib/shoot/oven-choice';
import {
  BURNERS,
  CAMERA,
  COUNTER,
  HANDS,
  lag,
  mark,
  mealIdOf,
  MEALS,
  ovenStateId,
  taskIdOf,
  useId,
  washIdOf,
  type Draft,
} from '#lib/shoot/problem-parts';
import { resourcesOf, statesOf } from '#lib/shoot/problem-resources';
import { latestEnd, stepWindow } from '#lib/shoot/step-window';
import { addBeforeBite, addStory } from '#lib/shoot/story-rules';

/** The day as a planner's problem, and how its time and ids are read. */
export interface DayProblem {
  readonly problem: PlannerProblem;
  /** Minute of the day at the planner's time 0. */
  readonly originMin: number;
}

/** Longest day that is planned where no wrap time is asked for: ten days, in minutes. */
const NO_WRAP_LIMIT = 14_400;

/**
 * The filming day as tasks, resources, states and lags in whole minutes; lags are rounded so that
 * the seconds they stand for are kept (least ones up, greatest ones down). A limit that a link leaves
 * out does not bind: with a greatest lag alone, the second step may also come first.
 *
 * In a packed day meals are kept apart by an extra task without length at each meal's start: each needs
 * a state of its own of 'meals', and going from one to another takes the gap. Time 0 is the day's start.
 *
 * A step of `open` gets an optional task for each oven that fits, as long as itself, and one of them is chosen.
 */
export function toProblem(
  facts: DayFacts,
  choice: OvenChoice,
  open: readonly OpenOvenStep[] = [],
): DayProblem {
  const { day } = facts;
  const originMin = day.startMin;
  const tasks = facts.steps.map((entry) => stepTask(entry, facts, choice));
  const lags: Lag[] = facts.links.map((link) => ({
    id: `link:${link.id}`,
    from: taskIdOf(link.fromStepId),
    fromAnchor: link.fromAnchor,
    to: taskIdOf(link.toStepId),
    toAnchor: link.toAnchor,
    min: link.minLagS === null ? null : ceilMin(link.minLagS),
    max: link.maxLagS === null ? null : floorMin(link.maxLagS),
  }));
  const draft: Draft = { tasks, lags, stateful: [], resources: resourcesOf(facts, originMin) };
  addWashingUp(facts, tasks, lags);
  for (const { step } of facts.steps) addLatestStart(step, facts, draft);
  addContact(facts, draft);
  addCameraSetUps(facts, draft);
  addStory(facts, draft);
  addBeforeBite(facts, draft);
  const apart = day.kind === 'packed' && day.mealGapMin > 0 ? eatenMeals(facts) : [];
  if (day.kind === 'asLived') addViewingOrder(facts, lags);
  if (apart.length > 1) for (const stepId of apart) addMeal(stepId, tasks, lags);
  const choices = open.map((step) => addUses(step, tasks, lags));
  return {
    problem: {
      horizon: (day.wrapByMin ?? day.startMin + NO_WRAP_LIMIT) - originMin,
      tasks,
      resources: draft.resources,
      stateful: [
        ...facts.ovens.map((oven) => statesOf(facts, choice, open, oven)),
        ...(apart.length > 1 ? [mealsApart(apart, day.mealGapMin)] : []),
        ...draft.stateful,
      ],
      lags,
      choices,
      spanLimits: facts.segments.flatMap((segment) =>
        segment.perishables
          .filter((lot) => !lot.thrownAway)
          .map((lot) => ({
            id: `lot:${lot.id}`,
            limit: floorMin(lot.limitS),
            spans: lot.spans
              .filter((s) => facts.stepById.has(s.fromStepId) && facts.stepById.has(s.toStepId))
              .map((s) => ({
                from: taskIdOf(s.fromStepId),
                fromAnchor: s.fromAnchor,
                to: taskIdOf(s.toStepId),
                toAnchor: s.toAnchor,
              })),
          })),
      ),
    },
    originMin,
  };
}

/** A step as a task: its length, its window, and what it takes of hands, camera, heat, appliances and counter. */
function stepTask({ step, segment }: DayStep, facts: DayFacts, choice: OvenChoice): Task {
  const length = lengthRange(step);
  const ovenId = choice.get(step.id) ?? null;
  const originMin = facts.day.startMin;
  const end = latestEnd(step, facts);
  const demands: Record<string, number> = {};
  if (step.hands) demands[HANDS] = 1;
  if (step.onCamera) demands[CAMERA] = 1;
  if (step.burners > 0) demands[BURNERS] = step.burners;
  if (ovenId !== null && step.racks > 0) demands[`racks:${ovenId}`] = step.racks;
  if (facts.appliances.some(({ id }) => id === step.applianceId)) {
    demands[`appliance:${step.applianceId}`] = 1;
  }
  if (facts.counterPlaces !== null && step.counter > 0) demands[COUNTER] = step.counter;
  return {
    id: taskIdOf(step.id),
    minLength: length.min,
    maxLength: length.max,
    notBefore: stepWindow(step, facts).startFrom - originMin,
    endBy: end === null ? null : end - originMin,
    demands,
    needs:
      ovenId === null || step.oven === null
        ? null
        : { resource: ovenStateId(ovenId), state: String(step.oven.milliC) },
    group: segment.id,
  };
}

/** Of a step whose length the plan chooses, a window holds the end only: a mark at its start is held instead. */
function addLatestStart(step: DayStep['step'], facts: DayFacts, draft: Draft): void {
  const { startUntil } = stepWindow(step, facts);
  const length = lengthRange(step);
  if (startUntil === null || length.min === length.max) return;
  const id = `start:${step.id}`;
  draft.tasks.push({ ...mark(id), endBy: startUntil - facts.day.startMin });
  draft.lags.push({ ...lag(id, id, 'start', taskIdOf(step.id), 0), max: 0 });
}

function addWashingUp(facts: DayFacts, tasks: Task[], lags: Lag[]): void {
  for (const segment of facts.segments) {
    if (segment.washUpS === 0) continue;
    const id = washIdOf(segment.id);
    const length = ceilMin(segment.washUpS);
    tasks.push({
      id,
      minLength: length,
      maxLength: length,
      notBefore: 0,
      endBy: null,
      demands: { [HANDS]: 1 },
      needs: null,
      group: segment.id,
    });
    for (const step of soilingSteps(segment)) {
      lags.push(lag(`wash:${segment.id}:${step.id}`, taskIdOf(step.id), 'end', id, 0));
    }
  }
}

/** As lived: meals in viewing order, and those really eaten so far apart. */
function addViewingOrder(facts: DayFacts, lags: Lag[]): void {
  facts.meals.forEach((meal, index) => {
    const next = facts.meals[index + 1];
    if (next === undefined) return;
    const id = `order:${meal.stepId}`;
    lags.push(lag(id, taskIdOf(meal.stepId), 'start', taskIdOf(next.stepId), 0));
  });
  const eaten = facts.meals.filter((meal) => meal.segment.eaten.num > 0);
  eaten.forEach((meal, index) => {
    const next = eaten[index + 1];
    if (next === undefined) return;
    const id = `gap:${meal.stepId}`;
    const gap = facts.day.mealGapMin;
    lags.push(lag(id, taskIdOf(meal.stepId), 'start', taskIdOf(next.stepId), gap));
  });
}

function eatenMeals(facts: DayFacts): string[] {
  return facts.meals.filter((meal) => meal.segment.eaten.num > 0).map((meal) => meal.stepId);
}

function addMeal(stepId: string, tasks: Task[], lags: Lag[]): void {
  const id = mealIdOf(stepId);
  tasks.push({ ...mark(id), needs: { resource: MEALS, state: id } });
  lags.push({ ...lag(id, id, 'start', taskIdOf(stepId), 0), max: 0 });
}

/** One task for each oven that could take the step, of which one is in the plan. */
function addUses({ entry, fits }: OpenOvenStep, tasks: Task[], lags: Lag[]): Choice {
  const { step, segment } = entry;
  const id = taskIdOf(step.id);
  const length = lengthRange(step);
  const uses = fits.map((ovenId) => useId(step.id, ovenId));
  fits.forEach((ovenId, index) => {
    const use = uses[index] ?? '';
    tasks.push({
      id: use,
      minLength: length.min,
      maxLength: length.max,
      notBefore: null,
      endBy: null,
      demands: step.racks > 0 ? { [`racks:${ovenId}`]: step.racks } : {},
      needs:
        step.oven === null
          ? null
          : { resource: ovenStateId(ovenId), state: String(step.oven.milliC) },
      group: segment.id,
      optional: true,
    });
    for (const anchor of ['start', 'end'] as const) {
      lags.push({ ...lag(use, id, anchor, use, 0), toAnchor: anchor, max: 0 });
    }
  });
  return { id: `use:${step.id}`, tasks: uses, least: 1, most: 1 };
}

function mealsApart(stepIds: readonly string[], gap: number): StatefulResource {
  const states = stepIds.map(mealIdOf);
  const toAll = (own: string | null) =>
    Object.fromEntries(states.map((to) => [to, own === null || own === to ? 0 : gap]));
  return {
    id: MEALS,
    initial: 'none',
    changeover: Object.fromEntries([
      ['none', toAll(null)],
      ...states.map((from) => [from, toAll(from)]),
    ]) as StatefulResource['changeover'],
  };
}
