import type { Segment } from '#lib/episode/schema';
import type { Step } from '#lib/episode/step-schema';
import { printCelsius, printTo } from '#lib/units/print';
import { minutesSaid, minutesTyped } from '#lib/units/read-typed';

/** Steps that a viewer cooks along with: no talk, no camera, no washing-up. */
const FOLLOWED: readonly Step['role'][] = ['prep', 'cook', 'wait'];

/** The steps of a dish that have something to show beside their words: heat, inside temperature, a rest or minutes by itself. */
export function followedSteps({ steps }: Pick<Segment, 'steps'>): readonly Step[] {
  return steps.filter(
    (step) => FOLLOWED.includes(step.role) && (step.role !== 'prep' || step.oven !== null),
  );
}

/**
 * What a step says in a few words each: heat in both scales, minutes, inside temperature, rest.
 * @example stepFacts(bake) // ['220 °C (428 °F)', '12–15 min', '74 °C (165 °F) inside', 'rests 10 min']
 */
export function stepFacts(step: Step): readonly string[] {
  const { oven, choose, usualS, coreMilliC, restS } = step;
  const degrees = (milliC: number) =>
    `${printCelsius(milliC)} (${printTo((milliC * 9) / 5000 + 32, 1)} °F)`;
  const minutes = choose
    ? `${minutesTyped(choose.minS)}–${minutesSaid(choose.maxS)}`
    : minutesSaid(usualS);
  return [
    ...(oven ? [`oven ${degrees(oven.milliC)}`] : []),
    ...(usualS > 0 ? [minutes] : []),
    ...(coreMilliC === null ? [] : [`${degrees(coreMilliC)} inside`]),
    ...(restS > 0 ? [`rests ${minutesSaid(restS)}`] : []),
  ];
}
