import { printTo, roundTo, settled } from '#lib/units/print';

/** A number in as many digits as it needs, at most two decimals: `plain(1.5)` → '1.5'; `plain(248)` → '248'. */
export function plain(value: number): string {
  const size = Math.abs(value);
  const step = size < 1 ? 0.01 : size < 20 ? 0.1 : 1;
  const text = printTo(value, step);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** A range in words, its ends apart: `between(20, 30)` → '20 to 30'; `between(25, 25)` → '25'. */
export function between(low: number, high: number, print: (value: number) => string): string {
  const [from, to] = [print(low), print(high)];
  return from === to ? from : `${from} to ${to}`;
}

/** Minutes in words; from two hours on in hours. `minutesText(1)` → '1 minute'; `minutesText(150)` → '2 h 30 min'. */
export function minutesText(minutes: number): string {
  const round = roundTo(minutes, minutes < 3 ? 0.5 : 1);
  if (round < 120) return `${plain(round)} ${round === 1 ? 'minute' : 'minutes'}`;
  const hours = Math.floor(round / 60);
  const rest = settled(round - hours * 60);
  return rest === 0 ? `${hours} h` : `${hours} h ${plain(rest)} min`;
}

/** A range of minutes in words. `minutesRange(20, 30)` → '20 to 30 minutes' */
export function minutesRange(low: number, high: number): string {
  const [from, to] = [minutesText(low), minutesText(high)];
  if (from === to) return from;
  const unit = / minutes$/.exec(to)?.[0] ?? '';
  return unit !== '' && / minutes?$/.test(from)
    ? `${from.replace(/ minutes?$/, '')} to ${to}`
    : `${from} to ${to}`;
}
