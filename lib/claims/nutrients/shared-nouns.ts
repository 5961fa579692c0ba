import { cutAnew } from '../numbers/cut-anew';
import type { Part } from '../numbers/number-words';
import type { Noun, Quantity } from '../numbers/quantity';
import type { Text } from '../words/text';

/** A number or the name of a nutrient, with its place. */
export type Element =
  | {
      readonly of: 'number';
      readonly quantity: Quantity;
      readonly from: number;
      readonly to: number;
    }
  | { readonly of: 'noun'; readonly noun: Noun; readonly from: number; readonly to: number };

/** As many numbers as nouns, in one row each: matched in order. Numbers that may be two are then two. */
export function shareNouns(
  text: Text,
  run: readonly Element[],
  split: Map<Quantity, readonly Quantity[]>,
): boolean {
  const numbers = run.flatMap((element) => (element.of === 'number' ? [element.quantity] : []));
  const nouns = run.flatMap((element) => (element.of === 'noun' ? [element.noun] : []));
  const order = run.map(({ of }) => (of === 'number' ? 'q' : 'n')).join('');
  if (/^(?:nq){2,}$/.test(order) && isParted(run)) {
    // 'protein, forty ish, fat, no more than twelve'
    numbers.forEach((quantity, index) => {
      quantity.noun = nouns[index] ?? null;
      quantity.list = true;
    });
    return true;
  }
  if (nouns.length < 2 || !/^(?:n+q+|q+n+)$/.test(order)) return false;
  const anew = cutAnew(text, numbers, nouns);
  if (anew !== null) return giveAnew(numbers, nouns, anew, split);
  let row: Quantity[] = numbers;
  if (numbers.length !== nouns.length) {
    row = numbers.flatMap((quantity) => apart(quantity) ?? [quantity]);
    if (row.length !== nouns.length) {
      // Which of them the nouns are said of, nobody can say.
      const bare = /^q{2,}n{3,}$/.test(order) && numbers.every(({ unit }) => unit === null);
      for (const quantity of bare ? numbers : []) quantity.killed ??= 'cut in two ways';
      return bare;
    }
    // 'two ninety one, calories, sodium': no dish has two kilocalories.
    if (row.some(({ high }, at) => isTooLittle(high, nouns[at]))) return false;
    for (const quantity of numbers) {
      const two = apart(quantity);
      if (two)
        split.set(
          quantity,
          row.filter(({ from, to }) => from >= quantity.from && to <= quantity.to),
        );
    }
  }
  if (row.length < 2) return false;
  row.forEach((quantity, index) => {
    quantity.noun = nouns[index] ?? null;
    quantity.list = true;
  });
  return true;
}

/**
 * The row that a run begins with, before numbers that have nouns of their own: 'protein, carbs, fat: 41, 52, 16' on a
 * line, '516 cal' on the next. What stands behind is `alone`.
 */
export function startRow(
  { tokens }: Text,
  run: readonly Element[],
): { readonly alone: readonly Element[]; readonly row: readonly Element[] } {
  const order = run.map(({ of }) => (of === 'number' ? 'q' : 'n')).join('');
  const none = { alone: run, row: [] };
  const [, nouns = ''] = /^(n{2,})q/.exec(order) ?? [];
  const count = 2 * nouns.length;
  const fits = order.startsWith(nouns + 'q'.repeat(nouns.length)) && order.length > count;
  const [last, next] = [run[count - 1], run[count]];
  if (nouns === '' || !fits || !last || !next) return none;
  const line = tokens.slice(last.to, next.from).some(({ kind }) => kind === 'line');
  return line ? { alone: run.slice(count), row: run.slice(0, count) } : none;
}

/**
 * The row of numbers and nouns that a run ends with, behind numbers that have nouns of their own: 'four thirty calories,
 * thirty one, forty four and nine protein carbs and fat', or on a line of its own. What stands before is `alone`.
 */
export function endRow(
  { tokens }: Text,
  run: readonly Element[],
): { readonly alone: readonly Element[]; readonly row: readonly Element[] } {
  const order = run.map(({ of }) => (of === 'number' ? 'q' : 'n')).join('');
  const none = { alone: run, row: [] };
  const [, before = '', first = '', second = ''] =
    /^((?:qn)+)(q{2,})(n{2,})$/.exec(order) ??
    /^((?:nq)+)(n{2,})(q{2,})$/.exec(order) ??
    /^((?:qn)+)(n{2,})(q{2,})$/.exec(order) ??
    [];
  if (first === '' || first.length !== second.length) return none;
  const [last, next] = [run[before.length - 1], run[before.length]];
  if (!last || !next) return none;
  // 'four thirty calories, protein, carbs …': only on its own line is the noun no number's that stands before.
  const line = tokens.slice(last.to, next.from).some(({ kind }) => kind === 'line');
  if (last.of === 'noun' && next.of === 'noun' && !line) return none;
  return { alone: run.slice(0, before.length), row: run.slice(before.length) };
}

/** Kilocalories that no part of a dish is said to have, where a number may be one or two. */
const LEAST_ENERGY = 20;

const isTooLittle = (high: number, noun: Noun | undefined) =>
  noun?.nutrient === 'energyKcal' && high < LEAST_ENERGY;

/** Whether no noun of a row stands right beside a number. */
const isParted = (run: readonly Element[]) =>
  run.every(({ from }, index) => index === 0 || from > (run[index - 1]?.to ?? 0));

/** Gives each noun its part of a row that was cut anew; where nobody can say, the numbers say nothing. */
function giveAnew(
  numbers: readonly Quantity[],
  nouns: readonly Noun[],
  parts: readonly Part[],
  split: Map<Quantity, readonly Quantity[]>,
): boolean {
  const [first, last] = [numbers[0], numbers.at(-1)];
  if (parts.length === 0 || !first || !last) {
    for (const quantity of numbers) quantity.killed = 'cut in two ways';
    return true;
  }
  const row = parts.map(({ value, from, next }, index) => ({
    ...(index === parts.length - 1 ? last : first),
    from,
    to: next,
    begin: index === 0 ? first.begin : from,
    end: index === parts.length - 1 ? last.end : next,
    low: value,
    high: value,
    noun: nouns[index] ?? null,
    list: true,
    parts: undefined,
    money: undefined,
    how: [],
  }));
  numbers.forEach((quantity, index) => split.set(quantity, index === 0 ? row : []));
  return true;
}

/** The two numbers that one may be. */
function apart(quantity: Quantity): Quantity[] | null {
  return (
    quantity.parts?.map((part, index, all) => ({
      ...quantity,
      from: part.from,
      to: part.next,
      begin: index === 0 ? quantity.begin : part.from,
      end: index === all.length - 1 ? quantity.end : part.next,
      low: part.value,
      high: part.value,
      parts: undefined,
      money: undefined,
      how: [],
    })) ?? null
  );
}
