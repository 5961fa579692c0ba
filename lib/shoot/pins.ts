import type { Pin } from '#lib/episode/day-schema';
import { clockText } from '#lib/shoot/day-words';

/** How a step is tied to a clock time: it starts not before it, at it, or not after it. */
export const PIN_WHENS = ['notBefore', 'at', 'notAfter'] as const;
export type PinWhen = (typeof PIN_WHENS)[number];

const PIN_WORDS: Readonly<Record<PinWhen, string>> = {
  notBefore: 'not before',
  at: 'at',
  notAfter: 'not after',
};

export const PIN_CHOICES: readonly { readonly value: PinWhen; readonly words: string }[] =
  PIN_WHENS.map((value) => ({ value, words: PIN_WORDS[value] }));

type PinTimes = Pick<Pin, 'notBeforeMin' | 'notAfterMin'>;

/** The two ends of a pin to a minute of the day. `pinColumns('at', 600)` → both 600. */
export function pinColumns(when: PinWhen, min: number): PinTimes {
  return {
    notBeforeMin: when === 'notAfter' ? null : min,
    notAfterMin: when === 'notBefore' ? null : min,
  };
}

/** The other way: one with two different ends counts by its first. */
export function pinTime({ notBeforeMin, notAfterMin }: PinTimes): {
  readonly when: PinWhen;
  readonly min: number;
} {
  if (notBeforeMin === null) return { when: 'notAfter', min: notAfterMin ?? 0 };
  return { when: notBeforeMin === notAfterMin ? 'at' : 'notBefore', min: notBeforeMin };
}

/** A pin in words: `'not before 09:20'`, `'at 10:00'`, `'not before 09:00, not after 11:00'`. */
export function pinTimeWords(pin: PinTimes): string {
  const { when, min } = pinTime(pin);
  const first = `${PIN_WORDS[when]} ${clockText(min)}`;
  if (when !== 'notBefore' || pin.notAfterMin === null) return first;
  return `${first}, ${PIN_WORDS.notAfter} ${clockText(pin.notAfterMin)}`;
}

/** The minutes between which all pins of a step let it start; null where there is none on that side. */
export function pinnedBetween(
  pins: readonly Pin[],
  stepId: string,
): { readonly from: number | null; readonly until: number | null } {
  const own = pins.filter((pin) => pin.stepId === stepId);
  const froms = own.flatMap((pin) => pin.notBeforeMin ?? []);
  const untils = own.flatMap((pin) => pin.notAfterMin ?? []);
  return {
    from: froms.length === 0 ? null : Math.max(...froms),
    until: untils.length === 0 ? null : Math.min(...untils),
  };
}
