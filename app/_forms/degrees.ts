import { unclearNumber } from '#lib/units/printed';
import { degreesTyped, offBy, readDegrees } from '#lib/units/read-typed';

/** Typed degrees in thousandths of a degree Celsius, and what is wrong with them; null where nothing is. */
export function checkDegrees(
  text: string,
  unit: 'C' | 'F',
  limits: { readonly min: number; readonly max: number },
): { readonly milliC: number | null; readonly wrong: string | null } {
  const milliC = readDegrees(text, unit);
  const wrong =
    milliC === null
      ? (unclearNumber(text) ?? 'Write degrees as 180.')
      : offBy(milliC, limits, (each) => `${degreesTyped(each, unit)} °${unit}`);
  return { milliC, wrong };
}
