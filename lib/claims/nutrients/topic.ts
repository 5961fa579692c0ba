import { indexAt } from '../words/at-or-behind';
import type { DishMention } from '../scopes/dishes';
import type { Mark } from '../words/marks';
import type { Topic } from '../numbers/multiples';
import type { Noun, Quantity } from '../numbers/quantity';
import type { Text } from '../words/text';

/** Tokens of the names of dishes: the 'protein' of protein flapjacks counts nothing. */
export function tokensOf(dishes: readonly DishMention[]): Set<number> {
  const found = new Set<number>();
  for (const { from, to } of dishes) for (let at = from; at < to; at += 1) found.add(at);
  return found;
}

/** 'a third of that is the yoghurt': what one food has of it. */
export function isOfFood(text: Text, at: number): boolean {
  const copula = text.marks.at('copula', at);
  return copula !== undefined && (text.food(copula.to) ?? text.food(copula.to + 1)) !== null;
}

/** 'I halved the sugar': as a food that goes in, and no nutrient that a number follows. */
export function isHandled(text: Text, from: number): boolean {
  return text.food(from)?.from === from && text.marks.before('handled', from) !== undefined;
}

export const near = (row: readonly Topic[], at: number, reach: number) => {
  const end = row.at(-1)?.end;
  return end !== undefined && at - end <= reach && at >= end;
};

export const nounTopic = ({ nutrient, unit, to }: Noun): Topic => ({
  said: { kind: 'nutrient', nutrient, unit },
  nutrient,
  low: null,
  high: null,
  end: to,
  of: 'nutrient',
});

export function topicOf({ said, low, high, end }: Quantity): Topic | null {
  if (!said) return null;
  if (said.kind === 'nutrient' && said.unit !== '%' && said.unit !== '%DV') {
    const { scope: _, against: __, food: ___, ...bare } = said;
    return { said: bare, nutrient: said.nutrient ?? null, low, high, end, of: 'nutrient' };
  }
  if (said.kind === 'price') {
    return {
      said: { kind: 'price', unit: said.unit },
      nutrient: null,
      low,
      high,
      end,
      of: 'price',
    };
  }
  if (said.kind === 'amount' && said.food === undefined) {
    return {
      said: { kind: 'amount', unit: said.unit },
      nutrient: null,
      low,
      high,
      end,
      of: 'weight',
    };
  }
  return null;
}

/** Tokens in which a nutrient that was named alone waits for its grams. */
const WAITS = 70;

/** Kilocalories that a part has at least where nothing else says that they are meant. */
const LEAST_ENERGY = 100;

/** Tokens from a nutrient to grams that need no word between. */
const NEAR = 3;

/** 'so protein, everybody asks … and it came to twenty six grams a bowl': grams long after what they count. */
export function isWaiting(
  { marks }: Text,
  { said, end }: Topic,
  { unit, low, begin, end: to }: Quantity,
  row: readonly Topic[],
): boolean {
  const energy = said.unit === 'kcal' && unit === null && low >= LEAST_ENERGY;
  const led =
    (marks.at('scope', to) !== undefined && marks.before('copula', begin) !== undefined) ||
    marks.before('comesTo', begin) !== undefined;
  if (energy && row.every(({ said: other }) => other.unit === 'kcal'))
    return led && begin - end <= WAITS;
  if (unit?.of !== 'mass' || unit.unit !== said.unit || begin - end > WAITS) return false;
  if (begin - end <= NEAR) return true;
  if (row.some((topic) => topic.said.unit === unit.unit && near([topic], begin, WAITS / 2)))
    return false;
  return marks.at('scope', to) !== undefined || marks.before('copula', begin) !== undefined;
}

/** Tokens from the words for a part to the numbers that it comes to, and by which share these may be rounded. */
const PARTS = 16;
const ROUNDED = 0.02;

/** The bare numbers behind the words for a part that are that part of what was counted: one for each, in order. */
export function partsSaid(
  row: readonly Topic[],
  quantities: readonly Quantity[],
  { to }: Mark<'times'>,
  factor: number,
): Quantity[] {
  const first = indexAt(quantities, to);
  const found: Quantity[] = [];
  for (const { low, nutrient } of row) {
    const next = quantities[first + found.length];
    if (!next || low === null || nutrient === null || next.begin - to > PARTS) break;
    const part = low * factor;
    const bare = next.noun === null || next.noun.nutrient === nutrient;
    if (!bare || Math.abs(next.low - part) > Math.max(1 / 2, ROUNDED * part)) break;
    found.push(next);
  }
  return found;
}
