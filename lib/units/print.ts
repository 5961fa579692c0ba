/**
 * Printing of numbers: one owner of rounding, so that a number looks alike wherever it appears.
 * No `Intl`, so that the same file gives the same bytes on every machine.
 */

/** Settles floating-point noise before a rounding decision: twelve significant digits. */
export function settled(value: number): number {
  // What has no more digits than twelve is settled: whole numbers, and under a million six decimals.
  const size = Math.abs(value);
  if (size < 1e12 && Number.isInteger(value)) return value + 0;
  if (size < 1e6 && Math.round(value * 1e6) / 1e6 === value) return value;
  return Number(value.toPrecision(12));
}

/**
 * Rounds to a multiple of a step, half away from zero, after twelve significant digits.
 * `roundTo(2.5, 1)` → `3`; `roundTo(-2.5, 1)` → `-3`; `roundTo(1.005, 0.01)` → `1.01`.
 */
export function roundTo(value: number, step: number): number {
  const steps = settled(Math.abs(value) / step);
  const rounded = settled(Math.floor(settled(steps + 0.5)) * step);
  return value < 0 ? -rounded || 0 : rounded;
}

/**
 * A number in as many decimals as its step has. `printTo(12.345, 0.1)` → `'12.3'`; `printTo(846.2, 1)` → `'846'`.
 */
export function printTo(value: number, step: number): string {
  return roundTo(value, step).toFixed(decimalsOf(step));
}

function decimalsOf(step: number): number {
  return step === 1 ? 0 : Math.max(0, -Math.floor(settled(Math.log10(step))));
}

/** Whole numbers with a comma between thousands, as in `1,912`. */
export function printCount(value: number): string {
  return String(Math.round(value)).replace(/\B(?=(\d{3})+$)/g, ',');
}

/**
 * Grams from milligrams, in digits that a kitchen can use: two decimals under 1 g, one under 10 g,
 * whole grams from there. `printGrams(397_000)` → `'397'`; `printGrams(4_500)` → `'4.5'`.
 */
export function printGrams(mg: number): string {
  const grams = mg / 1000;
  const step = Math.abs(grams) < 1 ? 0.01 : Math.abs(grams) < 10 ? 0.1 : 1;
  return printTo(grams, step).replace(/\.0+$/, '');
}

/** Degrees Celsius from thousandths. `printCelsius(220_000)` → `'220 °C'`. */
export function printCelsius(milliC: number): string {
  return `${printTo(milliC / 1000, 1)} °C`;
}

/** A running time from whole seconds: `m:ss` below an hour, `h:mm:ss` from there. `printRuntime(3725)` → `'1:02:05'`. */
export function printRuntime(totalSeconds: number): string {
  const seconds = String(totalSeconds % 60).padStart(2, '0');
  const minutes = Math.floor(totalSeconds / 60) % 60;
  const hours = Math.floor(totalSeconds / 3600);
  return hours > 0
    ? `${hours}:${String(minutes).padStart(2, '0')}:${seconds}`
    : `${minutes}:${seconds}`;
}
