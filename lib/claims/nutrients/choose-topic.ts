import { indexAt } from '../words/at-or-behind';
import type { Topic } from '../numbers/multiples';
import type { Quantity } from '../numbers/quantity';

/** How far a bare number may be from the last one of the same topic, as a factor. */
const FAR = 30;
/** Grams from which on a bare number of a nutrient may not be so many times the last: it is of energy. */
const MOST_GRAMS = 200;
const FAR_GRAMS = 6;
/** Grams of a nutrient that nobody eats in a day. */
const MOST_OF_DAY = 500;
/** With several topics, by which factor the nearest must be nearer than the next. */
const CLEARLY = 3;

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
  // 'forty eight pence a portion, and this one is seventy two'
  if (all < 1 && all * 100 >= CENTS.least / 2) return low / 100;
  const parts = all / (low / 100);
  const whole = Math.round(parts);
  return whole >= 2 && Math.abs(parts / whole - 1) <= NEARLY && low > all ? low / 100 : undefined;
}

/**
 * Which of what was counted before a bare number counts, and its place in the row; null where nobody can say.
 * @param place where in the row it stands, where it is in order
 * @param counts how many parts of it were said nearby
 */
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
