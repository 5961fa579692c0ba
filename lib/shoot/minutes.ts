import type { Oven } from '#lib/episode/kitchen-schema';

/** Whole minutes that are not less than so many seconds. `ceilMin(61)` → 2. */
export function ceilMin(seconds: number): number {
  return Math.ceil(seconds / 60);
}

/** Whole minutes that are not more than so many seconds. `floorMin(119)` → 1. */
export function floorMin(seconds: number): number {
  return Math.floor(seconds / 60);
}

/**
 * Minutes an oven takes from one temperature to another, rounded up: the measured time where there is
 * one, else the difference in degrees times the oven's own rate up or down.
 *
 * @example 20 °C → 180 °C at 5 s per degree: 800 s → 14 min
 */
export function changeMin(oven: Oven, fromMilliC: number, toMilliC: number): number {
  if (fromMilliC === toMilliC) return 0;
  const measured = oven.changes.find(
    (change) => change.fromMilliC === fromMilliC && change.toMilliC === toMilliC,
  );
  if (measured !== undefined) return ceilMin(measured.seconds);
  const rate = toMilliC > fromMilliC ? oven.heatSPerC : oven.coolSPerC;
  return Math.ceil((Math.abs(toMilliC - fromMilliC) * rate) / 60_000);
}

/**
 * The shortest and longest whole minutes a step may take: its usual length rounded up, or the range
 * the plan may choose from. A range too narrow to hold a whole minute leaves the usual length.
 */
export function lengthRange(step: {
  readonly usualS: number;
  readonly choose: { readonly minS: number; readonly maxS: number } | null;
}): { readonly min: number; readonly max: number } {
  const usual = ceilMin(step.usualS);
  if (step.choose === null) return { min: usual, max: usual };
  const min = ceilMin(step.choose.minS);
  const max = floorMin(step.choose.maxS);
  if (min > max || (min === 0 && usual > 0)) return { min: usual, max: usual };
  return { min, max };
}
