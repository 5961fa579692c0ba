import type { Resource, StatefulResource } from '#lib/planner/problem';
import type { DayFacts } from '#lib/shoot/day-facts';
import { changeMin } from '#lib/shoot/minutes';
import type { OpenOvenStep, OvenChoice } from '#lib/shoot/oven-choice';
import { BURNERS, CAMERA, COUNTER, HANDS, ovenStateId } from '#lib/shoot/problem-parts';

/** What the kitchen and the person have of hands, camera, burners, racks, appliances and counter over the day. */
export function resourcesOf(facts: DayFacts, originMin: number): Resource[] {
  const constant = (id: string, units: number): Resource => ({
    id,
    capacity: [{ from: 0, units }],
  });
  return [
    { id: HANDS, capacity: handsOverTheDay(facts, originMin) },
    constant(CAMERA, 1),
    constant(BURNERS, facts.burners),
    ...facts.ovens.map((oven) => constant(`racks:${oven.id}`, oven.racks)),
    ...facts.appliances.map(({ id, places }) => constant(`appliance:${id}`, places)),
    ...(facts.counterPlaces === null ? [] : [constant(COUNTER, facts.counterPlaces)]),
  ];
}

/** One pair of hands, less the appointments that take them. */
function handsOverTheDay(facts: DayFacts, originMin: number): Resource['capacity'] {
  const taken = facts.day.appointments
    .filter((appointment) => appointment.hands && appointment.endMin > appointment.startMin)
    .map(({ startMin, endMin }) => ({ start: startMin - originMin, end: endMin - originMin }))
    .filter(({ end }) => end > 0)
    .sort((a, b) => a.start - b.start || a.end - b.end);
  const capacity: { from: number; units: number }[] = [{ from: 0, units: 1 }];
  let free = 0;
  for (const { start, end } of taken) {
    if (end <= free) continue;
    const from = Math.max(0, start);
    // Two that meet or overlap are one stretch: the 'free again' between them is taken back.
    if (from <= free) capacity.pop();
    if (from > free || capacity.length === 0) capacity.push({ from, units: 0 });
    capacity.push({ from: end, units: 1 });
    free = end;
  }
  return capacity;
}

/** An oven holds one temperature at a time: those that its steps need, and its changes from one to another. */
export function statesOf(
  facts: DayFacts,
  choice: OvenChoice,
  open: readonly OpenOvenStep[],
  oven: DayFacts['ovens'][number],
): StatefulResource {
  const temperatures = [
    ...new Set([
      oven.coldMilliC,
      ...facts.steps.flatMap(({ step }) =>
        step.oven !== null && choice.get(step.id) === oven.id ? [step.oven.milliC] : [],
      ),
      ...open.flatMap(({ entry: { step }, fits }) =>
        step.oven !== null && fits.includes(oven.id) ? [step.oven.milliC] : [],
      ),
    ]),
  ];
  const changeover = Object.fromEntries(
    temperatures.map((from) => [
      String(from),
      Object.fromEntries(temperatures.map((to) => [String(to), changeMin(oven, from, to)])),
    ]),
  );
  return { id: ovenStateId(oven.id), initial: String(oven.coldMilliC), changeover };
}
