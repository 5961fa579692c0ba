import type { Text } from '../words/text';
import type { Quantity } from './quantity';

/** A hundred without its one, which the words before it count or describe. */
export function isBareHundred({ tokens, language }: Text, quantity: Quantity): boolean {
  const { from, to, words, unit, noun } = quantity;
  const bare = words && to === from + 1 && unit === null && noun === null;
  return bare && language.numbers.hundred.has(tokens[from]?.folded ?? '');
}
