import type { Text } from '../words/text';
import type { Quantity } from './quantity';

/** Whether a number counts nothing yet, and nothing behind it would be counted. */
export function isOpen({ marks, tokens, food }: Text, quantity: Quantity): boolean {
  const { unit, noun, said, killed, fraction, end, to } = quantity;
  if (unit || noun || said || killed !== null || fraction) return false;
  if (marks.at('thing', end) ?? marks.at('trapBehind', end) ?? marks.at('gear', end)) return false;
  if (marks.at('unit', to) || food(end)?.from === end) return false;
  return tokens[end]?.kind !== 'number' && !/^[%°$€£]$/.test(tokens[end]?.text ?? '');
}
