import { labelEnd } from './amount-foods';
import type { FoodSpan } from '../words/foods';
import { foodAtEnd } from '../words/foods-in';
import type { Quantity } from '../numbers/quantity';
import type { Text } from '../words/text';

/** Tokens before a number in which the name of its food begins. */
const LONGEST_FOOD = 4;

interface Neighbours {
  readonly quantity: Quantity;
  readonly before: FoodSpan | null;
  readonly behind: FoodSpan | null;
  /** Whether 'of' says that the food behind is meant. */
  readonly of: boolean;
}

/** Of numbers that stand between foods without any mark: the food before each, or null where nobody can say which. */
export type Listed = ReadonlyMap<Quantity, FoodSpan | null>;

/**
 * Which side of its number a food stands on, in a row that runs on without a mark: 'flour two fifty sugar eighty butter
 * one ten' begins with a food and ends with a number, so that each food is the one before. Rows where the food follows
 * are not told, as all are read so anyway; where a row begins and ends with a food, nobody can say.
 */
export function listedFoods(text: Text, quantities: readonly Quantity[]): Listed {
  const found = new Map<Quantity, FoodSpan | null>();
  let row: Neighbours[] = [];
  let end = 0;
  const close = () => {
    const [first, last] = [row[0], row.at(-1)];
    // 'sugar eight salt one' is a label.
    const foods = row.some(({ quantity: { noun }, before }) => noun === null && before !== null);
    const named = foods && row.some(({ before }) => before && !text.marks.at('noun', before.from));
    if (row.length > 1 && first?.before && named && !row.some(({ of }) => of))
      for (const { quantity, before } of row) found.set(quantity, last?.behind ? null : before);
    row = [];
  };
  for (const quantity of quantities) {
    const next = neighboursOf(text, quantity, end);
    end = quantity.unitEnd;
    const behind = row.at(-1)?.behind;
    const goesOn = next?.before && behind && next.before.to === behind.to;
    if (!goesOn) close();
    if (next) row.push(next);
  }
  close();
  return found;
}

function neighboursOf(text: Text, quantity: Quantity, from: number): Neighbours | null {
  const { unit, killed, said, begin, unitEnd, fraction } = quantity;
  const noun = isFoodToo(text, quantity) ? null : quantity.noun;
  if (
    killed !== null ||
    noun ||
    // What is a part of a sum of calories is no weight.
    (said !== null && said.kind !== 'amount' && (said.kind !== 'nutrient' || !quantity.noun))
  )
    return null;
  const measured = unit?.of === 'mass' || unit?.of === 'volume';
  if (!measured && (unit !== null || noun !== null || fraction)) return null;
  // 'of' tells which.
  const of = text.language.numbers.of.has(text.tokens[unitEnd]?.folded ?? '');
  const behind = text.food(labelEnd(text, of ? unitEnd + 1 : unitEnd));
  const before = foodAtEnd(text, Math.max(from, begin - LONGEST_FOOD), begin);
  return { quantity, before, behind, of };
}

/** Sugar and salt are foods in a row of foods. */
const isFoodToo = (text: Text, { noun }: Quantity) =>
  noun !== null && text.food(noun.from)?.from === noun.from;
