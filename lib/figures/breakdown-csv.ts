import type { Breakdown } from '#lib/figures/breakdown';
import { printBreakdown, type PrintedRow } from '#lib/figures/breakdown-words';
import { figureStatus, type Figure } from '#lib/figures/figure';
import { missingText } from '#lib/figures/print-figure';
import { NUTRIENTS } from '#lib/foods/nutrients';
import { csvText } from '#lib/units/csv';

/**
 * A breakdown as a table for other programs, see `csvText`. The last record is the sum.
 *
 * Numbers have up to six digits and no units. Where the figure is open its numbers are empty, and where it is at
 * least or at most the side that is not known, and `remark` says so: nothing is given as more than it is.
 *
 * @param what the amount in words, for the sum's record
 */
export function breakdownCsv(of: Breakdown, what: string): string {
  const { unit, label } = NUTRIENTS[of.nutrient];
  const amount = `${label} (${unit})`;
  const head = [
    'ingredient',
    'dish',
    'grams',
    'grams low',
    'grams high',
    'food',
    'source',
    `value of the food`,
    'range of the value',
    amount,
    `${amount} low`,
    `${amount} likely low`,
    `${amount} likely high`,
    `${amount} high`,
    'share of total (%)',
    'share of uncertainty (%)',
    'remark',
  ];
  const rows = printBreakdown(of).rows.map(record);
  const { finishedShare } = of;
  const finished =
    finishedShare === null
      ? []
      : [blank(['the finished weight'], { 15: number(finishedShare * 100) })];
  const sum = blank([`sum: ${what}`], {
    ...Object.fromEntries(numbersOf(of.figure).map((cell, index) => [9 + index, cell])),
    16: remarkOf(of.figure),
  });
  return csvText(head, [...rows, ...finished, sum]);
}

const COLUMNS = 17;

function blank(first: readonly string[], at: Readonly<Record<number, string>>): string[] {
  return Array.from({ length: COLUMNS }, (_, index) => at[index] ?? first[index] ?? '');
}

function record({ row, foods, bounded }: PrintedRow): string[] {
  const { massMg, contribution, shareOfTotal, shareOfUncertainty, waits } = row;
  const grams = massMg ? [massMg.value, massMg.low, massMg.high] : [null, null, null];
  const both = (words: readonly string[]) => words.filter((word) => word !== '').join(' or ');
  const share = (of: number | null) => number(of === null ? null : of * 100);
  return [
    row.text,
    row.dish,
    ...grams.map((mg) => number(mg === null ? null : mg / 1000)),
    row.madeFrom ? `a dish: ${row.madeFrom.title}` : both(foods.map(({ name }) => name)),
    both(foods.map(({ source }) => source)),
    both(foods.map(({ value, stated }) => (stated ? `${value}; ${stated}` : value))),
    both(foods.map(({ range }) => range)),
    ...numbersOf(contribution),
    share(shareOfTotal),
    share(shareOfUncertainty),
    [remarkOf(contribution), row.turned, bounded, waits].filter(Boolean).join('; '),
  ];
}

/** Value and bounds; an open figure has no number, and one that is not known no value. */
function numbersOf(figure: Figure): string[] {
  const { value, low, likelyLow, likelyHigh, high } = figure;
  return [figureStatus(figure) === 'known' ? value : null, low, likelyLow, likelyHigh, high].map(
    number,
  );
}

const STATUS_WORDS = { known: '', atLeast: 'at least', atMost: 'at most', open: 'open' } as const;

function remarkOf(figure: Figure): string {
  const status = STATUS_WORDS[figureStatus(figure)];
  return status && `${status}: ${missingText(figure.missing)}`;
}

/** A number in up to six digits, never with an exponent; empty where it is not known. */
function number(value: number | null): string {
  if (value === null) return '';
  const rounded = Number(value.toPrecision(6));
  const decimals = Math.max(0, 5 - Math.floor(Math.log10(Math.abs(rounded) || 1)));
  const text = rounded.toFixed(Math.min(12, decimals));
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}
