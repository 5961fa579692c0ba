/** What a duration of ISO 8601-1 says, or why it is no length of time that can be counted in seconds. */
export type IsoDuration =
  | { readonly kind: 'seconds'; readonly seconds: number }
  /** It counts in years or months, which have no fixed length: `P45M` is 45 months. */
  | { readonly kind: 'calendar' }
  | { readonly kind: 'none' };

/**
 * Whole seconds as a duration of ISO 8601-1 (5.5.2, the designators from memory), in hours, minutes and seconds.
 * `isoDuration(5400)` → `'PT1H30M'`; 0 → `'PT0S'`; 26 hours → `'PT26H'`.
 * @throws on anything but a whole number from 0
 */
export function isoDuration(seconds: number): string {
  if (!Number.isSafeInteger(seconds) || seconds < 0) {
    throw new Error(`no duration: ${seconds} s`);
  }
  if (seconds === 0) return 'PT0S';
  const parts = [
    [Math.floor(seconds / 3600), 'H'],
    [Math.floor(seconds / 60) % 60, 'M'],
    [seconds % 60, 'S'],
  ] as const;
  return `PT${parts.map(([count, of]) => (count === 0 ? '' : `${count}${of}`)).join('')}`;
}

const NUMBER = String.raw`(\d{1,9}(?:[.,]\d{1,6})?)`;
const WEEKS = new RegExp(`^P${NUMBER}W$`);
const PARTS = new RegExp(
  `^P(?:${NUMBER}Y)?(?:${NUMBER}M)?(?:${NUMBER}D)?(?:T(?:${NUMBER}H)?(?:${NUMBER}M)?(?:${NUMBER}S)?)?$`,
);

/** Seconds of a week, a day, an hour, a minute, a second. */
const WEEK_S = 604_800;
const LENGTHS_S = [86_400, 3600, 60, 1] as const;

/**
 * Reads a duration of ISO 8601-1: `PnW`, or days, hours, minutes and seconds in that order, of which only the last may
 * have a fraction, with a comma or a full stop. Designators are capitals.
 * @example readIsoDuration('PT1H30M') // { kind: 'seconds', seconds: 5400 }
 */
export function readIsoDuration(text: string): IsoDuration {
  const number = (part: string) => Number(part.replace(',', '.'));
  const weeks = WEEKS.exec(text)?.[1];
  if (weeks !== undefined) return { kind: 'seconds', seconds: number(weeks) * WEEK_S };
  const found = PARTS.exec(text);
  if (!found || text.endsWith('T')) return { kind: 'none' };
  const [, years, months, ...rest] = found;
  const all: readonly (string | undefined)[] = [years, months, ...rest];
  const given = all.flatMap((part) => part ?? []);
  const broken = given.slice(0, -1).some((part) => /[.,]/.test(part));
  if (given.length === 0 || broken) return { kind: 'none' };
  if (years !== undefined || months !== undefined) return { kind: 'calendar' };
  const seconds = LENGTHS_S.reduce((sum, of, at) => sum + number(rest[at] ?? '0') * of, 0);
  return { kind: 'seconds', seconds };
}
