import type { Kitchen, MEASURE_KINDS } from '#lib/episode/kitchen-schema';
import type { LineUnit } from '#lib/episode/recipe-schema';

export type MeasureKind = (typeof MEASURE_KINDS)[number];

/**
 * How far a measure by eye may miss, in thousandths of its weight; a kitchen can change each.
 * Common practice, no source.
 */
export const DEFAULT_SPREAD_PERMILLE: Readonly<Record<MeasureKind, number>> = {
  spoon: 100,
  cup: 100,
  piece: 150,
  slice: 100,
  handful: 350,
  portion: 150,
};

/** How far a published change of weight may miss, in thousandths of the raw weight (common practice, no source). */
export const COOKING_SPREAD_PERMILLE = 50;

/** Resolution of a kitchen scale where none is named: 1 g (common practice, no source). */
export const DEFAULT_RESOLUTION_MG = 1000;

/** Which kind of measure an amount is, from its unit and the measure's own name. */
export function measureKind(unit: LineUnit, measureName: string): MeasureKind {
  if (unit === 'tsp' || unit === 'tbsp') return 'spoon';
  if (unit === 'cup' || unit === 'flOz' || unit === 'ml' || unit === 'l') return 'cup';
  if (/handful/i.test(measureName)) return 'handful';
  if (/slice/i.test(measureName)) return 'slice';
  return 'piece';
}

/** A kitchen's spread for a kind of measure in thousandths: 150 is ± 15 %. */
export function spreadPermille(kitchen: Kitchen, kind: MeasureKind): number {
  const own = kitchen.spreads.find((spread) => spread.kind === kind);
  return own?.permille ?? DEFAULT_SPREAD_PERMILLE[kind];
}

/** The same as a share: 0.1 is ± 10 %. */
export function spreadOf(kitchen: Kitchen, kind: MeasureKind): number {
  return spreadPermille(kitchen, kind) / 1000;
}

/** Resolution in milligrams of the scale that planned grams are weighed on: the kitchen's first. */
export function plannedResolutionMg(kitchen: Kitchen): number {
  return kitchen.scales[0]?.resolutionMg ?? DEFAULT_RESOLUTION_MG;
}
