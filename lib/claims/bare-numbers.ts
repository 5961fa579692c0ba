import { atOrBehind, indexAt } from './at-or-behind';
import { leadsBack } from './compare-days';
import { lastBefore } from './context';
import type { Topic } from './multiples';
import { additionFood } from './of-ingredient';
import type { Quantity } from './quantity';
import { only, type Text } from './text';

/** How far a bare number may be from the last one of the same topic, as a factor. */
const FAR = 30;
/** Grams from which on a bare number of a nutrient may not be so many times the last: it is of energy. */
const MOST_GRAMS = 200;
const FAR_GRAMS = 6;
/** Grams of a nutrient that nobody eats in a day. */
const MOST_OF_DAY = 500;
/** Two numbers of one topic right after each other are told apart by less than this share. */
const AGAIN = 0.05;
/** With several topics, by which factor the nearest must be nearer than the next. */
const CLEARLY = 3;

/** Most parts that somebody eats. */
const FEW = 6;

/** 'about fourteen hundred a bowl, fourteen thirty if you want it exact': the one number once more. */
export function isAgain({ low }: Quantity, row: readonly Topic[]): boolean {
  const before = row.length === 1 ? (row[0]?.low ?? null) : null;
  return before !== null && low >= LEAST_AGAIN && Math.abs(low / before - 1) < AGAIN;
}

/** Least number that is the one before said once more, and none by chance. */
const LEAST_AGAIN = 100;

/** Where names of dishes begin and end. */
export interface NamedDishes {
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
  if (quantity.high <= FEW && marks.before('eat', begin)) return false;
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

/** A hundred without its one, which the words before it count or describe. */
export function isBareHundred({ tokens, language }: Text, quantity: Quantity): boolean {
  const { from, to, words, unit, noun } = quantity;
  const bare = words && to === from + 1 && unit === null && noun === null;
  return bare && language.numbers.hundred.has(tokens[from]?.folded ?? '');
}

function isAddition(text: Text, quantity: Quantity): boolean {
  const back = text.marks.before('back', quantity.begin);
  if (!back || additionFood(text, quantity) !== null) return false;
  // 'this bowl is another four hundred'
  const verb = text.marks.before('copula', back.from);
  return text.marks.before('scope', verb?.from ?? back.from) === undefined;
}

/** 'a hundred and forty of the four twenty is dressing': so much of another number. */
export function isOutOf({ tokens, language, marks }: Text, end: number): boolean {
  const { of, cardinals } = language.numbers;
  if (!of.has(tokens[end]?.folded ?? '')) return false;
  const next = tokens[marks.at('filler', end + 1)?.to ?? end + 1];
  return next?.kind === 'number' || cardinals.has(next?.folded ?? '');
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

/** Parts that a number may be divided in; and by which share it may be off, as both are rounded. */
const PARTS = [2, 24] as const;
const ROUNDED = 0.015;
/** Tokens in which parts were counted, and numbers there. */
const COUNTED = 30;
const MOST_COUNTED = 6;

/** How many of it were said before a number, or right behind it: 'for five people that is four hundred each'. */
export function countsNear(quantities: readonly Quantity[], quantity: Quantity): number[] {
  const index = indexAt(quantities, quantity.begin);
  return quantities
    .slice(Math.max(0, index - MOST_COUNTED), index + 2)
    .filter(
      (other) =>
        other !== quantity &&
        Math.abs(other.begin - quantity.begin) <= COUNTED &&
        other.low === other.high &&
        Number.isInteger(other.low) &&
        other.low >= PARTS[0] &&
        other.low <= PARTS[1] &&
        other.said?.kind !== 'nutrient',
    )
    .map(({ low }) => low);
}

/** Whether a number is what was counted last for each of as many, or for all of them. */
function isCounted({ low, high }: Quantity, topic: Topic, counts: readonly number[]): boolean {
  const of = topic.low;
  if (of === null || of !== topic.high || low !== high || low <= PARTS[1]) return false;
  const near = (one: number, other: number) =>
    Math.abs(one - other) <= Math.max(0.5, ROUNDED * other);
  return counts.some((count) => near(low * count, of) || near(low, of * count));
}

/** Cents that are said without their name, and how near so many of them must come to the money before. */
const CENTS = { least: 20, most: 99 } as const;
const NEARLY = 0.03;

/** What a bare number is in money: hundredths as they are said, or cents that divide the price before: 'two eighty, so seventy a bowl'. */
export function moneyOf({ money, low, high }: Quantity, { low: all }: Topic): number | undefined {
  if (money !== undefined || all === null || low !== high) return money;
  if (!Number.isInteger(low) || low < CENTS.least || low > CENTS.most) return undefined;
  const parts = all / (low / 100);
  const whole = Math.round(parts);
  return whole >= 2 && Math.abs(parts / whole - 1) <= NEARLY && low > all ? low / 100 : undefined;
}

export function choose(
  quantity: Quantity,
  row: readonly Topic[],
  place: number,
  ordered: boolean,
  counts: readonly number[],
): { readonly topic: Topic; readonly place: number } | null {
  const fits = (topic: Topic) => {
    if (quantity.unit !== null && topic.said.unit !== quantity.unit.unit) return false;
    const money = topic.of === 'price' ? moneyOf(quantity, topic) : undefined;
    const high = money ?? quantity.high;
    // Whole money behind other money is that of a part.
    if (topic.of === 'price' && money === undefined && high > (topic.low ?? 0)) return false;
    if (topic.low === null || topic.low === 0)
      return topic.said.unit === 'kcal'
        ? high >= 10 && high < 10000
        : high < (topic.said.unit === 'g' ? MOST_OF_DAY : 2000);
    const grams = topic.of === 'nutrient' && topic.said.unit === 'g' && quantity.unit === null;
    if (grams && high > MOST_GRAMS && high / topic.low > FAR_GRAMS) return false;
    return high / topic.low < FAR && topic.low / high < FAR;
  };
  if (row.length === 1 || ordered) {
    const topic = row[place];
    return topic && fits(topic) ? { topic, place } : null;
  }
  const distance = (topic: Topic) =>
    topic.low === null || !fits(topic) ? Infinity : Math.abs(Math.log(quantity.high / topic.low));
  const sorted = row
    .map((topic, at) => ({ topic, place: at, far: distance(topic) }))
    .sort((a, b) => a.far - b.far);
  const counted = sorted.filter(
    ({ topic, far }) => far < Infinity && isCounted(quantity, topic, counts),
  );
  if (counted.length === 1) return counted[0] ?? null;
  const [first, second] = sorted;
  if (!first || first.far === Infinity) return null;
  return second && second.far - first.far < Math.log(CLEARLY) ? null : first;
}
