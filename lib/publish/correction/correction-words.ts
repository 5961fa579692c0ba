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

/** Before a line of a correction that is one of a list. */
export const LISTED = '- ';

/**
 * The correction as it stands at the foot of a description: the reason, then a line for each dish.
 * @example correctionFoot(numbers, { reason: 'The peas were two cups.', on: '2026-11-30' })
 *   // 'Correction, 30 Nov 2026: The peas were two cups.\n- Barley skillet, the whole dish: 870 kcal (not 846)'
 */
export function correctionFoot(
  numbers: readonly CorrectedNumber[],
  { reason, on }: CorrectionSaid,
): string {
  const first = `Correction, ${dayWords(on)}: ${sentenceOf(reason)}`.trim();
  return [first, ...dishLines(numbers), ...spokenWords(numbers)].join('\n');
}

/** The same as a reply under a comment, or a pinned one: why, what is right now, and where it is written. */
export function correctionReply(
  numbers: readonly CorrectedNumber[],
  { reason, on }: CorrectionSaid,
): string {
  const what = numbers.length > 1 ? 'numbers' : 'a number';
  const first = `I have put ${what} right on ${dayWords(on)}. ${sentenceOf(reason)}`.trim();
  const thanks = 'The description has it. Thank you for looking closely.';
  return [first, ...dishLines(numbers), ...spokenWords(numbers), thanks].join('\n');
}

/** `'30 Nov 2026'`: a description is read for years. */
export function dayWords(on: string): string {
  return `${printDayOfMonth(on)} ${on.slice(0, 4)}`;
}

/** One line for each dish: its portions first, since they are what is eaten, each with what had been written. */
function dishLines(numbers: readonly CorrectedNumber[]): string[] {
  return [...grouped(numbers, ({ dish }) => dish ?? '')].map(([dish, all]) => {
    const isPortion = ({ scope }: CorrectedNumber) => scope.kind === 'portion';
    const ordered = [...all.filter(isPortion), ...all.filter((each) => !isPortion(each))];
    const parts = [...grouped(ordered, ({ part }) => part)];
    const told = parts.map(([part, of]) => `${part}: ${amounts(of)}`).join('; ');
    return `${LISTED}${dish === '' ? capital(told) : `${dish}, ${told}`}`;
  });
}

const amounts = (numbers: readonly CorrectedNumber[]): string =>
  numbers
    .map((number) => {
      const was = number.from.text;
      if (number.to === null) return `${numberWords(number, was)} no longer holds`;
      return `${numberWords(number, number.to.text)} (not ${was})`;
    })
    .join(', ');

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
  const words = ({ dish, part }: CorrectedNumber) =>
    dish === null ? capital(part) : `${dish}, ${part}`;
  return [...grouped(numbers, words)];
}

function grouped(
  numbers: readonly CorrectedNumber[],
  keyOf: (number: CorrectedNumber) => string,
): ReadonlyMap<string, readonly CorrectedNumber[]> {
  const groups = new Map<string, CorrectedNumber[]>();
  for (const each of numbers) {
    groups.set(keyOf(each), [...(groups.get(keyOf(each)) ?? []), each]);
  }
  return groups;
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

function sentenceOf(text: string): string {
  const trimmed = text.trim();
  if (trimmed === '' || /[.!?…]["”’)]?$/.test(trimmed)) return trimmed;
  return `${trimmed}.`;
}
