import { atOrBehind } from '../words/at-or-behind';
import { leadsBack } from './compare-days';
import { lastBefore } from '../words/context';
import type { Topic } from '../numbers/multiples';
import { additionFood } from './of-ingredient';
import { MOST_EATEN, type Quantity } from '../numbers/quantity';
import { only, type Text } from '../words/text';
import { isBareHundred } from '../numbers/bare-hundred';
import { isOutOf } from '../numbers/out-of';

/** Two numbers of one topic right after each other are told apart by less than this share. */
const AGAIN = 0.05;

/** 'about fourteen hundred a bowl, fourteen thirty if you want it exact': the one number once more. */
export function isAgain({ low }: Quantity, row: readonly Topic[]): boolean {
  const before = row.length === 1 ? (row[0]?.low ?? null) : null;
  return before !== null && low >= LEAST_AGAIN && Math.abs(low / before - 1) < AGAIN;
}

/** Least number that is the one before said once more, and none by chance. */
const LEAST_AGAIN = 100;

/** Where names of dishes begin and end. */
interface NamedDishes {
  readonly begins: ReadonlySet<number>;
  readonly ends: ReadonlySet<number>;
}

/** Tokens from a number to the dish that it is of; and in which another day holds on. */
const DISH_BEHIND = 5;
const OTHER_DAY = 9;

/** Whether the words around a bare number let it count what was counted before. */
export function mayFollow(
  text: Text,
  quantity: Quantity,
  row: readonly Topic[],
  inRow: boolean,
  fillsRow: boolean,
  named: NamedDishes,
): boolean {
  const { marks } = text;
  const { begin, end, unit } = quantity;
  // 'tomorrow's meatloaf is three fifty five'
  const other = unit === null ? lastBefore(text, begin, 'otherDay', OTHER_DAY) : undefined;
  if (other && !leadsBack(text, other.to, begin) && !marks.firstIn('so', other.to, begin))
    return false;
  if (unit !== null && !(unit.of === 'mass' && row.some(({ said }) => said.unit === unit.unit)))
    return false;
  // 'protein carbs fat, fifty two sixty eleven'
  const goesOn =
    (inRow || fillsRow) && text.language.numbers.cardinals.has(text.tokens[end]?.folded ?? '');
  if (unit === null && !goesOn && (!endsBare(text, end) || isOutOf(text, end))) return false;
  // 'that's for a raw hundred', 'and then another one ten': of what, nobody can say.
  if (unit === null && (isBareHundred(text, quantity) || isAddition(text, quantity))) return false;
  // 'costs about 1.80 a bowl'
  const soft = marks.before('hedge', begin)?.from ?? begin;
  const paid = marks.before('cost', soft) && !marks.before('comesTo', soft);
  if (paid && row.every(({ of }) => of !== 'price')) return false;
  // 'and so you save 250', and no money
  const by = marks.before('by', begin);
  if (by && !by.role.swapped) return row.every(({ of }) => of === 'nutrient');
  // 'forty grams of protein, twelve more than the shop one'
  const than = marks.at('than', end);
  if (than && marks.at('thanWord', than.to)) return row.every(({ of }) => of === 'nutrient');
  if (unit !== null || inRow || fillsRow || quantity.partOf !== undefined) return true;
  // 'if you have three, and I did, that is twenty seven'
  if (quantity.high <= MOST_EATEN && marks.before('eat', begin)) return false;
  if (quantity.hedge === 'about' && marks.before('hedge', begin) === undefined) return true;
  const part = marks.at('scope', end)?.role;
  // 'I checked two shop ones'
  if (part?.scope === 'compared') return false;
  if (part !== undefined && part.link !== 'subject') return true;
  if (text.tokens[begin - 1]?.text === '?') return true;
  if (isAlone(text, quantity, row) || isBehindPart(text, begin)) return true;
  // The same number once more, or more exactly: 'almost fifty grams of protein forty nine point six'.
  const again = row.some(
    ({ low, end: last }) =>
      low !== null &&
      (low === quantity.low || (begin - last <= 2 && Math.abs(quantity.low / low - 1) < AGAIN)),
  );
  if ((again && quantity.high > 9) || isAgain(quantity, row)) return true;
  for (const category of ['copula', 'so', 'which', 'correct', 'scope', 'adds', 'alone'] as const) {
    if (marks.before(category, begin)) return true;
  }
  // 'the whole dish is still 1,150'
  const filler = marks.before('filler', begin);
  if (filler && marks.before('copula', filler.from)) return true;
  if (isOtherwise(text, begin)) return true;
  // 'the fat, because of the peanut butter, is up at twenty four'
  const at = marks.before('at', begin);
  if (at && at.to - at.from > 1) return true;
  // 'and the stew at four thirty two'
  if (additionFood(text, quantity) !== null || isOtherWay(text, quantity)) return true;
  const lead = marks.before('lead', begin);
  if (lead && text.context.dishes !== undefined && named.ends.has(lead.from)) return true;
  // 'calories for the stew four ten', 'and thirty two in the meatloaf'
  if (named.ends.has(begin)) return true;
  for (let at = end + 1; at <= end + DISH_BEHIND; at += 1)
    if (named.begins.has(at) && only(text, end, at, ['small', 'filler', 'scope'])) return true;
  // 'calories for the day so far eleven fifty'
  const last = row.at(-1);
  return (
    last !== undefined &&
    last.low === null &&
    only(text, last.end, begin, ['scope', 'joiner', 'copula', 'filler', 'small'])
  );
}

function isAddition(text: Text, quantity: Quantity): boolean {
  const back = text.marks.before('back', quantity.begin);
  if (!back || additionFood(text, quantity) !== null) return false;
  // 'this bowl is another four hundred'
  const verb = text.marks.before('copula', back.from);
  return text.marks.before('scope', verb?.from ?? back.from) === undefined;
}

/** 'Without the sauce, 490.': the dish in another way. */
function isOtherwise({ tokens, marks, food }: Text, begin: number): boolean {
  if (tokens[begin - 1]?.text !== ',') return false;
  for (let at = Math.max(0, begin - 4); at < begin - 1; at += 1) {
    const lead = marks.before('not', marks.before('filler', at)?.from ?? at);
    if (food(at)?.to === begin - 1 && lead && tokens[lead.from]?.kind === 'word') return true;
  }
  return false;
}

/** 'the calories. without sauce. five forty.': a number between marks that the noun before it waits for. */
function isAlone({ tokens }: Text, { begin, end }: Quantity, row: readonly Topic[]): boolean {
  const mark = (at: number) => tokens[at] === undefined || tokens[at]?.kind === 'mark';
  return row.length === 1 && row[0]?.low === null && mark(begin - 1) && mark(end);
}

/** 'finished the day on eighteen ninety'. */
function isBehindPart({ marks }: Text, begin: number): boolean {
  const lead = marks.before('lead', begin) ?? marks.before('at', begin);
  return lead !== undefined && marks.before('scope', lead.from) !== undefined;
}

/** 'four ninety without the bread and six forty with it'. */
function isOtherWay({ marks, tokens }: Text, { begin, end }: Quantity): boolean {
  const joined = marks.before('joiner', begin) !== undefined && tokens[begin - 1]?.kind === 'word';
  const next = marks.at('joiner', end) ?? marks.at('not', end);
  return (
    joined &&
    next !== undefined &&
    tokens[end]?.kind === 'word' &&
    marks.at('use', end) !== undefined
  );
}

/** Whether nothing that would be counted follows. */
function endsBare({ marks, tokens, food }: Text, end: number): boolean {
  const token = tokens[end];
  if (marks.at('trapBehind', end) || marks.at('thing', end))
    return (marks.at('scope', end)?.role.link ?? 'subject') !== 'subject';
  if (token?.kind === 'number') return false;
  if (token?.kind !== 'word') return token?.text !== '%' && token?.text !== '°';
  // 'one twenty a taco'
  if (marks.at('scope', end)?.role.link === 'behind') return true;
  if (food(end) && !marks.at('so', end)) return false;
  return (
    [
      'small',
      'so',
      'joiner',
      'copula',
      'scope',
      'which',
      'correct',
      'filler',
      'hedge',
      'alone',
      'not',
      'ofThem',
      'than',
    ] as const
  ).some((category) => marks.at(category, end));
}

/** How many numbers without unit and noun stand in a row from this one on. */
export function rowFrom(text: Text, quantity: Quantity, all: readonly Quantity[]): number {
  let last = quantity;
  for (let length = 1; length < 12; length += 1) {
    if (!nextInRow(text, last, all)) return length;
    last = atOrBehind(all, last.begin + 1) ?? last;
  }
  return 0;
}

export function nextInRow(text: Text, quantity: Quantity, all: readonly Quantity[]): boolean {
  const next = atOrBehind(all, quantity.begin + 1);
  return (
    next !== undefined &&
    next.unit === null &&
    next.noun === null &&
    isRow(text, quantity.end, next.begin)
  );
}

/** Whether nothing stands between two numbers of a row but what joins and softens, or in captions a full stop. */
export function isRow(text: Text, from: number, to: number): boolean {
  const words = ['joiner', 'hedge', 'filler', 'scope'] as const;
  if (only(text, from, to, words)) return true;
  return text.spoken && text.tokens[from]?.text === '.' && only(text, from + 1, to, words);
}
