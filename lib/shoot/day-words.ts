import type { Episode } from '#lib/episode/schema';

/**
 * A minute of the filming day as a clock time; past midnight it says so.
 *
 * @example clockText(545) → "09:05"; clockText(1450) → "00:10 next day"
 */
export function clockText(minute: number): string {
  const inDay = ((minute % 1440) + 1440) % 1440;
  const clock = `${pad(Math.floor(inDay / 60))}:${pad(inDay % 60)}`;
  const days = Math.floor(minute / 1440);
  if (days === 0) return clock;
  if (days === -1) return `${clock} the day before`;
  return days === 1 ? `${clock} next day` : `${clock} day ${days + 1}`;
}

/** Minutes in words. `minutesText(90)` → "1 h 30 min" */
export function minutesText(minutes: number): string {
  if (minutes < 60) return `${minutes} min`;
  const rest = minutes % 60;
  return rest === 0 ? `${minutes / 60} h` : `${Math.floor(minutes / 60)} h ${rest} min`;
}

/**
 * An oven or inside temperature in the region's unit, in whole degrees; °F = °C × 9/5 + 32.
 *
 * @example degreesText(176667, 'US') → "350 °F"; degreesText(180000, 'EU') → "180 °C"
 */
export function degreesText(milliC: number, region: Episode['region']): string {
  return region === 'US'
    ? `${Math.round((milliC * 9) / 5000 + 32)} °F`
    : `${Math.round(milliC / 1000)} °C`;
}

function pad(value: number): string {
  return String(value).padStart(2, '0');
}
