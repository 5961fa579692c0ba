import type { Quantity } from '../numbers/quantity';
import { only, type Text } from '../words/text';

/** Tokens around a number in which a word of buying says that it is money, and from one price to the next. */
const BEHIND = 6;
const BEFORE = 6;
const NEXT = 8;

/**
 * Whether a number that may be money is: a word of buying stands beside it, or it goes on from a price that no currency
 * says either.
 * @example 'the whole batch was twenty eight fifty at the store so two eighty five each' // both are
 */
export function isPaidFor(text: Text, quantity: Quantity, before: Quantity | undefined): boolean {
  const { marks } = text;
  const { begin, end, unit, noun, money } = quantity;
  if (money === undefined || unit !== null || noun !== null) return false;
  if (marks.at('noun', end) ?? marks.at('thing', end) ?? text.food(end)) return false;
  const place = marks.firstIn('bought', end, end + BEHIND);
  if (place && only(text, end, place.from, ['filler', 'hedge', 'small', 'scope'])) return true;
  const led = marks.lastIn('bought', begin - BEFORE, begin);
  if (led && only(text, led.to, begin, ['filler', 'hedge', 'small', 'copula'])) return true;
  const price = before?.said?.kind === 'price' && before.unit === null;
  return (
    price && begin - before.end <= NEXT && marks.firstIn('so', before.end, begin) !== undefined
  );
}
