import { toFahrenheit } from '#lib/units/units';

/**
 * Gas marks of British cookers with the degrees that cookbooks print beside them. Common practice, from memory; no
 * standard fixes it.
 */
export const GAS_MARKS: ReadonlyMap<
  number,
  { readonly celsius: number; readonly fahrenheit: number }
> = new Map(
  (
    [
      [0.25, 110, 225],
      [0.5, 120, 250],
      [1, 140, 275],
      [2, 150, 300],
      [3, 160, 325],
      [4, 180, 350],
      [5, 190, 375],
      [6, 200, 400],
      [7, 220, 425],
      [8, 230, 450],
      [9, 240, 475],
    ] as const
  ).map(([mark, celsius, fahrenheit]) => [mark, { celsius, fahrenheit }]),
);

/** Degrees Celsius by which an oven with its fan is set lower. Common practice, no source. */
export const FAN_C = 20;

/** How far a conversion that is printed rounds at most: 5 °C, 10 °F. Common practice, no source. */
export const ROUNDING = { C: 5, F: 10 } as const;

/** What cookbooks round degrees to. */
const ROUND_TO = { C: [5, 10], F: [5, 10, 25] } as const;

/** Degrees in a unit from thousandths of a degree Celsius. `degreesIn(180_000, 'F')` → 356 */
export function degreesIn(milliC: number, unit: 'C' | 'F'): number {
  return unit === 'C' ? milliC / 1000 : toFahrenheit(milliC);
}

/**
 * Whether a number is a usual rounding of a temperature in a unit that it is no round number in: to the nearest 5, 10
 * or, in °F, 25, and no farther than a conversion rounds.
 * @example isUsualRounding(350, 356, 'F') // true
 */
export function isUsualRounding(said: number, exact: number, unit: 'C' | 'F'): boolean {
  if (Math.abs(said - exact) > ROUNDING[unit]) return false;
  return ROUND_TO[unit].some((step) => Math.round(exact / step) * step === said);
}
