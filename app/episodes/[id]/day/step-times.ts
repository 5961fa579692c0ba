import { minutesSaid, offBy } from '#lib/units/read-typed';

/** What is wrong with a step's shortest and longest time beside its usual one, in seconds; null where nothing is. */
export function checkTimes(
  lowS: number,
  usualS: number,
  highS: number,
): { readonly low: string | null; readonly high: string | null } {
  const short = offBy(lowS, { min: 0, max: usualS }, minutesSaid);
  const long = offBy(highS, { min: usualS, max: Infinity }, minutesSaid);
  return {
    low: short && `The shortest time: ${short}`,
    high: long && `The longest time: ${long}`,
  };
}
