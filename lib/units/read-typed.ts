import { isUnclearPoint, parsePrinted, printedValue } from '#lib/units/printed';
import { settled } from '#lib/units/print';
import { fromFahrenheit, toFahrenheit } from '#lib/units/units';

/**
 * Numbers as a person types them into a form, in the base units of the data; null where a text is none.
 * Each has its way back, so that what is shown in a field reads back the same.
 */

/**
 * A plain number, a decimal comma allowed. `readNumber('2,5')` → `2.5`; a sign only where `signed`. What may be
 * thousands or decimals is neither, and `unclearNumber` says so: `readNumber('2,000')` → `null`.
 */
export function readNumber(text: string, signed = false): number | null {
  if (isUnclearPoint(text.trim())) return null;
  const printed = parsePrinted(text);
  if (!printed || (!signed && text.trim().startsWith('-'))) return null;
  return printedValue(printed);
}

/** A whole number without sign. `readWhole('12')` → `12`; `readWhole('1.5')` → `null`. */
export function readWhole(text: string): number | null {
  return /^\d{1,9}$/.test(text.trim()) ? Number(text.trim()) : null;
}

/**
 * Seconds from minutes: `12`, `1.5`, `12 min`, or seconds as `90 s`, or `1:30` for a minute and a half.
 * `readMinutes('1.5')` → `90`.
 */
export function readMinutes(text: string): number | null {
  const plain = text.trim().replace(/ ?min$/, '');
  const seconds = /^(\d{1,6}) ?s$/.exec(plain);
  if (seconds) return Number(seconds[1]);
  const clock = /^(\d{1,4}):([0-5]\d)$/.exec(plain);
  if (clock) return Number(clock[1]) * 60 + Number(clock[2]);
  const minutes = readNumber(plain);
  return minutes === null ? null : Math.round(settled(minutes * 60));
}

/** Seconds as minutes that can be typed again. `minutesTyped(90)` → `'1.5'`; `minutesTyped(20)` → `'20 s'`. */
export function minutesTyped(seconds: number): string {
  return seconds % 6 === 0 ? String(settled(seconds / 60)) : `${seconds} s`;
}

/** Seconds in minutes with their unit. `minutesSaid(90)` → `'1.5 min'`; `minutesSaid(20)` → `'20 s'`. */
export function minutesSaid(seconds: number): string {
  const text = minutesTyped(seconds);
  return text.endsWith('s') ? text : `${text} min`;
}

/**
 * Minutes after midnight from a clock time: `9:30`, `09.30`, `9`; from 24:00 it is the next day.
 * `readClock('9:30')` → `570`; `readClock('24:30')` → `1470`.
 */
export function readClock(text: string): number | null {
  const match = /^(\d{1,2})(?:[:.]([0-5]\d))?$/.exec(text.trim());
  if (!match) return null;
  const minute = Number(match[1]) * 60 + Number(match[2] ?? 0);
  return minute <= 2880 ? minute : null;
}

/** Minutes after midnight as typed. `clockTyped(570)` → `'09:30'`; `clockTyped(1470)` → `'24:30'`. */
export function clockTyped(minute: number): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
}

/** Thousandths from percent. `readPermille('12.5')` → `125`. */
export function readPermille(text: string): number | null {
  return percentIn(text, 10);
}

/** The same of what may be less than 0, with its sign before it, a dash too. `readChange('−12 %')` → `-120`. */
export function readChange(text: string): number | null {
  const plain = text
    .trim()
    .replace(/^\+ ?/, '')
    .replace(/^[−–] ?/, '-');
  return percentIn(plain, 10, true);
}

/** Thousandths as percent that can be typed again. `permilleTyped(125)` → `'12.5'`. */
export function permilleTyped(permille: number): string {
  return String(settled(permille / 10));
}

/** Parts per million from percent. `readPpm('0.1')` → `1000`. */
export function readPpm(text: string): number | null {
  return percentIn(text, 10_000);
}

/** Parts per million as percent that can be typed again. `ppmTyped(1000)` → `'0.1'`. */
export function ppmTyped(ppm: number): string {
  return String(settled(ppm / 10_000));
}

function percentIn(text: string, parts: number, signed = false): number | null {
  const percent = readNumber(text.trim().replace(/ ?%$/, ''), signed);
  if (percent === null) return null;
  const whole = settled(percent * parts);
  return Number.isInteger(whole) ? whole : null;
}

/** A scale of temperature on a form. */
export type DegreeUnit = 'C' | 'F';

/** Thousandths of a degree Celsius from typed degrees. `readDegrees('350', 'F')` → `176667`. */
export function readDegrees(text: string, unit: DegreeUnit): number | null {
  const degrees = readNumber(text.trim().replace(/ ?°? ?[CF]?$/, ''), true);
  if (degrees === null) return null;
  return unit === 'C' ? Math.round(degrees * 1000) : fromFahrenheit(degrees);
}

/** Degrees as typed. `degreesTyped(176667, 'F')` → `'350'`; `degreesTyped(72500, 'C')` → `'72.5'`. */
export function degreesTyped(milliC: number, unit: DegreeUnit): string {
  const degrees = unit === 'C' ? milliC / 1000 : toFahrenheit(milliC);
  return String(Number(degrees.toFixed(unit === 'C' ? 3 : 1)));
}

/** Hundredths of money from a price with at most two decimals. `readMoney('2.49')` → `249`. */
export function readMoney(text: string): number | null {
  const printed = parsePrinted(text);
  if (!printed || printed.scale > 2 || printed.mantissa < 0) return null;
  return printed.mantissa * 10 ** (2 - printed.scale);
}

/**
 * A printed mass in milligrams and its decimals, which say how far it was rounded.
 * `readPrintedGrams('28.5 g')` → `{ mg: 28500, decimals: 1 }`.
 */
export function readPrintedGrams(text: string): { mg: number; decimals: number } | null {
  const printed = parsePrinted(text.trim().replace(/ ?g$/, ''));
  if (!printed || printed.mantissa <= 0 || printed.scale > 3) return null;
  return { mg: printed.mantissa * 10 ** (3 - printed.scale), decimals: printed.scale };
}

/** A printed mass as typed. `printedGramsTyped(28_500, 1)` → `'28.5'`. */
export function printedGramsTyped(mg: number, decimals: number): string {
  return (mg / 1000).toFixed(decimals);
}

/**
 * By how much a number misses its limits, in a sentence; null where it keeps them.
 * `offBy(13, { min: 0, max: 12 })` → `'13 is 1 more than the most that fits here, 12.'`
 * @param say how a value is printed with its unit
 */
export function offBy(
  value: number,
  { min, max }: { readonly min: number; readonly max: number },
  say: (value: number) => string = String,
): string | null {
  if (value > max) {
    return `${say(value)} is ${say(settled(value - max))} more than the most that fits here, ${say(max)}.`;
  }
  if (value < min) {
    return `${say(value)} is ${say(settled(min - value))} less than the least that fits here, ${say(min)}.`;
  }
  return null;
}
