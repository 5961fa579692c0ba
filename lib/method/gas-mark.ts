import { fromFahrenheit } from '#lib/units/units';
import type { Setting } from '#lib/method/method-step';

/**
 * Degrees Celsius that stand for a gas mark in British recipes, as printed beside each other there: common practice,
 * no source; figures from memory, and ovens differ.
 */
const GAS: ReadonlyMap<number, number> = new Map([
  [0.25, 110],
  [0.5, 120],
  [1, 140],
  [2, 150],
  [3, 160],
  [4, 180],
  [5, 190],
  [6, 200],
  [7, 220],
  [8, 230],
  [9, 240],
]);

/**
 * Thousandths of a degree Celsius of a setting; null for a gas mark that is none.
 * `milliCOf({ value: 350, unit: 'F' })` → `176667`; `milliCOf({ value: 4, unit: 'gas' })` → `180000`.
 */
export function milliCOf({ value, unit }: Setting): number | null {
  if (unit === 'C') return Math.round(value * 1000);
  if (unit === 'F') return fromFahrenheit(value);
  const celsius = GAS.get(value);
  return celsius === undefined ? null : celsius * 1000;
}
