import { dishesOf } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';
import { shownStep } from '#lib/figures/print-figure';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { amountWords } from '#lib/swap/amount-words';
import type { AnotherNumber, Explained } from '#lib/swap/another-number';
import { shareWords, type DishSum } from '#lib/swap/dish-sum';
import { printDayOfMonth } from '#lib/units/print-date';
import { printGrams, printTo } from '#lib/units/print';

/** The breakdown's number as it was published, or why there is none. */
export interface PublishedOurs {
  readonly number: string | null;
  /** What it lacks, in words. */
  readonly why: string;
}

/** `29 Nov 2026`. */
function dated(date: string): string {
  return `${printDayOfMonth(date)} ${date.slice(0, 4)}`;
}

/**
 * A friendly reply to a viewer with another number: what gives it, both numbers with their units, and the date of the
 * breakdown; nobody is told that they are wrong, and no cause is stated that only the viewer can know.
 * @param breakdownOn local date of the lock or file that the numbers are from
 * @param published the breakdown's number as it goes out; the sum itself where left out
 */
export function replyText(
  file: EpisodeFile,
  found: AnotherNumber,
  breakdownOn: string,
  published?: PublishedOurs,
): string {
  const { ours, number, scope, standing } = found;
  const { region } = file.episode;
  const words = (nutrient: Nutrient, value: number | string) =>
    amountWords(nutrient, value, region);
  const dish = dishesOf(file.episode.segments).find(({ id }) => id === number.segmentId);
  const of = dish ? shareWords(dish, scope) : '';
  const breakdown = `the breakdown of ${dated(breakdownOn)}`;
  const theirs = `${number.about ? 'about ' : ''}${words(number.nutrient, writtenAs(number))}`;
  const thanks = 'Thanks for doing the sums.';
  const own = published ? published.number : ours.value;
  const mine = own === null ? null : `${words(number.nutrient, own)} ${of}`;
  const open = published?.why || `nobody knows yet: ${lacking(ours)}`;
  const [first, ...others] = found.explained;
  if (mine === null && !first) {
    return `${thanks} I don’t have a sure number for that myself yet: in ${breakdown} it is still open (${open}).`;
  }
  if (standing === 'same') return `${thanks} I get the same in ${breakdown}: ${mine ?? theirs}.`;
  if (!first) {
    return `${thanks} In ${breakdown} it comes to ${mine ?? ''}, and I couldn’t find the one difference that gives ${theirs}. ${ASK}`;
  }
  const slipped = words(first.slip.input.nutrient, first.value);
  if (first.slight && mine !== null) {
    return `${thanks} In ${breakdown} it comes to ${mine}. ${theirs} is so near to it that many a small thing may be between them, as ${first.slip.words} (${slipped}), and one of my own lines may be off. ${ASK}`;
  }
  const beside =
    mine === null ? `in ${breakdown} it is still open (${open})` : `${breakdown} has ${mine}`;
  const opening = others.some(({ slight }) => !slight)
    ? `One way to ${theirs}`
    : `I think I see where ${theirs} may come from`;
  const ending = first.slip.asWritten
    ? 'Yours may well be the right one: I’ll look at that line of mine again.'
    : `Could it be that? If not, one of my own lines may be off: ${lowered(ASK)}`;
  return `${thanks} ${opening}: ${first.slip.words} it comes to ${slipped}; ${beside}. ${ending}`;
}

const ASK =
  'If you tell me which ingredients and weights you used, I’ll gladly go through them line by line.';
const lowered = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);

/** A viewer's number with the digits that they wrote. */
const writtenAs = ({ amount, decimals }: AnotherNumber['number']): string =>
  printTo(amount, 10 ** -decimals);

function lacking({ rows, beside }: DishSum): string {
  const names = [...rows, ...beside].filter(({ value }) => value === null).map(({ text }) => text);
  return names.join(', ') || 'the weight of the finished dish';
}

/** A slip's sum beside the breakdown's, line by line, as text: `Oil, 14 g: 0 (in the breakdown 124)`. */
export function slipSumText({ ours }: AnotherNumber, { sum, slip, value }: Explained): string {
  const print = (each: number | null) =>
    each === null ? 'not known' : printTo(each, shownStep(slip.input.nutrient, Math.abs(each)));
  const row = (text: string, a: number | null, b: number | null | undefined) =>
    a === b || b === undefined
      ? `${text}: ${print(a)}`
      : `${text}: ${print(a)} (in the breakdown ${print(b)})`;
  const lines = sum.rows.map(({ text, massMg, value: of }, at) =>
    row(massMg === null ? text : `${text}, ${printGrams(massMg)} g`, of, ours.rows[at]?.value),
  );
  const added = sum.rows.reduce((all, each) => all + (each.value ?? 0), 0);
  const { unit } = NUTRIENTS[slip.input.nutrient];
  const share = sum.share === 1 ? [] : [`× ${printTo(sum.share ?? 0, 0.001)} (${sum.of})`];
  return [
    ...lines,
    `Together: ${print(added)} ${unit}`,
    ...share,
    ...sum.beside.map(({ text, value: of }) => row(text, of, undefined)),
    `= ${print(value)} ${unit}`,
  ].join('\n');
}
