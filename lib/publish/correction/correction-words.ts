import type { InputChange } from '#lib/lock/lock-difference';
import { numberWords, type CorrectedNumber } from '#lib/publish/correction/correction-of';
import { printDayOfMonth } from '#lib/units/print-date';

/** What a correction says, without the numbers themselves. */
export interface CorrectionSaid {
  /** The person's own words. */
  readonly reason: string;
  /** Local date, `YYYY-MM-DD`. */
  readonly on: string;
}

/** Causes that a reason names before it counts the others. */
const NAMED = 3;

/** Longest reason that is kept, in UTF-16 units. */
export const LONGEST_REASON = 600;

/**
 * A reason to begin with, of what has changed under a lock; the person says it in words of their own.
 * @example proposedReason([{ where: 'Barley skillet', what: '“1 cup peas”, amount', from: '1 cup', to: '2 cup' }], false)
 *   // 'Barley skillet, “1 cup peas”, amount: 2 cup instead of 1 cup.'
 */
export function proposedReason(inputs: readonly InputChange[], otherEngine: boolean): string {
  const words = [
    ...(otherEngine ? ['the way that these numbers are worked out was put right'] : []),
    ...inputs.map(inputWords),
  ];
  const told = words.slice(0, NAMED);
  const more = words.length - told.length;
  const all = more > 0 ? [...told, `and ${String(more)} more`] : told;
  if (all.length === 0) return '';
  const sentence = `${all.join('; ')}.`;
  return (sentence.charAt(0).toUpperCase() + sentence.slice(1)).slice(0, LONGEST_REASON);
}

function inputWords({ where, what, from, to }: InputChange): string {
  const of = where === '' ? what : `${where}, ${what}`;
  if (from === '' && to === '') return of;
  if (to === '') return `${of}: no longer counted (it was ${from})`;
  if (from === '') return `${of}: now ${to}`;
  return `${of}: ${to} instead of ${from}`;
}

/**
 * The correction as it stands at the foot of a description.
 * @example correctionFoot(numbers, { reason: 'The peas were two cups.', on: '2026-11-30' })
 *   // 'Correction, 30 Nov 2026: Barley skillet, the whole dish: 870 kcal (not 846). The peas were two cups.'
 */
export function correctionFoot(
  numbers: readonly CorrectedNumber[],
  { reason, on }: CorrectionSaid,
): string {
  const parts = [...partsWords(numbers), sentenceOf(reason), ...spokenWords(numbers)];
  return `Correction, ${dayWords(on)}: ${parts.filter((part) => part !== '').join(' ')}`;
}

/** The same as a reply under a comment, or a pinned one: what is right now, why, and where it is written. */
export function correctionReply(
  numbers: readonly CorrectedNumber[],
  { reason, on }: CorrectionSaid,
): string {
  const parts = [
    `I have put ${numbers.length > 1 ? 'numbers' : 'a number'} right on ${dayWords(on)}.`,
    ...partsWords(numbers),
    sentenceOf(reason),
    ...spokenWords(numbers),
    'The description has it. Thank you for looking closely.',
  ];
  return parts.filter((part) => part !== '').join(' ');
}

/** `'30 Nov 2026'`: a description is read for years. */
export function dayWords(on: string): string {
  return `${printDayOfMonth(on)} ${on.slice(0, 4)}`;
}

/** One sentence for each amount: what it has now, and what had been written. */
function partsWords(numbers: readonly CorrectedNumber[]): string[] {
  return byPart(numbers).map(([part, all]) => {
    const words = all.map((number) => {
      const was = number.from.text;
      if (number.to === null) return `${numberWords(number, was)} no longer holds`;
      return `${numberWords(number, number.to.text)} (not ${was})`;
    });
    return `${part}: ${words.join(', ')}.`;
  });
}

function spokenWords(numbers: readonly CorrectedNumber[]): string[] {
  const spoken = numbers.filter((each) => each.spoken);
  if (spoken.length === 0) return [];
  const words = spoken.map((number) => numberWords(number, number.from.text));
  return [`The video still says ${[...new Set(words)].join(', ')}.`];
}

/** Numbers by the amount that they are of, each amount once, in the order given. */
export function byPart(
  numbers: readonly CorrectedNumber[],
): readonly (readonly [part: string, numbers: readonly CorrectedNumber[]])[] {
  const parts = new Map<string, CorrectedNumber[]>();
  for (const number of numbers) {
    const { dish, part } = number;
    const words = dish === null ? capital(part) : `${dish}, ${part}`;
    parts.set(words, [...(parts.get(words) ?? []), number]);
  }
  return [...parts];
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

function sentenceOf(text: string): string {
  const trimmed = text.trim();
  if (trimmed === '' || /[.!?…]["”’)]?$/.test(trimmed)) return trimmed;
  return `${trimmed}.`;
}
