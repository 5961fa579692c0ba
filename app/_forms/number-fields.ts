import { z } from 'zod';
import { unclearNumber } from '#lib/units/printed';
import {
  clockTyped,
  minutesSaid,
  offBy,
  permilleTyped,
  readChange,
  readClock,
  readMinutes,
  readMoney,
  readNumber,
  readPermille,
  readWhole,
} from '#lib/units/read-typed';

/** Limits of a number, and how it is said with its unit. */
interface Limits {
  readonly min: number;
  readonly max: number;
  readonly say?: (value: number) => string;
}

const LONGEST = 40;

function typed(reader: (text: string) => number | null, message: string, limits: Limits) {
  return z
    .string()
    .trim()
    .max(LONGEST, 'This is too long for a number.')
    .default('')
    .transform((text, context): number | null => {
      if (text === '') return null;
      const value = reader(text);
      const wrong =
        value === null ? (unclearNumber(text) ?? message) : offBy(value, limits, limits.say);
      if (wrong !== null) context.addIssue({ code: 'custom', message: wrong });
      return value;
    });
}

/** A number that must be there. `what` names it: "the shortest time". */
function required(field: ReturnType<typeof typed>, what: string) {
  return field.transform((value, context): number => {
    if (value === null) context.addIssue({ code: 'custom', message: `Say ${what}.` });
    return value ?? 0;
  });
}

const minutesField = (max: number) =>
  typed(readMinutes, 'Write minutes as 12 or 1.5, or seconds as 90 s.', {
    min: 0,
    max,
    say: minutesSaid,
  });

/** Minutes on the form, seconds in the data. */
export const minutes = (what: string, maxS = 7 * 86_400) => required(minutesField(maxS), what);
export const optionalMinutes = (maxS = 7 * 86_400) => minutesField(maxS);

const clockField = (max: number) =>
  typed(readClock, 'Write a clock time as 9:30; after midnight as 24:30.', {
    min: 0,
    max,
    say: clockTyped,
  });

/** A clock time in minutes after midnight. */
export const clock = (what: string, max = 2880) => required(clockField(max), what);
export const optionalClock = (max = 2880) => clockField(max);

/** A whole number within limits; both ends fit. */
export const whole = (what: string, min: number, max: number) =>
  required(optionalWhole(min, max), what);
export const optionalWhole = (min: number, max: number) =>
  typed(readWhole, 'Write a whole number without a sign.', { min, max });

/** A plain number within limits. */
export const number = (what: string, min: number, max: number) =>
  required(optionalNumber(min, max), what);
export const optionalNumber = (min: number, max: number) =>
  typed((text) => readNumber(text, min < 0), 'Write a number as 12 or 2.5.', { min, max });

const percentSaid = (permille: number) => `${permilleTyped(permille)} %`;

/** Percent on the form, thousandths in the data, both ends in thousandths; less than 0 where `min` is. */
export const optionalPercent = (min = 0, max = 1000) =>
  typed(
    min < 0 ? readChange : readPermille,
    min < 0 ? 'Write percent as 10, 2.5 or −12.' : 'Write percent as 10 or 2.5.',
    { min, max, say: percentSaid },
  );
export const percent = (what: string, min = 0, max = 1000) =>
  required(optionalPercent(min, max), what);

/** A price in hundredths, or null. */
export const optionalMoney = typed(readMoney, 'Write a price as 2.49.', {
  min: 0,
  max: 100_000_000,
  say: (minor) => String(minor),
});
