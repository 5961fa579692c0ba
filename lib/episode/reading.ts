import { plusMinus, type Interval } from '#lib/units/interval';
import { constant, multiply, source, type Term } from '#lib/units/sum-of-products';
import type { Kitchen } from '#lib/episode/kitchen-schema';
import type { Weighing } from '#lib/episode/recipe-schema';
import { plannedResolutionMg } from '#lib/episode/spreads';

/** What one reading of a scale weighs, less its container. */
export interface ReadingAmount {
  /** Milligrams: the reading's own error, times the scale's accuracy where it has one. */
  readonly terms: readonly Term[];
  /** Ids of the factors in `terms`, for dividing by the reading. */
  readonly ids: readonly string[];
  readonly sources: ReadonlyMap<string, Interval>;
}

/**
 * The net amount of a reading as a sum of sources: direct is ± half a resolution, by difference ± a whole one
 * (two readings); the accuracy of a scale is one error for all its readings.
 *
 * In a running total a reading's tare is the reading before, and both are ± half a resolution: what one
 * ingredient gains by a misread total the next one loses.
 * @param before readings of the same recipe, among them the one it follows
 * @example 252 g on a 1 g scale: 251.5 to 252.5 g
 */
export function readingAmount(
  reading: Weighing,
  kitchen: Kitchen,
  before: readonly Weighing[] = [],
): ReadingAmount {
  const scale = kitchen.scales.find((each) => each.id === reading.scaleId);
  const resolution = scale?.resolutionMg ?? plannedResolutionMg(kitchen);
  const previous = followed(reading, before);
  const direct = previous !== null || reading.method === 'direct';
  const halfWidth = direct ? resolution / 2 : resolution;
  const id = `weighing:${reading.id}`;
  // The source of a reading that follows another is its gross, of all others what is left without the tare.
  const own = previous ? reading.grossMg : reading.grossMg - reading.tareMg;
  const sources = new Map([[id, plusMinus(own, halfWidth)]]);
  let terms: readonly Term[] = [source(id)];
  if (previous) {
    const previousId = `weighing:${previous.id}`;
    const chained = followed(previous, before) !== null;
    const gross = chained ? previous.grossMg : previous.grossMg - previous.tareMg;
    sources.set(previousId, plusMinus(gross, resolution / 2));
    terms = [source(id), source(previousId, -1), ...(chained ? [] : [constant(-previous.tareMg)])];
  }
  const ppm = scale?.accuracyPpm ?? 0;
  if (ppm === 0) return { terms, ids: [id], sources };
  const accuracyId = `scale:${reading.scaleId}`;
  sources.set(accuracyId, plusMinus(1, ppm / 1e6));
  return { terms: multiply(terms, [source(accuracyId)]), ids: [id, accuracyId], sources };
}

/** The reading before in a running total on the same scale; null for one that stands alone. */
function followed(reading: Weighing, before: readonly Weighing[]): Weighing | null {
  if (reading.afterId === null || reading.afterId === reading.id) return null;
  const found = before.find(({ id }) => id === reading.afterId);
  if (!found || found.scaleId !== reading.scaleId || found.method !== 'direct') return null;
  return found;
}
