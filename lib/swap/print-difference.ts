import type { EpisodeFile } from '#lib/episode/schema';
import { missingText, shownStep } from '#lib/figures/print-figure';
import { NUTRIENTS } from '#lib/foods/nutrients';
import type { Difference } from '#lib/swap/difference';
import { printTo, roundTo } from '#lib/units/print';

/** A difference in words, ready to show. */
export interface PrintedDifference {
  readonly label: string;
  readonly unit: string;
  /** '+41', '−3.2', 'at least +4', 'open'. */
  readonly text: string;
  /** Its range, or what is missing. */
  readonly range: string;
}

/**
 * Prints a difference with its sign; 'at least' and 'at most' by the known end, rounded so that the words stay true.
 * @example printDifference(difference, 'US') // '+41', 'likely +39 to +43, digits allow +35 to +47'
 */
export function printDifference(
  difference: Difference,
  region: EpisodeFile['episode']['region'],
): PrintedDifference {
  const { nutrient, value, low, high, likelyLow, likelyHigh } = difference;
  const { unit, label } = NUTRIENTS[nutrient];
  const named = { unit, label: region === 'EU' && unit === 'kcal' ? 'energy' : label };
  const step = shownStep(nutrient, Math.abs(value));
  const why = missingText(difference.missing);
  if (low === null && high === null) return { ...named, text: 'open', range: why };
  if (high === null && low !== null) {
    const text = `at least ${signed(Math.floor(low / step) * step, step)}`;
    return { ...named, text, range: why };
  }
  if (low === null && high !== null) {
    const text = `at most ${signed(Math.ceil(high / step) * step, step)}`;
    return { ...named, text, range: why };
  }
  const between = (from: number | null, to: number | null) => {
    const [a, b] = [signed(from ?? 0, step), signed(to ?? 0, step)];
    return a === b ? a : `${a} to ${b}`;
  };
  const [likely, hard] = [between(likelyLow, likelyHigh), between(low, high)];
  const range = likely === hard ? `likely ${likely}` : `likely ${likely}, digits allow ${hard}`;
  return { ...named, text: signed(value, step), range };
}

/** `+41`, `−3.2`, `0`: with a true minus, and no sign where it rounds to nothing. */
function signed(value: number, step: number): string {
  const rounded = roundTo(value, step);
  const digits = printTo(Math.abs(rounded), step);
  if (rounded === 0) return digits;
  return `${rounded > 0 ? '+' : '−'}${digits}`;
}
