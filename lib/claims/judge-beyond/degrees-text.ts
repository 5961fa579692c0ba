import { degreesIn } from '#lib/claims/judge-beyond/oven-table';
import type { Episode } from '#lib/episode/schema';
import { printTo } from '#lib/units/print';

/** Degrees to a tenth where they have one: `degrees(62.8, 'C')` → '62.8 °C'; `degrees(180, 'C')` → '180 °C'. */
export function degrees(value: number, unit: 'C' | 'F'): string {
  return `${printTo(value, 0.1).replace(/\.0$/, '')} °${unit}`;
}

/** The unit of a region’s ovens and thermometers. */
const regionUnit = (region: Episode['region']): 'C' | 'F' => (region === 'US' ? 'F' : 'C');

/**
 * A temperature as the person set it: in the unit in which it is a multiple of five, else a whole number; where it is in
 * both, in the region’s.
 * @example setAt(176_667, 'EU') // { value: 350, unit: 'F' }
 */
export function setAt(
  milliC: number,
  region: Episode['region'],
): { readonly value: number; readonly unit: 'C' | 'F' } {
  const own = regionUnit(region);
  const units = own === 'C' ? (['C', 'F'] as const) : (['F', 'C'] as const);
  for (const step of [5, 1]) {
    for (const unit of units) {
      const value = degreesIn(milliC, unit);
      const round = Math.round(value / step) * step;
      // Kept in thousandths of a degree Celsius, a whole degree Fahrenheit is a hair off.
      if (Math.abs(value - round) < 0.002) return { value: round, unit };
    }
  }
  return { value: degreesIn(milliC, own), unit: own };
}
