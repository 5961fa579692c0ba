import {
  contradiction,
  type Contradiction,
  type PlacedStatement,
} from '#lib/claims/contradict/contradiction';
import { areApart, isTitle, timesRange } from '#lib/claims/contradict/said-values';
import { ENGLISH } from '#lib/claims/english/english';
import { saidPrice, type Price } from '#lib/claims/judge-beyond/price';
import type { SaidInterval } from '#lib/claims/said-interval';
import { oneLine } from '#lib/claims/sentence-around';
import { printTo, settled } from '#lib/units/print';

type Priced = PlacedStatement & { readonly statement: Price };

/** Minor units in one of the money that is said: cents of a dollar, pence of a pound. */
const MAJOR = 100;
/** UTF-16 units between a price of all and that of one of it; and in which several are added. */
const BREATH = 90;
const LIST = 200;

/**
 * Prices that do not come to what is said of them: a price of all of a dish that is not so many times the price of one
 * part, said in the same breath; and several prices that do not come to the sum behind them. No price has to be known.
 * @param countsOf into how many parts a dish is said to be cut, or is
 * @param textOf the text in which the offsets of a statement count
 */
export function prices(
  rows: readonly PlacedStatement[],
  countsOf: (segmentId: string) => readonly number[],
  textOf: (textId: string) => string,
): Contradiction[] {
  const priced = rows.filter(isPrice);
  return priced.flatMap((row, index) => {
    const before = priced[index - 1];
    const found =
      (before && partOfAll(before, row, countsOf)) ??
      sumOf(priced, index, textOf(row.place.textId));
    return found ? [found] : [];
  });
}

const isPrice = (row: PlacedStatement): row is Priced =>
  row.statement.kind === 'price' &&
  !row.statement.unsure &&
  row.statement.scope !== 'compared' &&
  !isTitle(row);

const WHOLES: ReadonlySet<string> = new Set(['whole', 'dish']);
const PARTS: ReadonlySet<string> = new Set(['portion', 'slice', 'each']);

function partOfAll(
  all: Priced,
  part: Priced,
  countsOf: (segmentId: string) => readonly number[],
): Contradiction | null {
  const { segmentId, textId } = part.place;
  if (segmentId === null || all.place.segmentId !== segmentId || all.place.textId !== textId) {
    return null;
  }
  const gap = part.statement.start - all.statement.end;
  if (!WHOLES.has(all.statement.scope) || !PARTS.has(part.statement.scope)) return null;
  if (gap < 0 || gap > BREATH || !isSameMoney(all, part)) return null;
  const counts = countsOf(segmentId);
  const [first] = counts;
  const whole = intervalOf(all);
  const fits = (count: number) => !areApart(timesRange(intervalOf(part), count, count), whole);
  if (first === undefined || counts.some(fits)) return null;
  const each = printTo(middle(all) / first, 1 / MAJOR);
  return contradiction({
    kind: 'price',
    nutrient: null,
    segmentId,
    words: `one of ${first} of ${wordsOf(all)} is ${each}, not ${wordsOf(part)}`,
    sides: [all, part].map((one) => ({ value: wordsOf(one), said: [one] })),
  });
}

/** Prices in a row that do not come to the one behind them, which is said to be their sum. */
function sumOf(priced: readonly Priced[], index: number, text: string): Contradiction | null {
  const total = priced[index];
  if (!total || PARTS.has(total.statement.scope)) return null;
  const { start } = total.statement;
  const from = sentenceStart(text, start);
  const items = priced
    .slice(Math.max(0, index - 12), index)
    .filter(
      ({ place, statement }) => place.textId === total.place.textId && statement.start >= from,
    );
  const [first] = items;
  const fitting = items.every((item) => isAdded(item) && isSameMoney(item, total));
  if (!first || items.length < 2 || !fitting) return null;
  if (
    !ENGLISH.qualifying.soThat.test(text.slice(from, start)) ||
    hasOthers(text, from, start, items)
  ) {
    return null;
  }
  const intervals = items.map(intervalOf);
  const sum = (of: (each: SaidInterval) => number) =>
    settled(intervals.reduce((all, each) => all + of(each), 0));
  const range = { from: sum((each) => each.from), to: sum((each) => each.to) };
  const ends = { ...range, fromOpen: false, toOpen: false };
  if (!areApart(ends, intervalOf(total))) return null;
  const come = printTo(
    items.reduce((all, item) => all + middle(item), 0),
    1 / MAJOR,
  );
  return contradiction({
    kind: 'price',
    nutrient: null,
    segmentId: null,
    words: `${items.map(wordsOf).join(', ')} come to ${come}, not ${wordsOf(total)}`,
    sides: [
      { value: wordsOf(total), said: [total] },
      { value: come, said: items },
    ],
  });
}

const isAdded = ({ statement }: Priced) => !PARTS.has(statement.scope);

/** Whether a number stands between the prices that nobody has read as one: then the list may be longer. */
function hasOthers(text: string, from: number, to: number, items: readonly Priced[]): boolean {
  let at = from;
  let rest = '';
  for (const { statement } of items) {
    rest += `${text.slice(at, statement.start)} `;
    at = Math.max(at, statement.end);
  }
  const words = (rest + text.slice(at, to)).toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
  return words.some((word) => /\d/.test(word) || ENGLISH.numbers.cardinals.has(word));
}

/** Where the sentence begins, but not behind a point between digits. */
function sentenceStart(text: string, at: number): number {
  const from = Math.max(0, at - LIST);
  const ends = [...text.slice(from, at).matchAll(/[.!?](?=\s)|\n\s*\n/g)];
  const last = ends.at(-1);
  return last ? from + last.index + last[0].length : from;
}

const isSameMoney = ({ statement: a }: Priced, { statement: b }: Priced) =>
  a.unit === b.unit || a.unit === 'unknown' || b.unit === 'unknown';
const intervalOf = ({ statement }: Priced) => saidPrice(statement, MAJOR);
const middle = ({ statement }: Priced) => (statement.low + statement.high) / 2;
const wordsOf = ({ statement }: Priced) => oneLine(statement.words);
