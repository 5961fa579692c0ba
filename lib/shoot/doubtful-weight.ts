import { scaleGramsText } from '#lib/units/scale-grams';

/** From more than so many times what was planned, or less than that part of it, a weight is asked about. No source. */
const FAR_OFF = 2;
/** From so much on the number was most likely typed with a digit too many or too few. */
const A_DIGIT = 5;

/**
 * What to ask before a weight is kept that is far from what was planned, as one is that was typed with a digit too
 * many; null where nothing was planned, or it is near enough. It may be right: it is kept once somebody says so.
 * @example doubtfulWeight(450_000, 4_520_000)
 *   // '4520 g is 10 times the 450 g planned. Is a digit too many typed?'
 */
export function doubtfulWeight(plannedMg: number | null, weighedMg: number): string | null {
  if (plannedMg === null || plannedMg <= 0 || weighedMg <= 0) return null;
  const ratio = weighedMg / plannedMg;
  if (ratio <= FAR_OFF && ratio >= 1 / FAR_OFF) return null;
  const more = ratio > 1;
  const times = Number((more ? ratio : 1 / ratio).toPrecision(2));
  const [weighed, planned] = [weighedMg, plannedMg].map((mg) => `${scaleGramsText(mg)} g`);
  const off = more
    ? `${times} times the ${planned} planned`
    : `1/${times} of the ${planned} planned`;
  const digit = `Is a digit too ${more ? 'many' : 'few'} typed?`;
  return `${weighed} is ${off}. ${times >= A_DIGIT ? digit : 'Is it right?'}`;
}
