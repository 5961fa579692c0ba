import { tzOffset } from '@date-fns/tz';

/**
 * Sunrise and sunset by the low-accuracy equations of the NOAA Global Monitoring Laboratory ("General Solar Position
 * Calculations"), written here from memory and held against the almanac in `checker-sun.test.ts`; within two minutes
 * between 60° north and south. Minutes of the local day.
 */
export function sunAt(
  { lat, lon, zone }: { readonly lat: number; readonly lon: number; readonly zone: string },
  date: string,
): { readonly riseMin: number; readonly setMin: number } | 'always up' | 'never up' {
  const noon = Date.parse(`${date}T12:00:00Z`);
  const dayOfYear =
    Math.floor((noon - Date.parse(`${date.slice(0, 4)}-01-01T00:00:00Z`)) / 86_400_000) + 1;
  const rad = Math.PI / 180;
  const g = ((2 * Math.PI) / 365) * (dayOfYear - 1);
  const equation =
    229.18 *
    (0.000075 +
      0.001868 * Math.cos(g) -
      0.032077 * Math.sin(g) -
      0.014615 * Math.cos(2 * g) -
      0.040849 * Math.sin(2 * g));
  const declination =
    0.006918 -
    0.399912 * Math.cos(g) +
    0.070257 * Math.sin(g) -
    0.006758 * Math.cos(2 * g) +
    0.000907 * Math.sin(2 * g) -
    0.002697 * Math.cos(3 * g) +
    0.00148 * Math.sin(3 * g);
  const cosine =
    Math.cos(90.833 * rad) / (Math.cos(lat * rad) * Math.cos(declination)) -
    Math.tan(lat * rad) * Math.tan(declination);
  if (cosine < -1) return 'always up';
  if (cosine > 1) return 'never up';
  const half = (Math.acos(cosine) / rad) * 4;
  const offset = tzOffset(zone, new Date(noon));
  const solarNoon = 720 - 4 * lon - equation + offset;
  return { riseMin: Math.round(solarNoon - half), setMin: Math.round(solarNoon + half) };
}
