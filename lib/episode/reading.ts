import { plusMinus, type Interval } from '#lib/units/interval';
import { multiply, source, type Term } from '#lib/units/sum-of-products';
import type { Kitchen, Weighing } from '#lib/episode/schema';
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
 * The net amount of a reading as a product of sources: direct is ± half a resolution, by difference ± a
 * whole one (two readings); the accuracy of a scale is one error for all its readings.
 * @example 252 g on a 1 g scale: 251.5 to 252.5 g
 */
export function readingAmount(reading: Weighing, kitchen: Kitchen): ReadingAmount {
  const scale = kitchen.scales.find((each) => each.id === reading.scaleId);
  const resolution = scale?.resolutionMg ?? plannedResolutionMg(kitchen);
  const halfWidth = reading.method === 'direct' ? resolution / 2 : resolution;
  const id = `weighing:${reading.id}`;
  const sources = new Map([[id, plusMinus(reading.grossMg - reading.tareMg, halfWidth)]]);
  const ppm = scale?.accuracyPpm ?? 0;
  if (ppm === 0) return { terms: [source(id)], ids: [id], sources };
  const accuracyId = `scale:${reading.scaleId}`;
  sources.set(accuracyId, plusMinus(1, ppm / 1e6));
  return { terms: multiply([source(id)], [source(accuracyId)]), ids: [id, accuracyId], sources };
}
