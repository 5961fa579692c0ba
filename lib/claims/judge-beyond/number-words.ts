import { printTo, roundTo, settled } from '#lib/units/print';

/** A number in as many digits as it needs, at most two decimals: `plain(1.5)` → '1.5'; `plain(248)` → '248'. */
export function plain(value: number): string {
  const text = printTo(value, stepOf(value));
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

const stepOf = (value: number) => {
  const size = Math.abs(value);
  return size < 1 ? 0.01 : size < 20 ? 0.1 : 1;
};

/** A likely range in words, null where it is no wider than the last digit: `likely(2.7, 3.3)` → 'likely 2.7 to 3.3'. */
export function likelyText(low: number, high: number): string | null {
  if (!Number.isFinite(high)) return `likely ${plain(low)} or more`;
  return high - low <= stepOf(high) * (1 + 1e-6) ? null : `likely ${plain(low)} to ${plain(high)}`;
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
