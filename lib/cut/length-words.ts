import { printRuntime } from '#lib/units/print';

/** A length in seconds as it is read: `2:30`; a dash where nobody knows it. */
export function lengthWords(seconds: number | null): string {
  return seconds === null ? '–' : printRuntime(Math.round(seconds));
}

/** What a cut has more or less than was planned. `differenceWords(-12.4)` → `'12 s less'` */
export function differenceWords(seconds: number | null): string {
  if (seconds === null) return '–';
  const whole = Math.round(Math.abs(seconds));
  if (whole === 0) return 'as planned';
  const length = whole < 60 ? `${whole} s` : printRuntime(whole);
  return `${length} ${seconds > 0 ? 'more' : 'less'}`;
}
