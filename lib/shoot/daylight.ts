import { getTimes } from 'suncalc';
import type { Kitchen } from '#lib/episode/kitchen-schema';
import { instantOf, minuteOf } from '#lib/shoot/local-time';

/** When the sun is up, in clock minutes after local midnight; or that it never rises or never sets. */
export type Daylight =
  | { readonly kind: 'riseAndSet'; readonly riseMin: number; readonly setMin: number }
  | { readonly kind: 'alwaysUp' }
  | { readonly kind: 'alwaysDown' };

/**
 * Sunrise and sunset at a kitchen on a local date, by its wall clock and to the minute; null where the
 * kitchen's place is not known. Upper limb at a sea-level horizon with standard refraction (−0.833°),
 * after Meeus, Astronomical Algorithms.
 */
export function daylightAt(
  kitchen: Pick<Kitchen, 'lat' | 'lon' | 'zone'>,
  date: string,
): Daylight | null {
  if (kitchen.lat === null || kitchen.lon === null) return null;
  // The sun's own noon of the date, so that the right solar day is meant in any zone.
  const [year = 1970, month = 1, day = 1] = date.split('-').map(Number);
  const noon = new Date(Date.UTC(year, month - 1, day, 12) - kitchen.lon * 240_000);
  const zoneNoon = instantOf(date, 720, kitchen.zone);
  const days = Math.round((zoneNoon.getTime() - noon.getTime()) / 86_400_000);
  const times = getTimes(new Date(noon.getTime() + days * 86_400_000), kitchen.lat, kitchen.lon);
  if (times.sunrise === null || times.sunset === null) {
    return { kind: times.alwaysUp === true ? 'alwaysUp' : 'alwaysDown' };
  }
  return {
    kind: 'riseAndSet',
    riseMin: minuteOf(times.sunrise, date, kitchen.zone),
    setMin: minuteOf(times.sunset, date, kitchen.zone),
  };
}

/** Whether the sun is up from start to end. Unknown daylight is null, never false. */
export function inDaylight(
  daylight: Daylight | null,
  startMin: number,
  endMin: number,
): boolean | null {
  if (daylight === null) return null;
  if (daylight.kind !== 'riseAndSet') return daylight.kind === 'alwaysUp';
  return daylight.riseMin <= startMin && endMin <= daylight.setMin;
}
